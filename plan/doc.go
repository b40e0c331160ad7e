// Package plan is the front door: a cut list in, a plan out.
//
// Make promises a plan in which plan/check finds no fault: each piece
// wanted exactly once or named as missing, cut true, with its rough cut in a
// panel out of which straight cuts free it. The same list and options give
// the same plan on any machine: work is counted, never timed, and nothing
// depends on how goroutines are scheduled. The plan says a true lower bound
// on the number of loads; it is proved fewest only where it says so. Stopped
// early it is the best so far, and keeps every rule all the same. Where there
// is fabric enough, more effort never takes more loads.
//
// Not promised: the fewest loads or the least fabric there could be, nor that
// a list with fewer pieces, a larger mat or a smaller gap never gets a worse
// plan; only the lower bound keeps to that.
//
// Trade gives the plans worth having between few loads and little fabric, and
// Compare says what an edited list changes.
//
// The parts are in the folders below: cutlist reads, pack puts pieces on
// mats (with rect for rectangles and nest for outlines), stock places rough
// cuts in the fabric, bound says how few loads there can be, check looks for
// faults and report writes the plan down.
package plan
