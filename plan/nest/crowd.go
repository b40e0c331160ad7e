package nest

import (
	"cmp"
	"slices"

	"example.org/matside/plan/rect"
)

// How hard crowding tries: failures in all before it gives up, attempts for
// an item, and work in an attempt (ten million pairs take about an eighth of a
// second).
var crowdEffort = map[rect.Effort]struct{ failures, attempts, work int }{
	rect.Quick:    {3, 1, 2_000_000},
	rect.Usual:    {6, 4, 8_000_000},
	rect.Thorough: {60, 20, 60_000_000},
}

// crowdAll crowds in pieces that found no free place, the most valuable first,
// as many of each as can be got in.
func (m *model) crowdAll(spots []spot, left []int, opt Options) []spot {
	e := crowdEffort[opt.Effort]
	seed := opt.Seed
	for _, item := range m.waiting(spots, left) {
		for failed := 0; failed < e.attempts && e.failures > 0 && m.waits(item, spots, left); {
			if opt.stopped() {
				return spots
			}
			seed++
			if more, ok := m.crowd(spots, item, e.work, seed, opt.Stop); ok {
				spots, failed = more, 0
			} else {
				failed++
				e.failures--
			}
		}
	}
	return spots
}

// waits reports whether pieces of an item are left over and the area left has
// room for one.
func (m *model) waits(item int, spots []spot, left []int) bool {
	return slices.Contains(m.waiting(spots, left), item)
}

// waiting are the items with pieces left over that the area left has room for,
// the most valuable first.
func (m *model) waiting(spots []spot, left []int) []int {
	laid := make([]int, len(left))
	room := float64(m.w) * float64(m.h)
	for _, s := range spots {
		item := m.shapes[s.shape].item
		laid[item]++
		room -= m.area[item]
	}
	var out []int
	for i, n := range left {
		if laid[i] < n && len(m.turns[i]) > 0 && m.area[i] <= room*(1+1e-9) {
			out = append(out, i)
		}
	}
	slices.SortStableFunc(out, func(a, b int) int { return cmp.Compare(m.value[b], m.value[a]) })
	return out
}

// crowd tries to get one more piece of an item into a layout by letting it
// overlap and driving the overlap out.
func (m *model) crowd(spots []spot, item, work int, seed uint64, stop func() bool) ([]spot, bool) {
	s := newSeparator(m, append(slices.Clone(spots), spot{shape: m.turns[item][0]}), seed)
	s.scatter(len(spots))
	return s.spots, s.drive(work, stop)
}

// drive moves pieces until no two overlap (true) or the work is done (false).
func (s *separator) drive(work int, stop func() bool) bool {
	for s.work < work && (stop == nil || !stop()) {
		s.pass()
		if s.total() == 0 {
			return true
		}
		s.reweigh()
	}
	return false
}

// scatter throws piece i somewhere.
func (s *separator) scatter(i int) {
	turns := s.m.turns[s.m.shapes[s.spots[i].shape].item]
	sh := turns[s.rng.below(int64(len(turns)))]
	z := &s.m.shapes[sh]
	s.shift(i, spot{sh, vec{s.rng.within(0, s.m.w-z.w), s.rng.within(0, s.m.h-z.h)}})
}
