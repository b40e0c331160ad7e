package nest

import (
	"slices"

	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
)

// How hard Fits tries: attempts and work in each.
var fitsEffort = map[rect.Effort]struct{ attempts, work int }{
	rect.Quick:    {1, 4_000_000},
	rect.Usual:    {3, 20_000_000},
	rect.Thorough: {10, 300_000_000},
}

// Fits tries to lay all of the pieces in one container of w x h. False says only
// that it found no way.
func Fits(w, h, gap length.Len, items []Item, opt Options) ([]Placed, bool) {
	m := newModel(newContainer(w, h, gap), items)
	left := m.counts()
	if m.fewest() > 1 {
		return nil, false
	}
	for i, n := range left {
		if n > 0 && len(m.turns[i]) == 0 {
			return nil, false
		}
	}
	spots := m.starts(left, opt)[0]
	if len(spots) == total(left) {
		return m.placed(spots), true
	}
	e := fitsEffort[opt.Effort]
	for try := range e.attempts {
		if all, ok := m.separateAll(spots, left, opt.Seed+uint64(try), e.work, opt.Stop); ok {
			return m.placed(all), true
		}
	}
	return nil, false
}

// separateAll throws in all pieces not yet laid and drives the overlap out.
func (m *model) separateAll(spots []spot, left []int, seed uint64, work int, stop func() bool) ([]spot, bool) {
	laid := m.tally(spots)
	all := slices.Clone(spots)
	for i, n := range left {
		for range n - laid[i] {
			all = append(all, spot{shape: m.turns[i][0]})
		}
	}
	s := newSeparator(m, all, seed)
	for i := len(spots); i < len(all); i++ {
		s.scatter(i)
	}
	return s.spots, s.drive(work, stop)
}
