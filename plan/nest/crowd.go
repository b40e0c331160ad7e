package nest

import (
	"cmp"
	"slices"

	"example.org/matside/plan/rect"
)

// How hard crowding tries: attempts for each piece, and moves in an attempt.
var crowdEffort = map[rect.Effort]struct{ attempts, moves int }{
	rect.Quick:    {1, 1_000},
	rect.Usual:    {2, 4_000},
	rect.Thorough: {10, 60_000},
}

// crowdAll crowds in pieces that found no free place, the most valuable first,
// as long as one of them can be got in.
func (m *model) crowdAll(spots []spot, left []int, opt Options) []spot {
	e := crowdEffort[opt.Effort]
	seed := opt.Seed
	for again := true; again && !opt.stopped(); {
		again = false
		for _, item := range m.waiting(spots, left) {
			for try := 0; try < e.attempts && !again; try++ {
				seed++
				var more []spot
				if more, again = m.crowd(spots, item, e.moves, seed, opt.Stop); again {
					spots = more
				}
			}
			if again {
				break
			}
		}
	}
	return spots
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
func (m *model) crowd(spots []spot, item, moves int, seed uint64, stop func() bool) ([]spot, bool) {
	s := newSeparator(m, append(slices.Clone(spots), spot{shape: m.turns[item][0]}), seed)
	s.scatter(len(spots))
	for s.moves < moves && (stop == nil || !stop()) {
		s.pass()
		if s.total() == 0 {
			return s.spots, true
		}
		s.reweigh()
	}
	return nil, false
}

// scatter throws piece i somewhere.
func (s *separator) scatter(i int) {
	turns := s.m.turns[s.m.shapes[s.spots[i].shape].item]
	sh := turns[s.rng.below(int64(len(turns)))]
	z := &s.m.shapes[sh]
	s.spots[i] = spot{sh, vec{s.rng.within(0, s.m.w-z.w), s.rng.within(0, s.m.h-z.h)}}
	s.measure(i)
}
