// Package cutlist reads a cut list: the plain-text file in which a quilter says
// what she makes, what fabric she has and which pieces she wants.
//
// It promises that a list it returns is whole (every fabric named, every shape
// worked out to its cut outline, every piece known to fit the mat or to be cut
// by hand) and that a file with mistakes gives all of them at once, each with
// its place, the line marked, and what to write instead where that can be told.
// Any bytes at all end in one or the other, soon, and no control character gets
// through to a name or a message.
//
// It does not promise that the fabric is enough, plans nothing, and opens no
// file itself: an SVG outline comes through the function given to Read.
//
// Suggestions are the words within two slips (Levenshtein 1966 with Damerau's
// swaps of neighbours); how wide characters stand under a mark follows Unicode
// Standard Annex 11 through golang.org/x/text/width.
package cutlist
