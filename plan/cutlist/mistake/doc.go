// Package mistake declares every kind of mistake that a cut list can have, and
// every hint to what should stand there instead, as sentences with facts.
//
// It promises that all of them are in Kinds, and that what a quilter has to
// type stands in backticks, the same in every language. Where and in which
// line a mistake is, package cutlist says.
package mistake
