package nest

import (
	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
)

// Strip lays every piece in a strip of height h, as short as it can, and says
// how long that is. It returns nothing if a piece fits at no turn.
func Strip(h, gap length.Len, items []Item, opt Options) ([]Placed, length.Len) {
	m, ok := newStrip(h, gap, items)
	if !ok {
		return nil, 0
	}
	spots, _ := m.strip(stripEfforts[opt.Effort], opt)
	return m.placed(spots), length.Len(m.reach(spots))
}

// newStrip is a model of a strip as long as all pieces end to end, so that
// greedy laying can't fail; false if a piece fits at no turn.
func newStrip(h, gap length.Len, items []Item) (*model, bool) {
	var long int64
	for _, it := range items {
		lo, hi := ringOf(it.Outline).box()
		long += int64(it.Count) * (hi.x - lo.x + hi.y - lo.y + int64(gap))
	}
	m := newModel(newContainer(length.Len(long), h, gap), items)
	for i, it := range items {
		if it.Count > 0 && len(m.turns[i]) == 0 {
			return nil, false
		}
	}
	return m, true
}

// strip is Strip on a model; work is what was done.
func (m *model) strip(e stripEffort, opt Options) (spots []spot, work int) {
	best := m.startStrip()
	if len(best) < 2 {
		return best, 0
	}
	return m.squeeze(best, e, opt)
}

// startStrip lays the strip greedily, the shortest of a few orders.
func (m *model) startStrip() []spot {
	var best []spot
	for _, order := range m.orders() {
		s := m.greedy(nil, m.counts(), order, rules[1])
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

// stripEffort is how hard to try: searches side by side, and work in each.
type stripEffort struct{ searches, work int }

var stripEfforts = map[rect.Effort]stripEffort{
	rect.Quick:    {1, 100_000_000},
	rect.Usual:    {1, 1_000_000_000},
	rect.Thorough: {2, 2_000_000_000},
}

// Searches do their work in rounds: first each for itself, then every one from
// the shortest strip so far; the last rounds are for compressing.
const (
	rounds        = 20
	aloneRounds   = 8
	exploreRounds = 18
)

// squeeze shortens the strip step by step, separating the pieces each time:
// first by bold steps and with shake-ups when stuck, then by ever finer ones.
func (m *model) squeeze(best []spot, e stripEffort, opt Options) ([]spot, int) {
	if e.searches > 1 {
		m.makeRegions()
	}
	all := make([]*squeezer, e.searches)
	for i := range all {
		all[i] = newSqueezer(m, best, opt.Seed+uint64(i))
	}
	for round := range rounds {
		share := e.work / rounds * (round + 1)
		sideBySide(len(all), opt.Stop, func(i int, stop func() bool) {
			all[i].work(round, func() bool { return all[i].s.work >= share || stop() })
		})
		lead := 0
		for i, q := range all {
			if m.reach(q.best) < m.reach(all[lead].best) {
				lead = i
			}
		}
		for _, q := range all {
			if round+1 >= aloneRounds {
				q.follow(all[lead].best)
			}
		}
		if opt.stopped() {
			break
		}
	}
	work := 0
	for _, q := range all {
		work += q.s.work
	}
	return all[0].best, work
}
