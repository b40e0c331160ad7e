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
	s := newSearch(newProblem(w, h, sizes), opt)
	s.run()
	return s.p.bins(s.best), nil
}

func fits(w, h length.Len, s Size) bool {
	return s.W <= w && s.H <= h || s.Turn && s.H <= w && s.W <= h
}

// search looks for fewer bins until it meets the lower bound or its work is
// spent.
type search struct {
	p     *problem
	opt   Options
	beam  *beam
	bin   float64 // area
	lower int
	pool  pool
	rng   rng
	best  []pattern
	count int // bins of best
}

func newSearch(p *problem, opt Options) *search {
	s := &search{p: p, opt: opt, beam: newBeam(p.w, p.h, p.kinds), lower: opt.Lower, pool: pool{seen: map[string]bool{}}}
	s.bin = mul(float64(p.w), float64(p.h))
	total := 0.0
	for _, k := range p.kinds {
		total += mul(k.area(), float64(k.n))
	}
	s.lower = max(s.lower, int(total/s.bin*(1-1e-9)+0.999999))
	return s
}

func (s *search) counts() []int {
	n := make([]int, len(s.p.kinds))
	for i, k := range s.p.kinds {
		n[i] = k.n
	}
	return n
}

// take offers a whole packing.
func (s *search) take(pats []pattern) {
	n := 0
	for _, p := range pats {
		n += p.times
	}
	if s.best == nil || n < s.count {
		s.best, s.count = pats, n
	}
}

func (s *search) done() bool { return s.best != nil && s.count <= s.lower }

// inTurn packs one bin after the other, each for the most value.
func (s *search) inTurn(v []float64, pr params) []pattern {
	n := s.counts()
	var out []pattern
	for {
		spots, val := s.beam.run(n, v, v, pr)
		if val == 0 {
			return out
		}
		pat := pattern{spots, times(spots, n)}
		for _, sp := range spots {
			n[sp.kind] -= pat.times
		}
		out = append(out, pat)
	}
}

// times is how often a bin of spots can be cut out of n.
func times(spots []spot, n []int) int {
	used := map[int]int{}
	for _, s := range spots {
		used[s.kind]++
	}
	t := -1
	for k, u := range used {
		if q := n[k] / u; t < 0 || q < t {
			t = q
		}
	}
	return t
}

func (s *search) run() {
	if len(s.p.kinds) == 0 {
		return
	}
	base := func(beta float64) []float64 {
		v := make([]float64, len(s.p.kinds))
		for i, k := range s.p.kinds {
			a := k.area()
			v[i] = a + mul(beta, a/s.bin*a)
		}
		return v
	}
	betas := []float64{0.3, 1, 3, 0.1}
	for _, w := range []int{1, 4, 16} {
		for _, b := range betas {
			if s.offer(s.inTurn(base(b), params{width: w})); s.done() {
				return
			}
		}
	}
	for w := tune.width; w < 2000 && s.work() < tune.budget*1e6; w = w * 3 / 2 {
		if s.opt.Effort == Quick || s.opt.Stop != nil && s.opt.Stop() {
			return
		}
		if pats := s.dive(tune.first, tune.next, params{width: w, skips: tune.skips}); pats != nil {
			if s.offer(pats); s.done() {
				return
			}
		}
		for _, b := range betas {
			if s.offer(s.inTurn(base(b), params{width: 4 * w, skips: 0})); s.done() {
				return
			}
		}
	}
}

func (s *search) work() int { return int(s.beam.evals) }

// offer takes a packing and keeps its patterns.
func (s *search) offer(pats []pattern) {
	s.take(pats)
	for _, p := range pats {
		s.pool.add(p.spots)
	}
}

// tune holds what the searches were tuned by.
var tune = struct {
	width, skips, first, next int
	tries, cols, budget       int
	noise                     float64
	trace                     bool
}{width: 16, skips: 1, first: 100, next: 10, tries: 4, cols: 10, budget: 20, noise: 0.2}
