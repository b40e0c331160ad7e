package rect

import (
	"fmt"
	"sync/atomic"

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
	switch {
	case len(p.kinds) == 1:
		s.best = p.alone(opt.Effort)
	case opt.Effort == Thorough:
		// first the usual way, so that more effort is never worse
		if s.run(Usual); s.going() {
			s.run(Thorough)
		}
	default:
		s.run(opt.Effort)
	}
	return p.bins(s.best), nil
}

func fits(w, h length.Len, s Size) bool {
	return s.W <= w && s.H <= h || s.Turn && s.H <= w && s.W <= h
}

// search looks for fewer bins until it meets the lower bound or its work is
// spent. Two lanes go about it in rounds, at once where there are processors;
// what they found is looked at when a round is over, one lane after the other.
type search struct {
	p     *problem
	opt   Options
	bin   float64 // area
	lower int
	best  []pattern
	count int         // bins of best
	stop  atomic.Bool // the caller wants no more
}

func newSearch(p *problem, opt Options) *search {
	s := &search{p: p, opt: opt, bin: mul(float64(p.w), float64(p.h))}
	all := 0.0
	for _, k := range p.kinds {
		all += mul(k.area(), float64(k.n))
	}
	// the area's bound; what rounding could hide is given away
	s.lower = max(opt.Lower, 1, int(mul(all/s.bin, 1-1e-9)+0.999999))
	return s
}

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

// budget is the work an effort allows a run of both lanes: steps the beam looks at, some
// 0.1 µs each.
func (e Effort) budget() int64 {
	switch e {
	case Quick:
		return 100_000
	case Thorough:
		return 400_000_000
	default:
		return 8_000_000
	}
}

// widest is where the beam stops growing: small problems are exhausted before.
const widest = 2000

// run tries simple packings first, then, round by round with growing width,
// empties bins in one lane; in the other it builds towers, dives and packs bins
// in turn.
func (s *search) run(effort Effort) {
	budget := effort.budget()
	d := s.newDiving()
	for _, width := range []int{1, 4, 16} {
		if d.turns(manner{width: width}, budget); s.take(&d.lane) || d.beam.work > budget {
			return
		}
	}
	if s.p.many() && effort != Thorough && s.patterns(d, budget) {
		return
	}
	e := s.newEmptying()
	if effort == Thorough {
		e.rng = 2 // other moves than in the usual run before
	}
	ration := min(emptyingFirst, budget)
	for width := 16; width < widest; {
		d.learn(s.best)
		share := min(ration, budget-e.beam.work-d.beam.work)
		if s.few() {
			share /= 4
		}
		together(
			&e.lane, func() { e.round(s.best, share) },
			&d.lane, func() { d.build(width, budget) },
		)
		if s.take(&e.lane) || s.take(&d.lane) || e.beam.work+d.beam.work > budget {
			return
		}
		ration += ration / 2
		if s.few() {
			width *= 4 // little comes of narrow towers
		} else {
			width += width / 2
		}
	}
}

// emptyingFirst is the first round's work of the emptying lane: most bins that can
// be emptied are by then. It grows as the other lane's width does.
const emptyingFirst = 5_000_000

// patterns dives a few times and says whether to leave it at that: when the best
// cannot be bettered, or the relaxation has twice seen no way to fewer bins.
// With many copies of each kind its optimum, rounded up, is hardly ever out of
// reach.
func (s *search) patterns(d *diving, budget int64) bool {
	for width := 16; width < widest/16; width *= 2 {
		d.round(width, budget)
		if s.take(&d.lane) || d.beam.work > budget || d.refused == 2 {
			return true
		}
	}
	return false
}

// take keeps a lane's best packing if it is better, and says whether to end.
func (s *search) take(l *lane) bool {
	if s.best == nil || l.count < s.count {
		s.best, s.count = l.best, l.count
	}
	s.ask()
	return !s.going()
}

// going says that the search is neither at its goal nor stopped.
func (s *search) going() bool { return s.count > s.lower && !s.stop.Load() }

// ask asks the caller whether to stop; only the caller's goroutine may.
func (s *search) ask() bool {
	if s.opt.Stop != nil && s.opt.Stop() {
		s.stop.Store(true)
	}
	return s.stop.Load()
}
