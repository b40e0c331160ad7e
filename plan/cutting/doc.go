// Package cutting tells in which order fabric is cut at the table: strips
// across first, then pieces of strips, as it is done by ruler (common
// practice, no source).
//
// It promises straight cuts from edge to edge of what lies on the table, none
// of them through anything still needed, that free every rough cut and every
// piece cut by hand of a queue exactly once; what lies first on the panel is
// cut first. It does not promise the fewest cuts. A queue whose pieces
// straight cuts can't free is no plan, and makes it panic; plan/check says so
// without.
package cutting
