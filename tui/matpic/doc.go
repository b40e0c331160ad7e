// Package matpic draws a load as it lies on the mat: rough cuts and pieces
// to scale, each piece with its line's letter, each fabric with a pattern of
// its own and only then a colour; and it tells the same picture in words.
//
// The picture is a pure function of load, list and size, in whole numbers,
// the same on every machine. Edges along the grain are box lines, slanted
// ones are finer (Braille dots). It promises nothing of pieces too small for
// a cell: those may lose their letter, and the legend and the words have
// them all.
package matpic
