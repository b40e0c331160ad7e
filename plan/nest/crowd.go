package nest

import (
	"cmp"
	"slices"

	"example.org/matside/plan/rect"
)

// How hard crowding tries: failures before it gives up, work in an attempt
// (ten million steps take about an eighth of a second), and how full a
// container may get. Over made-up quilts, no quick attempt ever filled one to
// more than 0.916; what fills it whole is found by rows and lattices.
var crowdEffort = map[rect.Effort]struct {
	failures, work int
	full           float64
}{
	rect.Quick:    {2, 2_000_000, 0.93},
	rect.Usual:    {6, 8_000_000, 1},
	rect.Thorough: {60, 60_000_000, 1},
}

// manyPieces is how many laid an attempt needs all its work for. With fewer
// there is less to be tried: of made-up quilts' attempts that came off, 99 in a
// hundred did within so many pieces' share of it.
const manyPieces = 10

// crowdAll crowds in pieces that found no free place, the most valuable
// first. Every item gets its turn, with less work where there are many, for the
// small ones go in where no large one will.
func (m *model) crowdAll(spots []spot, left []int, opt Options) []spot {
	e := crowdEffort[opt.Effort]
	seed, failures, work := opt.Seed, e.failures, e.work
	if n := len(m.waiting(spots, left, e.full)); n > failures {
		failures, work = n, work*failures/n
	}
	for failures > 0 {
		waiting := m.waiting(spots, left, e.full)
		if len(waiting) == 0 {
			break
		}
		for _, item := range waiting {
			for ok := true; ok && m.waits(item, spots, left, e.full); {
				if failures == 0 || opt.stopped() {
					return spots
				}
				var more []spot
				seed++
				if more, ok = m.crowd(spots, item, min(work, e.work*len(spots)/manyPieces), seed, opt.Stop); ok {
					spots = more
				} else {
					failures--
				}
			}
		}
	}
	return spots
}

// waits reports whether pieces of an item are left over and the area left has
// room for one.
func (m *model) waits(item int, spots []spot, left []int, full float64) bool {
	return slices.Contains(m.waiting(spots, left, full), item)
}

// waiting are the items with pieces left over that the area left has room for
// when the container is as full as it may get, the most valuable first.
func (m *model) waiting(spots []spot, left []int, full float64) []int {
	laid := m.tally(spots)
	room := float64(full*float64(float64(m.w)*float64(m.h))) - m.laid(spots)
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
func (m *model) crowd(spots []spot, item, work int, seed uint64, stop func() bool) (more []spot, ok bool) {
	s := newSeparator(m, append(slices.Clone(spots), spot{shape: m.turns[item][0]}), seed)
	s.scatter(len(spots))
	ok = s.drive(work, stop)
	return s.spots, ok
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
