// Package blade says where the blade goes over a load: the edges of its
// pieces, each stretch of them once however many pieces share it, with
// straight runs joined from end to end, since a line cut twice frays.
//
// It promises exactness: two edges lie on one line when their whole-nanometre
// corners say so, with 128 bits to decide it, and every run begins and ends at
// a corner of a piece. Edges a nanometre apart are two cuts. Only the length of
// a slanted run is rounded, down to a whole nanometre.
//
// It does not say in which order the runs are cut (plan/drawing does) and does
// not look whether the pieces overlap (plan/check does). Sweeping the edges of
// each line from end to end is the one-dimensional case of Klee's measure
// problem (Bentley 1977).
package blade
