package shape

import (
	"example.org/matside/plan/internal/real"
	"example.org/matside/plan/length"
)

// curveError is how far outside an arc its corners may lie, before each of
// their coordinates is rounded out to a whole nanometre.
const curveError = length.Millimetre/100 - 2*length.Nanometre

// flatten is the corners of f with each arc made into the straight sides that
// touch it from outside. For each corner that lies on or beyond an arc it gives
// the arc's centre, else nil.
func (f figure) flatten() (corners []place, centres []*place) {
	for i, s := range f {
		before := f[(i+len(f)-1)%len(f)]
		centre := s.centre
		if centre == nil {
			centre = before.centre
		}
		smooth := s.centre != nil && before.centre != nil // one arc goes on in the other
		if !smooth {
			corners, centres = append(corners, s.from), append(centres, centre)
		}
		if s.centre == nil {
			continue
		}
		for _, p := range touching(*s.centre, s.from, f.corner(i+1)) {
			corners, centres = append(corners, p), append(centres, s.centre)
		}
	}
	return corners, centres
}

// touching is the corners between the straight sides that touch the arc about
// c from p to q, clockwise to the eye. There are touching sides at both ends and
// wherever the arc runs level or upright, so the corners reach no farther up,
// down, left or right than the arc does; between those they are evenly spread.
func touching(c, p, q place) (corners []place) {
	radius := c.distance(p)
	start, end := p.sub(c).angle(), q.sub(c).angle()
	turn := real.Pi.Add(real.Pi)
	if !start.Less(end) {
		end = end.Add(turn)
	}
	from := start
	for n := int64(-4); n <= 8; n++ {
		// n quarter turns from level; those at an end come as the end itself.
		at := real.Pi.Half().Mul(real.Int(n))
		if negligible(start.Sub(at)) || negligible(end.Sub(at)) || at.Less(start) || end.Less(at) {
			continue
		}
		corners = append(corners, spread(c, radius, from, at)...)
		from = at
	}
	return append(corners, spread(c, radius, from, end)...)
}

// spread is the corners of the fewest evenly turned touching sides that stay
// within curveError of the arc from one angle to another.
func spread(c place, radius, from, to real.Real) (corners []place) {
	reach := radius.Quo(radius.Add(real.Len(curveError))) // cosine of half a step at most
	step := real.Atan(real.Int(1).Sub(reach.Mul(reach)).Sqrt().Quo(reach))
	step = step.Add(step)
	n := real.Int(1)
	for n.Mul(step).Less(to.Sub(from)) {
		n = n.Add(real.Int(1))
	}
	half := to.Sub(from).Quo(n).Half()
	_, cos := real.SinCos(half)
	far := radius.Quo(cos)
	for at := from.Add(half); at.Less(to); at = at.Add(half).Add(half) {
		sin, cos := real.SinCos(at)
		corners = append(corners, c.add(place{cos, sin}.times(far)))
	}
	return corners
}

// negligible says whether r is 0 but for what reckoning loses.
func negligible(r real.Real) bool { return r.Mul(r).Less(real.Float(0x1p-300)) }
