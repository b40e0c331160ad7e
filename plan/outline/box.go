package outline

import "example.org/matside/plan/length"

// Box is an upright rectangle from its top left corner Min to its bottom right
// corner Max.
type Box struct{ Min, Max Point }

// NewBox is the box w by h with its top left corner at x, y.
func NewBox(x, y, w, h length.Len) Box {
	return Box{Point{x, y}, Point{x + w, y + h}}
}

// Width is how far b goes from left to right.
func (b Box) Width() length.Len { return b.Max.X - b.Min.X }

// Height is how far b goes from top to bottom.
func (b Box) Height() length.Len { return b.Max.Y - b.Min.Y }

// Contains says whether c lies in b; edges may meet.
func (b Box) Contains(c Box) bool {
	return b.Min.X <= c.Min.X && c.Max.X <= b.Max.X && b.Min.Y <= c.Min.Y && c.Max.Y <= b.Max.Y
}

// Overlaps says whether b and c share area; meeting along an edge is none.
func (b Box) Overlaps(c Box) bool {
	return b.Min.X < c.Max.X && c.Min.X < b.Max.X && b.Min.Y < c.Max.Y && c.Min.Y < b.Max.Y
}

// Grow is b with every side moved outward by d, or inward where d is negative.
func (b Box) Grow(d length.Len) Box {
	return Box{Point{b.Min.X - d, b.Min.Y - d}, Point{b.Max.X + d, b.Max.Y + d}}
}

// apart says whether b and c are at least gap from each other, measured
// straight from the one to the other; with gap 0, whether they share no area.
func (b Box) apart(c Box, gap length.Len) bool {
	if gap <= 0 {
		return !b.Overlaps(c)
	}
	dx := max(b.Min.X-c.Max.X, c.Min.X-b.Max.X, 0)
	dy := max(b.Min.Y-c.Max.Y, c.Min.Y-b.Max.Y, 0)
	if dx >= gap || dy >= gap {
		return true
	}
	return length.Product(dx, dx).Add(length.Product(dy, dy)).Sub(length.Product(gap, gap)).Sign() >= 0
}

// Inside says whether every point of o lies in b; edges may meet.
func (o Outline) Inside(b Box) bool { return b.Contains(o.Bounds()) }
