package nest

import (
	"math"

	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
)

// Strip lays every piece in a strip of height h, as short as it can, and says
// how long that is. It returns nothing if a piece fits at no turn.
func Strip(h, gap length.Len, items []Item, opt Options) ([]Placed, length.Len) {
	// As long as all of them end to end: greedy laying can't fail.
	var long int64
	for _, it := range items {
		lo, hi := ringOf(it.Outline).box()
		long += int64(it.Count) * (hi.x - lo.x + hi.y - lo.y + int64(gap))
	}
	m := newModel(newContainer(length.Len(long), h, gap), items)
	for i, it := range items {
		if it.Count > 0 && len(m.turns[i]) == 0 {
			return nil, 0
		}
	}
	spots := m.startStrip()
	if len(spots) > 1 {
		spots = m.squeeze(spots, opt)
	}
	return m.placed(spots), length.Len(m.reach(spots))
}

// startStrip lays the strip greedily, the shortest of a few orders.
func (m *model) startStrip() []spot {
	var best []spot
	for _, order := range m.orders() {
		s := m.greedy(m.counts(), order, rules[1])
		if best == nil || m.reach(s) < m.reach(best) {
			best = s
		}
	}
	return best
}

// reach is how far to the right the spots go.
func (m *model) reach(spots []spot) int64 {
	var x int64
	for _, s := range spots {
		x = max(x, s.at.x+m.shapes[s.shape].w)
	}
	return x
}

// How hard Strip tries: work in all.
var stripWork = map[rect.Effort]int{rect.Quick: 100_000_000, rect.Usual: 1_000_000_000, rect.Thorough: 20_000_000_000}

// squeeze shortens the strip step by step, separating the pieces each time;
// first by bold steps and with shake-ups when stuck, then by ever finer ones.
func (m *model) squeeze(best []spot, opt Options) []spot {
	s := newSeparator(m, best, opt.Seed)
	limit := stripWork[opt.Effort]
	stop := func() bool { return s.work >= limit || opt.stopped() }
	m.w = m.reach(best)
	best = m.explore(s, best, func() bool { return s.work >= limit*4/5 || opt.stopped() })
	return m.compress(s, best, stop)
}

const exploreStep = 0.003

func (m *model) explore(s *separator, best []spot, stop func() bool) []spot {
	type stuck struct {
		spots []spot
		total float64
	}
	var pool []stuck
	m.w = shorter(m.reach(best), exploreStep)
	s.cut(best)
	for !stop() {
		if s.separate(budget{100, 3}, stop) {
			best = append([]spot(nil), s.spots...)
			pool = pool[:0]
			m.w = shorter(m.reach(best), exploreStep)
			s.forget()
			s.cut(best)
			continue
		}
		now := stuck{append([]spot(nil), s.spots...), s.total()}
		at := len(pool)
		for at > 0 && pool[at-1].total > now.total {
			at--
		}
		pool = append(pool, stuck{})
		copy(pool[at+1:], pool[at:])
		pool[at] = now
		// Three draws, the least: the better ones are taken up more often.
		k := min(s.rng.below(int64(len(pool))), s.rng.below(int64(len(pool))), s.rng.below(int64(len(pool))))
		s.forget()
		s.reset(pool[k].spots)
		s.shake()
	}
	return best
}

// shorter is a length less a part of it.
func shorter(l int64, part float64) int64 {
	return l - max(1, int64(math.Round(float64(float64(l)*part))))
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

// shake swaps two large pieces of different items.
func (s *separator) shake() {
	n := int64(len(s.spots))
	big := s.m.area[s.m.shapes[s.spots[s.rng.below(n)].shape].item]
	pick := func(not int) int {
		best := -1
		for range 20 {
			i := int(s.rng.below(n))
			it := s.m.shapes[s.spots[i].shape].item
			if s.m.area[it] < big/2 || not >= 0 && it == s.m.shapes[s.spots[not].shape].item {
				continue
			}
			return i
		}
		return best
	}
	i := pick(-1)
	if i < 0 {
		return
	}
	j := pick(i)
	if j < 0 {
		return
	}
	a, b := s.spots[i], s.spots[j]
	ca, cb := s.m.centre(a), s.m.centre(b)
	s.shift(i, spot{a.shape, a.at.add(cb).sub(ca)})
	s.shift(j, spot{b.shape, b.at.add(ca).sub(cb)})
}

// centre is the middle of a spot's bounding box.
func (m *model) centre(p spot) vec {
	sh := &m.shapes[p.shape]
	return vec{p.at.x + sh.w/2, p.at.y + sh.h/2}
}

func (m *model) compress(s *separator, best []spot, stop func() bool) []spot {
	step := 0.0005
	for step > 0.000005 && !stop() {
		m.w = shorter(m.reach(best), step)
		s.forget()
		s.cut(best)
		if s.separate(budget{50, 3}, stop) {
			best = append([]spot(nil), s.spots...)
		} else {
			step *= 0.7
		}
	}
	return best
}
