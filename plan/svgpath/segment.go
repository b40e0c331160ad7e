package svgpath

import "example.org/matside/plan/internal/real"

// segment is one piece of a path, in nanometres: a straight line, a cubic curve
// or an arc.
type segment struct {
	kind segmentKind
	p    [4]vector // line: p[0] and p[3]; cubic: its control points; arc: its ends
	// An arc is centre + u·cos t + v·sin t for t from one angle to another, either
	// way: what any transform makes of an arc of a circle.
	centre, u, v vector
	from, to     real.Real
}

type segmentKind uint8

const (
	line segmentKind = iota
	cubic
	arc
)

func (s *segment) start() vector { return s.p[0] }
func (s *segment) end() vector   { return s.p[3] }

func newLine(a, b vector) segment { return segment{kind: line, p: [4]vector{0: a, 3: b}} }

func newCubic(a, b, c, d vector) segment { return segment{kind: cubic, p: [4]vector{a, b, c, d}} }

// newQuadratic is the curve with one control point, drawn as a cubic one.
func newQuadratic(a, b, c vector) segment {
	third := one.Quo(real.Int(3))
	return newCubic(a, b.towards(a, third), b.towards(c, third), c)
}

// newArc is the elliptical arc of path data, by its ends: SVG 2, appendix B.2.4,
// "Conversion from endpoint to center parameterization". Where that says so it
// is a straight line.
func newArc(a vector, rx, ry, degrees real.Real, large, sweep bool, b vector) segment {
	if rx.Sign() == 0 || ry.Sign() == 0 || a.sub(b).isZero() {
		return newLine(a, b)
	}
	axes := turn(reduced(degrees))
	back := turn(reduced(degrees).Neg())
	rx, ry = rx.Max(rx.Neg()), ry.Max(ry.Neg())
	// In the frame where the ellipse is the unit circle, p is half the way from b
	// to a, and the centre lies square to it.
	p := back.way(a.sub(b).times(half))
	p = vector{p.x.Quo(rx), p.y.Quo(ry)}
	square := p.dot(p)
	offset := zero
	if one.Less(square) { // radii too small to reach: they grow
		reach := square.Sqrt()
		rx, ry, p = rx.Mul(reach), ry.Mul(reach), p.times(one.Quo(reach))
	} else {
		offset = one.Quo(square).Sub(one).Sqrt()
	}
	if large == sweep {
		offset = offset.Neg()
	}
	c := vector{p.y.Neg(), p.x}.times(offset).times(real.Int(-1))
	s := segment{kind: arc, p: [4]vector{0: a, 3: b}, u: axes.u.times(rx), v: axes.v.times(ry)}
	s.centre = a.middle(b).add(s.u.times(c.x)).add(s.v.times(c.y))
	s.from, s.to = p.sub(c).angle(), p.times(real.Int(-1)).sub(c).angle()
	full := real.Pi.Add(real.Pi)
	if sweep && s.to.Less(s.from) {
		s.to = s.to.Add(full)
	} else if !sweep && s.from.Less(s.to) {
		s.to = s.to.Sub(full)
	}
	return s
}

func (p vector) angle() real.Real { return real.Angle(p.x, p.y) }

// moved is what a transform makes of s.
func (s segment) moved(m matrix) segment {
	for i := range s.p {
		s.p[i] = m.point(s.p[i])
	}
	s.centre, s.u, s.v = m.point(s.centre), m.way(s.u), m.way(s.v)
	return s
}
