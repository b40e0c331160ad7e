package rect

import "example.org/matside/plan/length"

// Size is a kind of rectangle to be packed Count times.
type Size struct {
	W, H  length.Len
	Turn  bool // a quarter turn is allowed
	Count int
}

// Placed is one rectangle in a bin: Size is an index into the sizes given,
// X, Y its top left corner, Turned whether it lies H wide and W high.
type Placed struct {
	Size   int
	X, Y   length.Len
	Turned bool
}

// Bin is what lies in one bin.
type Bin []Placed

// Effort says how much counted work a search may do.
type Effort uint8

// Efforts; Usual is the zero value.
const (
	Usual Effort = iota
	Quick
	Thorough
)
