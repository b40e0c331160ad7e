// Package glyph writes digits, fractions and capital letters large, out of
// half blocks, to be read from two steps away.
//
// It promises that what it returns fits the columns and rows asked for, or
// says that nothing does; the plain text is then the caller's to write, and
// stands beside the large one anyway, for a screen reader has no use for
// blocks. Two faces, drawn here: one seven dots high, and one five high for
// small windows; both grow by whole factors. A fraction is written with its
// numerator raised.
package glyph
