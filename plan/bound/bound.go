package bound

import (
	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
)

// Options says how hard to try.
type Options struct {
	Effort rect.Effort
	// Enough stops the search for a better bound once this many bins are
	// proved necessary: the caller has a packing in Enough bins, so nothing
	// more can be learnt. Zero means it has none.
	Enough int
	// Stop, if not nil, is asked by Loads now and then; once it says true,
	// what is proved so far is the answer.
	Stop func() bool
}

// done says that a better bound than best is of no use.
func (o Options) done(best int) bool {
	return o.Enough > 0 && best >= o.Enough || o.stopped()
}

func (o Options) stopped() bool { return o.Stop != nil && o.Stop() }

// Bins returns a number of w x h bins below which the pieces of sizes cannot
// be packed, edges parallel to the bin's, turned only where Size.Turn allows.
// Pieces may touch each other and the bin's edge; a gap or margin is the
// caller's to add to both piece and bin.
//
//	(1) no packing uses fewer bins;
//	(2) the same input gives the same answer on any machine;
//	(3) it is at least the area bound.
//
// A size that fits no bin, or of which there are none, counts for nothing.
// Not promised: that it never falls when a piece is added or a bin shrinks,
// because the stronger methods search under a cap of counted work.
func Bins(w, h length.Len, sizes []rect.Size, opt Options) int {
	s := &search{best: areaBins(w, h, sizes), enough: opt.Enough}
	if s.best == 0 {
		return 0
	}
	s.problem = newProblem(w, h, sizes)
	for _, m := range methods(opt.Effort) {
		if s.done() {
			break
		}
		m(s)
	}
	return s.best
}

// search is what is proved so far and what the next method can start from.
type search struct {
	*problem
	best   int
	enough int
	pairs  []pair // of most promise, best first
}

// done says that more cannot be proved.
func (s *search) done() bool { return s.enough > 0 && s.best >= s.enough }

// raise notes that n bins are proved necessary.
func (s *search) raise(n int64) { s.best = max(s.best, int(n)) }

// methods lists what an effort pays for, cheapest first.
func methods(e rect.Effort) []func(*search) {
	out := []func(*search){(*search).bySize, (*search).byPairs}
	switch e {
	case rect.Usual:
		out = append(out, tuning(3, 1<<27))
	case rect.Thorough:
		out = append(out, tuning(12, 1<<30))
	}
	return out
}

// areaBins is the pieces' area over the bin's, rounded up, in exact
// arithmetic whatever the lengths.
func areaBins(w, h length.Len, sizes []rect.Size) int {
	var total length.Area
	for _, s := range sizes {
		if fits(w, h, s) {
			total = total.Add(length.Mul(s.W, s.H).Times(s.Count))
		}
	}
	if total.IsZero() {
		return 0
	}
	return int(total.CeilDiv(length.Mul(w, h)))
}

// fits tells whether one piece of s goes into a bin at all.
func fits(w, h length.Len, s rect.Size) bool {
	if s.Count <= 0 || s.W <= 0 || s.H <= 0 {
		return false
	}
	return s.W <= w && s.H <= h || s.Turn && s.H <= w && s.W <= h
}
