package shape

import (
	"fmt"

	"example.org/matside/plan/internal/real"
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
// cut outline but the grain. Lengths are at most length.MaxLen.
type Spec struct {
	Kind     Kind
	Sizes    []length.Len
	Measure  Measure         // for the shapes with a number that can be either
	Degrees  int             // 45 or 60
	Left     bool            // for shapes with a hand
	Own      outline.Outline // for Own: corners in order, y down, any way round, anywhere
	Finished bool            // grow by Seam on every side
	Ruler    bool            // round the grown SIZE up to the next 1/8 in
	Trimmed  bool            // cut sharp tips back
	Seam     length.Len
}

// Cut is a shape ready to be cut: its outline as seen from the right side, with
// its bounding box at 0,0, and its SIZE, the numbers a ruler would show. The
// SIZE of a grown half hexagon, quarter circle or own outline, which have none
// of their own, is the finished one; tips cut back change no SIZE.
type Cut struct {
	Outline outline.Outline
	Sizes   []length.Len
}

// Cut is the shape ready to be cut. Errors are sentences for the quilter,
// without a place in the cut list.
//
// (1) A finished shape's sides are each Seam outside the finished one's.
// (2) With Ruler no side is closer, and every number of the SIZE is a whole
// eighth of an inch. (3) Straight-sided corners are within half a nanometre,
// across and along, of where they truly are; corners of curves are outside, by
// at most 0.01 mm.
func (s Spec) Cut() (Cut, error) {
	if err := s.check(); err != nil {
		return Cut{}, err
	}
	kin := families[s.Kind]
	f, err := s.figure(s.Sizes)
	if err != nil {
		return Cut{}, err
	}
	sizes := s.Sizes
	if s.Finished && s.Seam > 0 {
		if f, err = f.grow(real.Len(s.Seam)); err != nil {
			return Cut{}, err
		}
		if kin.measure != nil {
			sizes = rounded(kin.measure(s, f))
			if s.Ruler {
				sizes = upToEighths(sizes)
				if f, err = s.figure(sizes); err != nil {
					return Cut{}, err
				}
			}
		}
	}
	if s.Trimmed {
		if f, err = f.trim(real.Len(s.Seam), kin.legsOnGrain); err != nil {
			return Cut{}, err
		}
	}
	o, err := f.outline()
	return Cut{o, sizes}, err
}

// figure draws the shape in the given SIZE.
func (s Spec) figure(sizes []length.Len) (figure, error) {
	if s.Kind == Own {
		o, err := outline.Tidy(s.Own)
		if err != nil {
			return nil, err
		}
		var f figure
		for _, p := range o {
			f = append(f, side{from: place{real.Len(p.X), real.Len(p.Y)}})
		}
		return f, nil
	}
	numbers := make([]real.Real, len(sizes))
	for i, n := range sizes {
		numbers[i] = real.Len(n)
	}
	f := families[s.Kind].draw(s, numbers)
	if s.mirrored() {
		f = f.mirror()
	}
	return f, nil
}

// mirrored says whether the shape is drawn the other way round: parallelograms
// are drawn to the right and half-rectangle triangles to the left.
func (s Spec) mirrored() bool {
	return s.Kind == Parallelogram && s.Left || s.Kind == HalfRectangle && !s.Left
}

// check says what is wrong with the numbers of s.
func (s Spec) check() error {
	kin := families[s.Kind]
	if len(s.Sizes) != kin.numbers {
		return fmt.Errorf("a size of %d numbers, not %d", kin.numbers, len(s.Sizes))
	}
	for _, n := range s.Sizes {
		if n <= 0 {
			return ErrNothing
		}
	}
	switch {
	case s.Kind == Trapezoid && s.Sizes[0] <= s.Sizes[1]:
		return ErrLongSideFirst
	case (s.Kind == Diamond || s.Kind == Parallelogram) && s.Degrees != 45 && s.Degrees != 60:
		return ErrDegrees
	}
	return nil
}

// rounded is each number to the nearest nanometre.
func rounded(numbers []real.Real) []length.Len {
	ls := make([]length.Len, len(numbers))
	for i, n := range numbers {
		ls[i] = n.Nearest()
	}
	return ls
}

// upToEighths is each length rounded up to the next eighth of an inch.
func upToEighths(ls []length.Len) []length.Len {
	const eighth = length.Inch / 8
	up := make([]length.Len, len(ls))
	for i, l := range ls {
		up[i] = (l + eighth - 1) / eighth * eighth
	}
	return up
}
