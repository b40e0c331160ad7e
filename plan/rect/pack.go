package rect

import (
	"fmt"

	"example.org/matside/plan/length"
)

// Pack puts every rectangle, Count copies of each size, into as few w x h bins
// as it can. It returns ErrTooBig, naming the size, when one fits at no
// allowed turn; otherwise every copy is placed.
func Pack(w, h length.Len, sizes []Size, opt Options) ([]Bin, error) {
	for i, s := range sizes {
		if s.Count > 0 && !fits(w, h, s) {
			return nil, fmt.Errorf("size %d: %w", i, ErrTooBig)
		}
	}
	p := newProblem(w, h, sizes, nil)
	if len(p.kinds) == 0 {
		return nil, nil
	}
	s := newSearch(p, opt)
	s.run()
	return p.bins(s.best), nil
}

func fits(w, h length.Len, s Size) bool {
	return s.W <= w && s.H <= h || s.Turn && s.H <= w && s.W <= h
}

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

// widest is where the beam stops growing: small problems are exhausted before.
const widest = 2000

// search looks for fewer bins until it meets the lower bound or its work is
// spent.
type search struct {
	p      *problem
	opt    Options
	beam   *beam
	bin    float64 // area
	lower  int
	pool   pool
	prices []float64 // of the whole problem's relaxation, as last solved
	see    []float64 // scratch of shaken
	rng    rng
	best   []pattern
	count  int // bins of best
}

func newSearch(p *problem, opt Options) *search {
	s := &search{p: p, opt: opt, beam: newBeam(p.w, p.h, p.kinds)}
	s.bin = s.beam.bin
	all := 0.0
	for _, k := range p.kinds {
		all += mul(k.area(), float64(k.n))
	}
	// the area's bound; what rounding could hide is given away
	s.lower = max(opt.Lower, int(mul(all/s.bin, 1-1e-9)+0.999999))
	s.prices = make([]float64, len(p.kinds))
	for i, k := range p.kinds {
		s.prices[i] = k.area() / s.bin
	}
	s.see = make([]float64, len(p.kinds))
	return s
}

func (s *search) counts() []int {
	n := make([]int, len(s.p.kinds))
	for i, k := range s.p.kinds {
		n[i] = k.n
	}
	return n
}

// upright says that kind k fits the bin as it is, not only turned.
func (s *search) upright(k int) bool {
	return s.p.kinds[k].w <= s.p.w && s.p.kinds[k].h <= s.p.h
}

// offer keeps a whole packing if it is the best, and its patterns anyway.
func (s *search) offer(pats []pattern) {
	if pats == nil {
		return
	}
	for _, p := range pats {
		s.pool.add(p.spots)
	}
	if n := binsOf(pats); s.best == nil || n < s.count {
		s.best, s.count = pats, n
	}
}

func (s *search) done() bool { return s.best != nil && s.count <= s.lower }

func (s *search) halted() bool { return s.opt.Stop != nil && s.opt.Stop() }

// worth is a value for each kind that grows a little faster than its area:
// large pieces first, small ones are easier to place later.
func (s *search) worth(beta float64) []float64 {
	v := make([]float64, len(s.p.kinds))
	for i, k := range s.p.kinds {
		a := k.area()
		v[i] = a + mul(beta, mul(a/s.bin, a))
	}
	return v
}

// shaken gives values up to a quarter up or down from v; it is overwritten by
// the next call.
func (s *search) shaken(v []float64) []float64 {
	for k := range s.see {
		s.see[k] = mul(v[k], 0.75+mul(0.5, s.rng.unit()))
	}
	return s.see
}

// inTurn packs one bin after the other, each for the most value, as often as
// the pieces allow.
func (s *search) inTurn(v []float64, m manner) []pattern {
	n := s.counts()
	var out []pattern
	for left := total(n); left > 0; {
		spots, _ := s.beam.run(n, v, v, m)
		p := pattern{spots, times(spots, n)}
		for _, sp := range spots {
			n[sp.kind] -= p.times
		}
		out = append(out, p)
		left -= p.times * len(spots)
	}
	return out
}

// times is how often a bin of spots can be cut out of n.
func times(spots []spot, n []int) int {
	used := make([]int, len(n))
	for _, s := range spots {
		used[s.kind]++
	}
	t := -1
	for k, u := range used {
		if u > 0 && (t < 0 || n[k]/u < t) {
			t = n[k] / u
		}
	}
	return t
}

func total(n []int) int {
	sum := 0
	for _, c := range n {
		sum += c
	}
	return sum
}

func binsOf(pats []pattern) int {
	sum := 0
	for _, p := range pats {
		sum += p.times
	}
	return sum
}

// budget is the work an effort allows.
func (e Effort) budget() int64 {
	switch e {
	case Quick:
		return 100_000
	case Thorough:
		return 300_000_000
	default:
		return 8_000_000
	}
}

// run tries simple packings first, then, with growing width, turns to emptying
// bins, to diving, and to packing bins in turn.
func (s *search) run() {
	budget := s.opt.Effort.budget()
	betas := []float64{0.3, 1, 3, 0.1}
	over := func() bool { return s.done() || s.beam.work > budget || s.halted() }
	turns := func(m manner) bool {
		for _, b := range betas {
			if s.offer(s.inTurn(s.worth(b), m)); over() {
				return true
			}
		}
		return false
	}
	for _, w := range []int{1, 4, 16} {
		if turns(manner{width: w}) {
			return
		}
	}
	for width := 16; width < widest; width += width / 2 {
		for s.newEmptying().run(budget / 16) {
			if over() {
				return
			}
		}
		s.offer(s.dive(manner{width: width, skips: 1, alike: 1}))
		if over() || turns(manner{width: 4 * width, alike: 1}) {
			return
		}
	}
}
