// Package paper prints a plan as PDF, for the table and the folder: what to
// buy, the fabric cut step by step, each load's mat, labels for the stacks and
// true-size templates.
//
// It promises that nothing is told by colour (fabrics are told apart by pattern
// and name, pieces by letter), that running text is 14 point or more unless
// small print is asked for, that text wraps or shrinks and never leaves its
// place, that a template and its two test squares are true to a hundredth of a
// millimetre on paper printed at actual size, and that the same plan gives the
// same bytes. A loads page stands for every load cut alike.
//
// It does not promise that a printer keeps the size: that is what the squares
// are for. Characters that the Go fonts (Bigelow and Holmes 2016) lack are
// printed as question marks.
package paper
