package rect

import (
	"errors"

	"example.org/matside/plan/length"
)

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

// Less is the next effort below e, Quick where there is none.
func (e Effort) Less() Effort {
	if e == Thorough {
		return Usual
	}
	return Quick
}

// Options guide a search. The zero value is the usual effort, no bound known,
// never interrupted.
type Options struct {
	Effort Effort
	// Lower is a number of bins known to be needed; Pack stops as soon as it
	// needs no more. 0: none known (the area's own bound always counts).
	Lower int
	// Stop, if not nil, is asked between rounds of work, on the caller's
	// goroutine; once it says true the best packing so far is returned.
	Stop func() bool
}

// ErrTooBig is returned when a rectangle fits the bin at no allowed turn.
var ErrTooBig = errors.New("a rectangle is larger than the bin")
