// Package pace learns how long she takes, and says how long is left.
//
// It promises medians with quartiles from her own loads, a guess that is marked
// as one until there are enough, a range that eight evenings in ten should
// fall into, and a plan of who waits for whom with one mat or more. It knows
// no clock and nothing of quilts: only minutes, metres and steps. Medians,
// since one phone call must not shift a whole evening; the large-sample error
// of a median, 1.253 standard errors, and the quartiles of a normal law,
// 0.6745 standard deviations from its middle, are common statistics.
package pace
