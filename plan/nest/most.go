package nest

import (
	"math"

	"example.org/matside/plan/length"
)

// Most lays as many of one piece as it can in a container of w x h, up to its
// count (0: as many as there is room for).
func Most(w, h, gap length.Len, item Item, opt Options) []Placed {
	if item.Count == 0 {
		item.Count = math.MaxInt
	}
	item.Value = 0
	m := newModel(newContainer(w, h, gap), []Item{item})
	return m.placed(m.fill(m.counts(), opt))
}

// stacked lays one item alone: the fullest of rows, columns and lattices,
// topped up with what still goes.
func (m *model) stacked(item, limit int) []spot {
	if len(m.turns[item]) == 0 {
		return nil
	}
	room := m.roomFor(item)
	if limit < room {
		return m.stackedUpTo(item, limit)
	}
	if m.stacks[item] == nil { // what fills one container fills the next
		m.stacks[item] = m.stackedUpTo(item, room)
	}
	return m.stacks[item]
}

func (m *model) stackedUpTo(item, limit int) []spot {
	var best []spot
	for _, way := range []func() [][]spot{
		func() [][]spot { return m.stack(item, limit) },
		func() [][]spot { return flipAll(m.flipped().stack(item, limit)) },
		func() [][]spot { return m.latticed(item, limit) },
	} {
		if len(best) == limit {
			break
		}
		for _, spots := range way() {
			if spots = m.topUp(spots, item, limit); len(spots) > len(best) {
				best = spots
			}
		}
	}
	return best
}

// roomFor is how many of an item there can be at most, by area.
func (m *model) roomFor(item int) int {
	return int(math.Floor(float64(float64(m.w)*float64(m.h)) / m.area[item] * (1 + 1e-9)))
}

// topUp adds pieces of the item wherever one still goes.
func (m *model) topUp(spots []spot, item, limit int) []spot {
	f := newFrontier(m, spots)
	for _, s := range m.turns[item] {
		f.enter(s)
	}
	for len(f.spots) < limit {
		s, ok := f.best(m.turns[item], rules[0])
		if !ok {
			break
		}
		f.lay(s)
	}
	return f.spots
}
