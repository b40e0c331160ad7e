// Package pack puts a cut list's pieces on mats: which pieces share a load,
// in which rough cuts, and where each lies.
//
// It promises that every piece asked for lies on some mat, inside the part
// the blade reaches, apart from its neighbours by the gap, turned only as its
// grain allows, in a rough cut of its own fabric with the margin round it;
// and that the same job gives the same mats. It does not promise the fewest
// mats there can be (plan/bound says how few that is), and it knows nothing
// of panels: plan/stock finds each rough cut its place in the fabric.
//
// Where the ideas come from: triangles are paired into rectangles and
// quarter-square triangles into squares, as quilters cut them by ruler
// (common practice, no source); the rectangles are packed by plan/rect, and
// outlines as they are by plan/nest where that holds more. Awkward pieces are
// found by correcting their worth from round to round (sequential value
// correction; Belov and Scheithauer 2007, from memory), and the emptiest mats
// are spread over the others.
// Rough cuts of several fabrics on a mat are packed on two levels, as
// "soft" rectangles whose shape may still be chosen (the soft modules of
// floor planning in chip layout; from memory, Wong and Liu 1986).
package pack
