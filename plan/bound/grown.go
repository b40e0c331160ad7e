package bound

import (
	"slices"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// rim is how much wider and higher the mat is in which the shapes lie, grown
// by half the gap as they are.
func (m *Mat) rim() length.Len { return m.Gap / 2 * 2 }

// mostCorners is how many an outline that is not convex may have: to cut it
// into parts takes far longer with each.
const mostCorners = 64

// shapeOf is the shape of a piece among all, a new one if need be.
func (s *sharing) shapeOf(p Piece) int {
	n := shape{area: p.Area, rect: p.Rect}
	add := func(o outline.Outline) {
		if b := o.Bounds(); b.Width() <= s.W+s.rim() && b.Height() <= s.H+s.rim() && !among(n.ways, o) {
			n.ways = append(n.ways, o)
		}
	}
	switch {
	case p.Aslant:
	case p.Rect:
		add(grown(outline.Rect(0, 0, p.W, p.H), s.Gap/2))
		if p.Turn {
			add(grown(outline.Rect(0, 0, p.H, p.W), s.Gap/2))
		}
	default:
		for _, o := range p.Ways {
			if len(o) <= mostCorners || o.Convex() {
				add(grown(o, s.Gap/2))
			}
		}
	}
	at := slices.IndexFunc(s.shapes, func(o shape) bool {
		other := func(w outline.Outline) bool { return !among(o.ways, w) }
		return o.area == n.area && o.rect == n.rect && len(o.ways) == len(n.ways) && !slices.ContainsFunc(n.ways, other)
	})
	if at < 0 {
		at = len(s.shapes)
		s.shapes = append(s.shapes, n)
	}
	s.shapes[at].count += p.Count
	return at
}

// grown is a convex outline with the corners of an octagon of no more than
// the radius put round each of its own: no point of it is farther than that
// from the outline. Any other is left as it is.
func grown(o outline.Outline, radius length.Len) outline.Outline {
	if radius <= 0 || !o.Convex() {
		return o
	}
	r, q := radius, radius*70/99 // 70/99 is a little less than 1/√2
	var all []outline.Point
	for _, p := range o {
		for _, d := range [8]outline.Point{{X: r}, {X: q, Y: q}, {Y: r}, {X: -q, Y: q}, {X: -r}, {X: -q, Y: -q}, {Y: -r}, {X: q, Y: -q}} {
			all = append(all, p.Add(d))
		}
	}
	return outline.Hull(all).Normalise()
}
