// Package stock finds rough cuts and pieces cut by hand their places in the
// fabric: yardage, fat quarters, scraps.
//
// It promises that what it lays on a panel doesn't overlap, lies inside, is
// never turned unless that was allowed, and can be freed by cuts straight
// across what is left: every cut splits one free rectangle of the panel in
// two, so a way to free the pieces is known by construction. The same cuts
// and panels give the same places. It tries several orders and ways of
// splitting and keeps the best; it does not promise the least fabric.
//
// The method is guillotine packing in free rectangles with strips first
// (first fit, decreasing height; Coffman, Garey, Johnson and Tarjan 1980),
// which is how fabric is cut by ruler anyway: strips across, then pieces of
// strips (common practice, no source).
package stock
