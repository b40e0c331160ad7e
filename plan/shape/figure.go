package shape

import (
	"slices"

	"example.org/matside/plan/internal/real"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// place is a point, or a way from one to another, before it is rounded. As in
// an outline, y runs down.
type place struct{ x, y real.Real }

func (p place) add(q place) place          { return place{p.x.Add(q.x), p.y.Add(q.y)} }
func (p place) sub(q place) place          { return place{p.x.Sub(q.x), p.y.Sub(q.y)} }
func (p place) times(k real.Real) place    { return place{p.x.Mul(k), p.y.Mul(k)} }
func (p place) dot(q place) real.Real      { return p.x.Mul(q.x).Add(p.y.Mul(q.y)) }
func (p place) cross(q place) real.Real    { return p.x.Mul(q.y).Sub(p.y.Mul(q.x)) }
func (p place) length() real.Real          { return p.x.Hypot(p.y) }
func (p place) unit() place                { return p.times(real.Int(1).Quo(p.length())) }
func (p place) towards(q place) place      { return q.sub(p).unit() }
func (p place) distance(q place) real.Real { return q.sub(p).length() }
func (p place) angle() real.Real           { return real.Angle(p.x, p.y) }

// side is one side of a figure: it starts at a corner and runs to the next
// side's, straight or, where it has a centre, on an arc that bulges outward.
type side struct {
	from   place
	centre *place
}

// figure is a shape before it is rounded: its sides clockwise to the eye.
type figure []side

// straight is a figure of straight sides through corners x, y, x, y …
func straight(xy ...real.Real) (f figure) {
	for i := 0; i+1 < len(xy); i += 2 {
		f = append(f, side{from: place{xy[i], xy[i+1]}})
	}
	return f
}

// corner is corner i, counted round and round.
func (f figure) corner(i int) place { return f[(i+len(f))%len(f)].from }

// along is the unit way of straight side i.
func (f figure) along(i int) place { return f.corner(i).towards(f.corner(i + 1)) }

// outward is the unit way out of straight side i, square to it.
func (f figure) outward(i int) place {
	d := f.along(i)
	return place{d.y, d.x.Neg()}
}

// mirror is f with left and right changed; its sides are straight.
func (f figure) mirror() figure {
	m := make(figure, len(f))
	for i, s := range f {
		m[len(f)-1-i] = side{from: place{s.from.x.Neg(), s.from.y}}
	}
	return m
}

// size is how wide and high the corners of f lie.
func (f figure) size() (w, h real.Real) {
	lo, hi := bounds(f.corners())
	return hi.x.Sub(lo.x), hi.y.Sub(lo.y)
}

func (f figure) corners() []place {
	ps := make([]place, len(f))
	for i, s := range f {
		ps[i] = s.from
	}
	return ps
}

func bounds(ps []place) (lo, hi place) {
	lo, hi = ps[0], ps[0]
	for _, p := range ps[1:] {
		lo = place{lo.x.Min(p.x), lo.y.Min(p.y)}
		hi = place{hi.x.Max(p.x), hi.y.Max(p.y)}
	}
	return lo, hi
}

func (f figure) hasArc() bool {
	return slices.ContainsFunc(f, func(s side) bool { return s.centre != nil })
}

// outline rounds f, moved so that its bounding box is at 0,0: corners to the
// nearest nanometre, those that stand for an arc away from its centre.
func (f figure) outline() (outline.Outline, error) {
	corners, centres := f.flatten()
	lo, hi := bounds(corners)
	if limit := real.Len(2 * length.MaxLen); limit.Less(hi.x.Sub(lo.x)) || limit.Less(hi.y.Sub(lo.y)) {
		return nil, ErrTooLong
	}
	o := make(outline.Outline, len(corners))
	for i, p := range corners {
		p = p.sub(lo)
		if centres[i] == nil {
			o[i] = outline.Point{X: p.x.Nearest(), Y: p.y.Nearest()}
			continue
		}
		c := centres[i].sub(lo)
		o[i] = outline.Point{X: p.x.Outward(c.x), Y: p.y.Outward(c.y)}
	}
	if f.hasArc() {
		// Shapes with arcs are convex; where corners of an arc are a nanometre or two
		// apart, rounding may have dented them or made them one.
		o = outline.Hull(o)
	}
	if !o.Simple() {
		return nil, ErrTooSmall
	}
	return o, nil
}
