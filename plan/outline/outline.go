package outline

import (
	"slices"

	"example.org/matside/plan/length"
)

// Point is a place on the mat or in a piece's own frame: x runs right, y runs
// down, as on the mat seen from above. The lengthwise grain runs along y.
type Point struct{ X, Y length.Len }

// Add is p moved by d.
func (p Point) Add(d Point) Point { return Point{p.X + d.X, p.Y + d.Y} }

// Sub is the way from d to p.
func (p Point) Sub(d Point) Point { return Point{p.X - d.X, p.Y - d.Y} }

// Outline is a simple polygon as seen from the right side of the fabric (or,
// placed, as seen on the mat). Corners run so that the shoelace sum
// Σ(x_i·y_{i+1} − x_{i+1}·y_i) is positive, which is clockwise to the eye since
// y runs down. A piece's own outline has its bounding box at 0,0.
type Outline []Point

// Rect is the rectangle w by h with its top left corner at x, y; its corners
// run from there to the right.
func Rect(x, y, w, h length.Len) Outline {
	return Outline{{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}}
}

// next is the corner after corner i.
func (o Outline) next(i int) Point {
	if i++; i < len(o) {
		return o[i]
	}
	return o[0]
}

// prev is the corner before corner i.
func (o Outline) prev(i int) Point {
	if i > 0 {
		return o[i-1]
	}
	return o[len(o)-1]
}

// shoelace is twice the area, negative where the corners run the other way
// round.
func (o Outline) shoelace() (sum length.Wide) {
	for i, p := range o {
		q := o.next(i)
		sum = sum.Add(length.Product(p.X, q.Y)).Sub(length.Product(q.X, p.Y))
	}
	return sum
}

// TwiceArea is twice the area, exactly.
func (o Outline) TwiceArea() length.Area { return o.shoelace().Abs() }

// Area is the area, rounded down to a whole square nanometre.
func (o Outline) Area() length.Area { return o.TwiceArea().Half() }

// Bounds is the smallest upright box round o; o has a corner at least.
func (o Outline) Bounds() Box {
	b := Box{o[0], o[0]}
	for _, p := range o[1:] {
		b.Min.X, b.Max.X = min(b.Min.X, p.X), max(b.Max.X, p.X)
		b.Min.Y, b.Max.Y = min(b.Min.Y, p.Y), max(b.Max.Y, p.Y)
	}
	return b
}

// Move is o moved right by dx and down by dy.
func (o Outline) Move(dx, dy length.Len) Outline {
	moved := make(Outline, len(o))
	for i, p := range o {
		moved[i] = Point{p.X + dx, p.Y + dy}
	}
	return moved
}

// Normalise is o moved so that its bounding box is at 0,0.
func (o Outline) Normalise() Outline {
	b := o.Bounds()
	return o.Move(-b.Min.X, -b.Min.Y)
}

// Mirror is o as seen from behind: left and right change places, x becomes −x.
// The first corner stays the first, and the corners still run clockwise.
func (o Outline) Mirror() Outline {
	m := make(Outline, len(o))
	for i, p := range o {
		m[(len(o)-i)%len(o)] = Point{-p.X, p.Y}
	}
	return m
}

// Same says whether a and b have the same corners in the same order, whichever
// of them comes first.
func Same(a, b Outline) bool {
	if len(a) != len(b) {
		return false
	}
	for start := range b {
		if b[start] == a[0] && slices.Equal(a[:len(a)-start], b[start:]) && slices.Equal(a[len(a)-start:], b[:start]) {
			return true
		}
	}
	return len(a) == 0
}

// IsRect says whether o is an upright rectangle with four corners.
func (o Outline) IsRect() bool {
	if len(o) != 4 {
		return false
	}
	a, b, c, d := o[0], o[1], o[2], o[3]
	return a.X == b.X && b.Y == c.Y && c.X == d.X && d.Y == a.Y && a.X != c.X && a.Y != c.Y ||
		a.Y == b.Y && b.X == c.X && c.Y == d.Y && d.X == a.X && a.X != c.X && a.Y != c.Y
}
