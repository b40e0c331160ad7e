package pack

import (
	"math"

	"example.org/matside/plan/internal/random"
	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
)

// diver packs what is needed by relaxations: loads that one cuts are taken,
// and what is left is relaxed anew, until nothing is left (diving; common to
// branch and price).
type diver struct {
	*solver
	mosaic *mosaic
	pool   []load  // to start a relaxation from
	cost   float64 // of the whole need's relaxation, in loads
	until  int     // how many mosaics may be solved
}

// How often loads are looked for at the start of a dive and at each step.
const (
	roundsFirst = 300
	roundsNext  = 100
)

// spare is how much better than needed a relaxation is made: what is over
// helps those after it.
const spare = 0.1

// trifle is less than a load that matters: demands are shaken by some of it,
// see package cover.
const trifle = 0.01

// dive packs the whole need, starting from a pool of loads that hold it.
func (s *solver) dive(pool []load) (*diver, []load) {
	d := &diver{solver: s, mosaic: s.newMosaic(s.tiles()), pool: pool, until: math.MaxInt}
	n := s.all.clone()
	r := d.relax(n, pool)
	r.generate(roundsFirst, float64(s.Lower))
	d.pool, d.cost = r.found(), r.program.Cost()
	out := r.fixed()
	out = append(out, d.rest(n, r.found(), d.whole(d.cost)-len(out), math.MaxInt, (*relaxation).fixed)...)
	if !n.empty() {
		return d, nil
	}
	return d, out
}

// whole is how many loads a relaxation's cost comes to.
func (d *diver) whole(cost float64) int { return max(d.Lower, int(math.Ceil(cost-trifle))) }

// rest packs what is left, by loads that choose takes out of it. More are
// looked for only where those there are don't do with aim loads: what a
// relaxation gains in fractions is lost again in whole loads. It gives up,
// returning nil, where more than most are needed or too many mosaics were.
func (d *diver) rest(n *need, pool []load, aim, most int, choose func(*relaxation) []load) (out []load) {
	for !n.empty() {
		r := d.relax(n, pool)
		r.generate(roundsNext, float64(aim-len(out))-spare)
		if aim = max(aim, len(out)+int(math.Ceil(r.program.Cost()-trifle))); aim > most || d.mosaic.solved > d.until {
			return nil
		}
		chosen := choose(r)
		if len(chosen) == 0 { // but for rounding there is always one
			return nil
		}
		out, pool = append(out, chosen...), r.found()
	}
	return out
}

// latest is how many of the last loads are packed over, when little was left
// to choose from, and about as many as that of those before them.
const latest = 16

// over packs some loads over, again and again, while there is a load more
// than the relaxation says and work left for it.
func (d *diver) over(loads []load) []load {
	d.until = d.mosaic.solved + mosaics(d.Effort)
	for try := 0; len(loads) > d.whole(d.cost) && d.mosaic.solved < d.until && !d.stopped(); try++ {
		kept, some := d.some(loads, try)
		n := &need{make([]int, len(d.Kinds)), make([]int, len(d.solids))}
		for i := range some {
			n.addLoad(&some[i], 1)
		}
		draws := random.Source(try)
		aim := len(some) - 1
		if fewer := d.rest(n, d.pool, aim, aim, func(r *relaxation) []load { return r.drawn(&draws) }); fewer != nil {
			loads = append(kept, fewer...)
		}
	}
	return loads
}

// mosaics is how many an effort may solve to pack loads over.
func mosaics(e rect.Effort) int {
	switch e {
	case rect.Quick:
		return 0
	case rect.Thorough:
		return 20_000
	}
	return 100
}

// some picks loads to pack over: the last ones, and others no two of which are
// copies of one, not the same in each try.
func (d *diver) some(loads []load, try int) (kept, some []load) {
	early := max(0, len(loads)-latest)
	unlike := 0
	first := func(i int) bool { return i == 0 || &loads[i].offers[0] != &loads[i-1].offers[0] }
	for i := range early {
		if first(i) {
			unlike++
		}
	}
	step := unlike/latest + 1
	for i := range early {
		if first(i) {
			unlike++
		}
		if first(i) && (unlike+try)%step == 0 {
			some = append(some, loads[i])
		} else {
			kept = append(kept, loads[i])
		}
	}
	return kept, append(some, loads[early:]...)
}

// fixed takes every load that the relaxation cuts once or more as often as it
// says, or else the one it cuts most of, out of what is needed.
func (r *relaxation) fixed() (out []load) {
	most, level := 0, r.program.Level()
	for c, v := range level {
		if v > level[most] {
			most = c
		}
		if v > 0.999 {
			out = append(out, r.cut(c, int(v+0.001))...)
		}
	}
	if len(out) == 0 {
		out = r.cut(most, 1)
	}
	return out
}

// drawn takes one load by chance, one that is cut more often the likelier, and
// half of its copies.
func (r *relaxation) drawn(draws *random.Source) []load {
	best, most := 0, 0.0
	level := r.program.Level()
	for c, v := range level {
		if v > 0 {
			if chance := float64(min(v, 1) * (1.5 + draws.Unit())); chance > most {
				best, most = c, chance
			}
		}
	}
	return r.cut(best, max(1, int(level[best]/2)))
}

// cut takes so many copies of a column's load out of what is needed, or as
// many as there is need for.
func (r *relaxation) cut(column, times int) (out []load) {
	l := r.s.trimmedTo(&r.columns[column], r.need)
	if len(l.offers) == 0 {
		return nil
	}
	for range min(times, r.need.times(&l)) {
		out = append(out, l)
		r.need.addLoad(&l, -1)
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
