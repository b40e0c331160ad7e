package rect

// emptying is a local search for one bin fewer: the weakest bin is given up
// and its pieces are left over; again and again one to three bins are packed
// anew together with what is left over, and the change is kept unless too much
// worth stays outside. Many have emptied bins in such ways; the nearest is the
// consistent neighbourhood search of Buljubasic and Vasquez (2016) for bins in one dimension.
type emptying struct {
	lane
	bins  [][]spot
	n     []int     // left over
	v     []float64 // worth by kind
	given int       // bins of the best when its weakest was given up
	wide  bool      // moves vary in width just now
}

func (s *search) newEmptying() *emptying {
	e := &emptying{wide: true, v: s.worth(1), n: make([]int, len(s.p.kinds))}
	e.set(s)
	return e
}

// round goes on from where it was, or from a packing with fewer bins, for so
// much work, and saves what bins it can. Moves of the one and of the other
// width take turns.
func (e *emptying) round(from []pattern, work int64) {
	if e.offer(from); e.given != e.count {
		e.start()
	}
	for until := e.beam.work + work; e.beam.work < until && !e.met() && !e.halted(); e.wide = !e.wide {
		for e.run(work/turnsOfWidth+1) && !e.met() {
			e.start()
		}
	}
}

// turnsOfWidth is how often a round changes the width of its moves.
const turnsOfWidth = 5

// start gives up the weakest bin of the best packing.
func (e *emptying) start() {
	e.bins = e.bins[:0]
	for _, p := range e.best {
		for range p.times {
			e.bins = append(e.bins, p.spots)
		}
	}
	weakest := 0
	for i := range e.bins {
		if e.value(e.bins[i]) < e.value(e.bins[weakest]) {
			weakest = i
		}
	}
	e.given = e.count
	clear(e.n)
	e.tally(e.bins[weakest], +1)
	last := len(e.bins) - 1
	e.bins[weakest] = e.bins[last]
	e.bins = e.bins[:last]
}

func (e *emptying) value(bin []spot) float64 {
	sum := 0.0
	for _, sp := range bin {
		sum += e.v[sp.kind]
	}
	return sum
}

// tally adds a bin's pieces to what is left over, or takes them away.
func (e *emptying) tally(bin []spot, sign int) {
	for _, sp := range bin {
		e.n[sp.kind] += sign
	}
}

// run makes moves until nothing is left over, the work is spent, or the search
// is halted. It says whether a bin was saved.
func (e *emptying) run(work int64) bool {
	for until := e.beam.work + work; e.beam.work < until && !e.s.ask(); {
		r := 1 + e.rng.Below(2)
		if e.rng.Below(8) == 0 {
			r = 3
		}
		e.move(min(r, len(e.bins)))
		if total(e.n) == 0 {
			e.done()
			return true
		}
	}
	return false
}

// move packs r bins anew, quickly, or while the moves are wide carefully as well:
// some instances need many moves, some what only a wide beam finds. The
// threshold below which a worse result is kept is drawn anew for each move
// (Dueck and Scheuer's threshold accepting, shaken).
func (e *emptying) move(r int) {
	for i := range r { // the chosen bins change places with the last r
		j, z := e.rng.Below(len(e.bins)-i), len(e.bins)-1-i
		e.bins[j], e.bins[z] = e.bins[z], e.bins[j]
	}
	chosen := e.bins[len(e.bins)-r:]
	before, after := 0.0, 0.0
	for _, b := range chosen {
		before += e.value(b)
		e.tally(b, +1)
	}
	see, width := e.shaken(e.v), 4
	if e.wide {
		width = 2 << e.rng.Below(5)
	}
	fresh := make([][]spot, r)
	for i := range fresh {
		var worth float64
		fresh[i], worth = e.beam.run(e.n, e.v, see, manner{width: width, skips: 1, alike: 1})
		after += worth
		e.tally(fresh[i], -1)
	}
	if after >= before-mul(mul(0.01, e.s.bin), e.rng.Unit()) {
		copy(chosen, fresh)
		return
	}
	for i := range chosen {
		e.tally(fresh[i], +1)
		e.tally(chosen[i], -1)
	}
}

func (e *emptying) done() {
	var pats []pattern
	for _, b := range e.bins {
		if len(b) > 0 {
			pats = append(pats, pattern{b, 1})
		}
	}
	e.offer(pats)
}
