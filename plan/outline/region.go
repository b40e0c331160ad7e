package outline

import "example.org/matside/plan/length"

// Region is an outline made ready to be compared with many others: its box and
// its convex parts are worked out once.
type Region struct {
	Outline Outline
	Box     Box
	parts   []part
	rect    bool
}

type part struct {
	outline Outline
	box     Box
}

// NewRegion makes o, a simple polygon, ready.
func NewRegion(o Outline) Region {
	r := Region{Outline: o, Box: o.Bounds(), rect: o.IsRect()}
	for _, p := range Parts(o) {
		r.parts = append(r.parts, part{p, p.Bounds()})
	}
	return r
}

// Move is r moved right by dx and down by dy.
func (r Region) Move(dx, dy length.Len) Region {
	d := Point{dx, dy}
	moved := Region{r.Outline.Move(dx, dy), r.Box.move(d), make([]part, len(r.parts)), r.rect}
	for i, p := range r.parts {
		moved.parts[i] = part{moved.Outline, p.box.move(d)}
		if len(r.parts) > 1 {
			moved.parts[i].outline = p.outline.Move(dx, dy)
		}
	}
	return moved
}

func (b Box) move(d Point) Box { return Box{b.Min.Add(d), b.Max.Add(d)} }

// Overlaps says whether r and s share area, exactly; meeting at edges and
// corners is no overlap.
//
// (1) It is symmetric. (2) Anything with area overlaps itself and what contains
// it. (3) Moving, turning by quarters or mirroring both changes nothing.
func (r Region) Overlaps(s Region) bool {
	if !r.Box.Overlaps(s.Box) {
		return false
	}
	if r.rect && s.rect {
		return true
	}
	for _, p := range r.parts {
		for _, q := range s.parts {
			if p.box.Overlaps(q.box) && convexOverlap(p.outline, q.outline) {
				return true
			}
		}
	}
	return false
}

// Apart says whether r and s are at least gap from each other, exactly,
// measured straight from point to point. With gap 0 it is the opposite of
// Overlaps.
func (r Region) Apart(s Region, gap length.Len) bool {
	switch {
	case r.Box.apart(s.Box, gap):
		return true
	case r.rect && s.rect || r.Overlaps(s):
		return false
	case gap <= 0:
		return true
	}
	return clear(r, s, gap) && clear(s, r, gap)
}

// clear says whether every corner of r is at least gap from every edge of s. Of
// two outlines that share no area, the closest points include a corner.
func clear(r, s Region, gap length.Len) bool {
	near := s.Box.Grow(gap)
	for _, p := range r.Outline {
		if !near.holds(p) {
			continue
		}
		for j, c := range s.Outline {
			if !farFrom(p, c, s.Outline.next(j), gap) {
				return false
			}
		}
	}
	return true
}

func (b Box) holds(p Point) bool {
	return b.Min.X < p.X && p.X < b.Max.X && b.Min.Y < p.Y && p.Y < b.Max.Y
}

// farFrom says whether p is at least gap from the segment ab.
func farFrom(p, a, b Point, gap length.Len) bool {
	if p.X-max(a.X, b.X) >= gap || min(a.X, b.X)-p.X >= gap || p.Y-max(a.Y, b.Y) >= gap || min(a.Y, b.Y)-p.Y >= gap {
		return true
	}
	ab, ap, bp := b.Sub(a), p.Sub(a), p.Sub(b)
	g := length.Mul(gap, gap)
	switch {
	case dot(ab, ap) <= 0:
		return !normSquared(ap).Less(g)
	case dot(ab, bp) >= 0:
		return !normSquared(bp).Less(g)
	}
	// The distance to the line is |ab × ap| / |ab|.
	cross := length.Product(ab.X, ap.Y).Sub(length.Product(ab.Y, ap.X)).Abs()
	return squareAtLeast(cross, g, normSquared(ab))
}

// normSquared is |v|².
func normSquared(v Point) length.Area {
	return length.Product(v.X, v.X).Add(length.Product(v.Y, v.Y)).Abs()
}
