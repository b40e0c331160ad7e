// Package chart draws what people would rather look at than read: bars of
// counts, and a curve of chances with the place where she is. It knows cells
// and numbers only; what they mean is the caller's to say beside them, for
// nobody can hear a bar.
package chart
