package pack

import "example.org/matside/plan/length"

// How often loads are looked for at the start of a dive and at each step.
const (
	roundsFirst = 300
	roundsNext  = 20
)

// dive takes the loads that the relaxation cuts once or more as often as it
// says, or else the one it cuts most of, and relaxes what is left anew, until
// nothing is left (diving; common to branch and price). cost is the
// relaxation's own number of loads.
func (s *solver) dive(pool []load) (out []load, cost float64) {
	m := s.newMosaic(s.tiles())
	rest := s.all.clone()
	for rounds := roundsFirst; !rest.empty(); rounds = roundsNext {
		r := s.relax(m, rest, pool)
		r.generate(rounds)
		if out == nil {
			cost = r.program.Cost()
		}
		out = append(out, r.fixed()...)
		pool = r.columns
	}
	return out, cost
}

// fixed takes loads out of what is needed.
func (r *relaxation) fixed() []load {
	var out []load
	take := func(c, times int) {
		l := r.s.trimmedTo(&r.columns[c], r.need)
		if len(l.offers) == 0 {
			return
		}
		for range min(times, r.need.times(&l)) {
			out = append(out, l)
			r.need.addLoad(&l, -1)
		}
	}
	most, level := 0, r.program.Level()
	for c, v := range level {
		if v > level[most] {
			most = c
		}
		if v > 0.999 {
			take(c, int(v+0.001))
		}
	}
	if len(out) == 0 {
		take(most, 1)
	}
	return out
}

// corner is the top left corner of the box of parts.
func corner(parts []Part) (x, y length.Len) {
	x, y = parts[0].X, parts[0].Y
	for _, p := range parts {
		x, y = min(x, p.X), min(y, p.Y)
	}
	return x, y
}
