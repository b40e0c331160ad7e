package rect

import (
	"runtime"
	"sync"
	"sync/atomic"

	"example.org/matside/plan/internal/random"
)

// lane is a line of work of a search, with a beam and random numbers of its
// own, so that it can go on beside another.
type lane struct {
	s     *search
	beam  *beam
	rng   random.Source
	see   []float64   // scratch of shaken
	best  []pattern   // the best packing the lane knows of
	count int         // bins of best
	off   atomic.Bool // what it may find is no longer wanted
}

func (l *lane) set(s *search) {
	l.s, l.beam = s, newBeam(s.p.w, s.p.h, s.p.kinds)
	l.see = make([]float64, len(s.p.kinds))
}

// offer keeps a whole packing if it is the lane's best.
func (l *lane) offer(pats []pattern) {
	if n := binsOf(pats); pats != nil && (l.best == nil || n < l.count) {
		l.best, l.count = pats, n
	}
}

// met says that the lane has found a packing that cannot be bettered.
func (l *lane) met() bool { return l.best != nil && l.count <= l.s.lower }

// halted says that the lane should not go on.
func (l *lane) halted() bool { return l.off.Load() || l.s.stop.Load() }

// shaken gives values up to a quarter up or down from v; it is overwritten by
// the next call.
func (l *lane) shaken(v []float64) []float64 {
	for k := range l.see {
		l.see[k] = mul(v[k], 0.75+mul(0.5, l.rng.Unit()))
	}
	return l.see
}

// together runs one lane on this goroutine and two beside it. two is called off
// once one has met the bound, for what it finds is not looked at then: that
// way the result does not depend on which lane was faster.
func together(one *lane, first func(), two *lane, second func()) {
	if runtime.GOMAXPROCS(0) == 1 {
		if first(); !one.met() {
			second()
		}
		return
	}
	var wait sync.WaitGroup
	two.off.Store(false)
	wait.Go(second)
	first()
	two.off.Store(one.met())
	wait.Wait()
}
