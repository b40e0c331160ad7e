package shape

import "example.org/matside/plan/internal/real"

// grow moves every side of f outward by s, or inward where s is negative, and
// mitres the corners: straight sides are drawn on until they meet, an arc keeps
// its centre and its radius grows. This is the seam allowance of every shape.
// A side that would turn round, because the figure is too small or an inward
// corner too tight, is ErrCollapsed.
func (f figure) grow(s real.Real) (figure, error) {
	grown := make(figure, len(f))
	for i := range f {
		grown[i] = side{f.mitre(i, s), f[i].centre}
	}
	if !f.sameWay(grown) {
		return nil, ErrCollapsed
	}
	return grown, nil
}

// sameWay says whether every straight side of g still runs the way it runs in f.
func (f figure) sameWay(g figure) bool {
	for i := range f {
		was, is := f.corner(i+1).sub(f.corner(i)), g.corner(i+1).sub(g.corner(i))
		if f[i].centre == nil && was.dot(is).Sign() <= 0 {
			return false
		}
	}
	return true
}

// mitre is where the sides before and after corner i meet once they are moved.
func (f figure) mitre(i int, s real.Real) place {
	n := len(f)
	before, after := (i+n-1)%n, i
	p := f[i].from
	switch in, out := f[before].centre, f[after].centre; {
	case in == nil && out == nil:
		// p + s·(a+b)/(1+a·b) is at distance s from both, a and b the ways out.
		a, b := f.outward(before), f.outward(after)
		return p.add(a.add(b).times(s.Quo(real.Int(1).Add(a.dot(b)))))
	case in != nil && out != nil: // two arcs of one circle
		radius := in.distance(p)
		return in.add(p.sub(*in).times(radius.Add(s).Quo(radius)))
	case in != nil:
		return onCircle(*in, in.distance(p).Add(s), p.add(f.outward(after).times(s)), f.along(after))
	default:
		return onCircle(*out, out.distance(p).Add(s), p.add(f.outward(before).times(s)), f.along(before))
	}
}

// onCircle is the point of a circle on the line through q the way u, the one
// closer to q.
func onCircle(c place, radius real.Real, q, u place) place {
	// |q + t·u − c|² = radius² is t² + 2bt + w² − radius² = 0.
	w := q.sub(c)
	b := w.dot(u)
	root := b.Mul(b).Sub(w.dot(w)).Add(radius.Mul(radius)).Sqrt()
	if b.Sign() < 0 {
		root = root.Neg()
	}
	return q.add(u.times(root.Sub(b)))
}
