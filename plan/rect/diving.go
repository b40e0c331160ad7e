package rect

// Work is counted in steps the beam looks at, some 0.1 µs each; this many
// multiplications of the simplex method make one.
const workOfLP = 64

// How column generation goes about it: rounds at the root of a dive and at
// each step below, columns taken from one run, runs before giving up.
const (
	roundsFirst   = 100
	roundsNext    = 10
	columnsAtOnce = 10
	pricings      = 4
)

// diving is the lane that builds whole packings: by prices, from a relaxation
// solved, rounded a little and solved again, or bin after bin by value.
type diving struct {
	lane
	pool   pool
	prices []float64 // of the whole problem's relaxation, as last solved
	// refused counts the dives for which that relaxation saw no way to fewer bins.
	refused int
	built   int // rounds of towers
}

func (s *search) newDiving() *diving {
	d := &diving{}
	d.set(s)
	for _, k := range s.p.kinds {
		d.prices = append(d.prices, k.area()/s.bin)
	}
	return d
}

// learn keeps a packing found elsewhere, and its patterns.
func (d *diving) learn(pats []pattern) {
	d.offer(pats)
	for _, p := range pats {
		d.pool.add(p.spots)
	}
}

// build builds towers and, if they might say less than patterns, goes on to a
// round.
func (d *diving) build(width int, budget int64) {
	if d.towers(10 * width); !d.met() && !d.s.few() {
		d.round(width, budget)
	}
}

// round dives once and packs bins in turn.
func (d *diving) round(width int, budget int64) {
	d.learn(d.dive(manner{width: width, skips: 1, alike: 1}))
	if !d.met() {
		d.turns(manner{width: 4 * width, alike: 1}, budget)
	}
}

// turns packs bins in turn by several values, as far as the budget goes.
func (d *diving) turns(m manner, budget int64) {
	for _, beta := range []float64{0.3, 1, 3, 0.1} {
		if d.learn(d.inTurn(d.s.worth(beta), m)); d.met() || d.halted() || d.beam.work > budget {
			return
		}
	}
}

// inTurn packs one bin after the other, each for the most value, as often as
// the pieces allow.
func (d *diving) inTurn(v []float64, m manner) []pattern {
	n := d.s.p.counts()
	var out []pattern
	for left := total(n); left > 0; {
		spots, _ := d.beam.run(n, v, v, m)
		p := pattern{spots, times(spots, n)}
		for _, sp := range spots {
			n[sp.kind] -= p.times
		}
		out = append(out, p)
		left -= p.times * len(spots)
	}
	return out
}

// dive fixes patterns where the relaxation says so and relaxes the rest anew,
// until all is packed. It gives up, returning nil, once it sees no way to fewer
// bins than the best.
func (d *diving) dive(m manner) []pattern {
	n := d.s.p.counts()
	var out []pattern
	bins, left := 0, total(n)
	for rounds := roundsFirst; left > 0; rounds = roundsNext {
		r := d.relax(n, d.prices)
		r.generate(rounds, m)
		if bins == 0 {
			copy(d.prices, r.v)
		}
		// demands are shaken by a trifle, see package cover: so is the optimum
		if bins+int(r.obj+0.998) >= d.count || d.halted() {
			if bins == 0 {
				d.refused++
			}
			return nil
		}
		fixed := r.fix()
		bins += binsOf(fixed)
		out = append(out, fixed...)
		left = total(n)
	}
	return out
}
