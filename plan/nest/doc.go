// Package nest lays outlines, not only rectangles, in a container: as much as
// it can (Fill, or a Sheet that is filled again and again), as many of one shape
// (Most), all in the least length of a strip (Strip).
//
// It promises that what it returns is a layout: every outline inside, no two
// sharing area, any two at least the gap apart, no item more often than asked;
// exact on whole nanometres and the same on every machine. It does not promise
// the most that could be laid, nor that a piece it could not place has no place.
//
// How it works, and whose ideas these are:
//   - Two outlines share area exactly when the offset between them lies inside
//     one of the no-fit polygons of their convex parts (Minkowski sums by edge
//     merging).
//   - Candidate places are the touching positions: corners and crossings of
//     no-fit polygons, as in bottom-left fill (Burke, Hellier, Kendall and
//     Whitwell, "A new bottom-left-fill heuristic algorithm for the
//     two-dimensional irregular packing problem", Operations Research 54, 2006).
//   - Tight layouts come from letting pieces overlap and driving the overlap
//     out: moves along axis lines to the best place on the line (Egeblad,
//     Nielsen and Odgaard, "Fast neighborhood search for two- and
//     three-dimensional nesting problems", EJOR 183, 2007; Umetani et al.,
//     "Solving the irregular strip packing problem via guided local search for
//     overlap minimization", ITOR 16, 2009), penetration depth as the measure
//     and weights that grow on stubborn pairs (guided local search, Voudouris
//     and Tsang, 1999), shrinking the strip each time it succeeds (Elkeran, "A
//     new approach for sheet nesting problem using guided cuckoo search and
//     pairwise clustering", EJOR 231, 2013). Sampled moves, exploring before
//     compressing and going back to the better of the failed layouts are
//     Gardeyn and Wauters's ("An open-source heuristic to reboot 2D nesting
//     research", arXiv 2509.13329, 2025). Thorough runs two searches side by
//     side that meet at fixed amounts of work, never at a time.
//   - Equal pieces lie in rows and lattices: touching pairs as motifs (double
//     lattices after Kuperberg and Kuperberg, "Double-lattice packings of convex
//     bodies in the plane", 1990), rows stacked by dynamic programming, lattices
//     of reduced steps (Lagrange, Gauss) moved to where most of them falls
//     inside, and blocks of two or four that make a rectangle.
//
// Floats (added, multiplied, divided and rooted only, never fused) rank places
// in the search; integers alone decide whether a place is free.
package nest
