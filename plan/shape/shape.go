package shape

import (
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// Kind is a shape quilters cut.
type Kind uint8

// The shapes of the cut list; Sizes of a Spec in brackets.
const (
	Square        Kind = iota // [side]
	Rectangle                 // [across, along]
	HalfSquare                // half-square triangle [short side]
	QuarterSquare             // quarter-square triangle [long side]
	HalfRectangle             // half-rectangle triangle [across, along], Left or right
	Equilateral               // [height], or side
	Hexagon                   // [side], or height flat to flat
	HalfHexagon               // [side of the whole], or height of the half
	Octagon                   // [height flat to flat], or side
	Diamond                   // [side], or height; Degrees 45 or 60
	Parallelogram             // [base, height]; Degrees, Left or right
	Trapezoid                 // [long, short, height]
	Circle                    // [diameter]
	QuarterCircle             // [radius]
	Own                       // an outline of her own
)

// Measure says what the one number of a shape measures.
type Measure uint8

// As the shape's row of the cut list says, or told by a word.
const (
	Usual Measure = iota
	Side
	Height
)

// Spec is a shape as a piece line asks for it, with all that bears on its
// cut outline but the grain.
type Spec struct {
	Kind     Kind
	Sizes    []length.Len
	Measure  Measure
	Degrees  int  // 45 or 60
	Left     bool // for shapes with a hand
	Own      outline.Outline
	Finished bool // grow by Seam on every side
	Ruler    bool // round the grown SIZE up to the next 1/8 in
	Trimmed  bool
	Seam     length.Len
}

// Cut is a shape ready to be cut: its outline as seen from the right side,
// and its SIZE, the numbers a ruler would show.
type Cut struct {
	Outline outline.Outline
	Sizes   []length.Len
}
