package nest

import "math"

// A squeezer is one search for a shorter strip: a model whose length shrinks,
// and the separator at work in it.
type squeezer struct {
	m    *model
	s    *separator
	best []spot  // the shortest layout
	pool []stuck // what separating came to at the length being tried, least overlap first
	step float64 // how much to shorten by when compressing
}

// A stuck layout is one that could not be separated.
type stuck struct {
	spots []spot
	total float64
}

func newSqueezer(m *model, best []spot, seed uint64) *squeezer {
	own := *m // shares shapes and regions, not the length
	q := &squeezer{m: &own, s: newSeparator(&own, best, seed), best: best, step: compressFrom}
	q.shorten(exploreFrom)
	return q
}

// How much shorter the next strip to try is: from bold to fine over the
// exploring rounds, then finer with each failure.
const (
	exploreFrom  = 0.004
	exploreTo    = 0.001
	compressFrom = 0.0005
	compressTo   = 0.000005
	compressFade = 0.8
)

// work goes on for a round, until stopped.
func (q *squeezer) work(round int, stop func() bool) {
	if round < exploreRounds {
		q.explore(exploreFrom+float64((exploreTo-exploreFrom)*float64(round)/exploreRounds), stop)
		return
	}
	q.compress(stop)
}

// explore shortens the strip by the same step again and again. Where that
// fails, one of the layouts that failed, more likely a good one, is shaken and
// tried once more.
func (q *squeezer) explore(step float64, stop func() bool) {
	for !stop() {
		if q.s.separate(budget{100, 3}, stop) {
			q.best = append([]spot(nil), q.s.spots...)
			q.shorten(step)
			continue
		}
		if stop() { // the next round goes on from here
			return
		}
		q.keep(stuck{append([]spot(nil), q.s.spots...), q.s.total()})
		// Three draws, the least: the better ones are taken up more often.
		n := int64(len(q.pool))
		k := min(q.s.rng.below(n), q.s.rng.below(n), q.s.rng.below(n))
		q.s.forget()
		q.s.reset(q.pool[k].spots)
		q.s.shake()
	}
}

// keep puts a stuck layout in its place in the pool.
func (q *squeezer) keep(now stuck) {
	at := len(q.pool)
	q.pool = append(q.pool, stuck{})
	for ; at > 0 && q.pool[at-1].total > now.total; at-- {
		q.pool[at] = q.pool[at-1]
	}
	q.pool[at] = now
}

// compress shortens the strip by ever finer steps.
func (q *squeezer) compress(stop func() bool) {
	for q.step > compressTo && !stop() {
		q.shorten(q.step)
		if q.s.separate(budget{50, 3}, stop) {
			q.best = append([]spot(nil), q.s.spots...)
		} else if !stop() {
			q.step *= compressFade
		}
	}
}

// shorten takes up the shortest layout, cut by a part of its length.
func (q *squeezer) shorten(part float64) {
	l := q.m.reach(q.best)
	q.m.w = l - max(1, int64(math.Round(float64(float64(l)*part))))
	q.pool = q.pool[:0]
	q.s.forget()
	q.s.cut(q.best)
}

// follow takes up another search's layout if it is shorter.
func (q *squeezer) follow(best []spot) {
	if q.m.reach(best) < q.m.reach(q.best) {
		q.best = best
		q.shorten(exploreTo)
	}
}

// cut shortens a layout to the model's length: what lies beyond a random
// upright line moves left with the end.
func (s *separator) cut(spots []spot) {
	next := append([]spot(nil), spots...)
	by := s.m.reach(next) - s.m.w
	line := s.rng.below(s.m.w)
	for i := range next {
		if next[i].at.x+s.m.shapes[next[i].shape].w/2 > line {
			next[i].at.x -= by
		}
	}
	s.reset(next)
}

// shake stirs a layout: mostly it swaps two large pieces of different items,
// once or twice; one time in four it throws a quarter of the pieces anywhere.
func (s *separator) shake() {
	if s.rng.below(4) == 0 {
		n := int64(len(s.spots))
		for range max(1, n/4) {
			s.scatter(int(s.rng.below(n)))
		}
		return
	}
	for range 1 + s.rng.below(2) {
		s.swap()
	}
}

// swap swaps two large pieces of different items, if it meets two.
func (s *separator) swap() {
	n := int64(len(s.spots))
	big := s.m.area[s.item(int(s.rng.below(n)))]
	pick := func(not int) (int, bool) {
		for range 20 {
			i := int(s.rng.below(n))
			if s.m.area[s.item(i)] >= big/2 && (not < 0 || s.item(i) != s.item(not)) {
				return i, true
			}
		}
		return 0, false
	}
	i, ok1 := pick(-1)
	j, ok2 := pick(i)
	if !ok1 || !ok2 {
		return
	}
	a, b := s.spots[i], s.spots[j]
	ca, cb := s.m.centre(a), s.m.centre(b)
	s.shift(i, spot{a.shape, a.at.add(cb).sub(ca)})
	s.shift(j, spot{b.shape, b.at.add(ca).sub(cb)})
}

// item is the item of the i-th spot.
func (s *separator) item(i int) int { return s.m.shapes[s.spots[i].shape].item }

// centre is the middle of a spot's bounding box.
func (m *model) centre(p spot) vec {
	sh := &m.shapes[p.shape]
	return vec{p.at.x + sh.w/2, p.at.y + sh.h/2}
}
