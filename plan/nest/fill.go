package nest

import (
	"cmp"
	"slices"

	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
)

// Fill lays as much value as it can in one container of w x h, no item more
// often than its count. It never fails: what fits at no turn is left out.
func Fill(w, h, gap length.Len, items []Item, opt Options) []Placed {
	m := newModel(newContainer(w, h, gap), items)
	return m.placed(m.fill(m.counts(), opt))
}

// counts is how many of each item there are to lay.
func (m *model) counts() []int {
	n := make([]int, len(m.items))
	for i, it := range m.items {
		n[i] = it.Count
	}
	return n
}

// fill is Fill on a model, for the pieces left: the best of several greedy
// layouts (and rows, of a single item), then more pieces crowded in.
func (m *model) fill(left []int, opt Options) []spot {
	best := m.start(left, opt)
	return m.crowdAll(best, left, opt)
}

func (m *model) start(left []int, opt Options) []spot {
	var best []spot
	orders, rules := m.orders(), rules
	if opt.Effort == rect.Quick {
		orders, rules = orders[:1], rules[:2]
	}
	keep := func(s []spot) {
		if m.worth(s) > m.worth(best) {
			best = s
		}
	}
	if i, ok := only(left); ok {
		keep(m.stacked(i, left[i]))
	}
	for _, order := range orders {
		for _, rule := range rules {
			if len(best) == total(left) || opt.stopped() {
				return best
			}
			keep(m.greedy(left, order, rule))
		}
	}
	return best
}

// only is the item left, if all others are gone.
func only(left []int) (item int, ok bool) {
	item = -1
	for i, n := range left {
		if n > 0 {
			if item >= 0 {
				return 0, false
			}
			item = i
		}
	}
	return item, item >= 0
}

func total(left []int) int {
	sum := 0
	for _, n := range left {
		sum += n
		if sum < 0 || sum > 1<<40 { // counts of "as many as fit" don't add up
			return 1 << 40
		}
	}
	return sum
}

// orders are the sequences in which greedy laying tries the items.
func (m *model) orders() [][]int {
	byKey := func(key func(i int) float64) []int {
		order := make([]int, len(m.items))
		for i := range order {
			order[i] = i
		}
		slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(key(b), key(a)) })
		return order
	}
	all := [][]int{
		byKey(func(i int) float64 { return m.area[i] }),
		byKey(func(i int) float64 { return float64(m.value[i]) / m.area[i] }),
		byKey(func(i int) float64 { return float64(m.value[i]) }),
	}
	var out [][]int
	for _, o := range all {
		if !slices.ContainsFunc(out, func(p []int) bool { return slices.Equal(o, p) }) {
			out = append(out, o)
		}
	}
	return out
}

// A rule says which of two places is better: the smaller key.
type rule func(m *model, s int, t vec) [2]int64

var rules = []rule{
	func(m *model, s int, t vec) [2]int64 { return [2]int64{t.y + m.shapes[s].h, t.x} },
	func(m *model, s int, t vec) [2]int64 { return [2]int64{t.x + m.shapes[s].w, t.y} },
	func(m *model, s int, t vec) [2]int64 { return [2]int64{2*t.y + m.shapes[s].h, t.x} },
	func(m *model, s int, t vec) [2]int64 { return [2]int64{2*t.x + m.shapes[s].w, t.y} },
	func(m *model, s int, t vec) [2]int64 { return [2]int64{t.x + t.y, t.y} },
}

// greedy lays the items in order, each piece at its best free place by rule.
func (m *model) greedy(left []int, order []int, better rule) []spot {
	f := newFrontier(m, nil)
	room := float64(m.w) * float64(m.h)
	for _, i := range order {
		if left[i] == 0 || m.area[i] > room*(1+1e-9) {
			continue
		}
		for _, s := range m.turns[i] {
			f.enter(s)
		}
		for range left[i] {
			s, ok := f.best(m.turns[i], better)
			if !ok {
				break
			}
			f.lay(s)
			room -= m.area[i]
		}
		for _, s := range m.turns[i] {
			f.drop(s)
		}
	}
	return f.spots
}

// best is the best place by rule for any of the shapes.
func (f *frontier) best(shapes []int, better rule) (spot, bool) {
	var best spot
	var key [2]int64
	found := false
	for _, s := range shapes {
		for _, t := range f.ways[s] {
			if k := better(f.m, s, t); !found || k[0] < key[0] || k[0] == key[0] && k[1] < key[1] {
				best, key, found = spot{s, t}, k, true
			}
		}
	}
	return best, found
}
