// Package bound proves how many bins pieces need at the least, so that a
// packing as good can be called the best there is.
//
// It promises true bounds: every number returned was checked in whole numbers,
// whatever floats suggested on the way, and is the same on every machine. It
// does not promise that the bound can be reached. Methods for rectangles,
// cheapest first: area; how many of one size a bin holds (Barnes 1979); pairs
// of dual feasible functions (Fekete and Schepers 2001; Boschetti and Mingozzi
// 2003; Carlier, Clautiaux and Moukrim 2007), a piece that turns counted by its
// lesser worth (Dell'Amico, Martello and Vigo 2002) or by the mean (Clautiaux,
// Jouglet and El Hayek 2007); the best of these tuned by linear programming
// (Caprara and Monaci 2009). Papers are cited from memory.
//
// Other outlines are counted by pins, weights stuck in the mat of which a
// piece covers so much wherever it lies: the linear dual of packing, found by
// predictive regret matching (Farina, Kroer and Sandholm 2021) on many points
// and by linear programs on few. How many large ones a mat holds is found by
// trying all sides that can part them (Fischetti and Luzzi 2009).
//
// Loads knows mats on which several fabrics lie, each in rough cuts with
// margins between them: a linear program over the boxes of one fabric
// (Gilmore and Gomory 1961), held together by pairs of scales of boxes, and
// told by cuts that boxes are used whole (Gomory 1958; Chvátal 1973).
package bound
