package nest

import (
	"cmp"
	"slices"

	"example.org/matside/plan/internal/cores"
	"example.org/matside/plan/rect"
)

// fill lays as much value as it can of the pieces left: good layouts to start
// from, then more pieces crowded in, into each of them on a core of its own.
func (m *model) fill(left []int, opt Options) []spot {
	opt.Stop = cores.InTurn(opt.Stop)
	starts := m.starts(left, opt)
	keys, full := make([]string, len(starts)), make([][]spot, len(starts))
	cores.Each(len(starts), func(i int) {
		keys[i] = m.crowdingKey(starts[i], left)
		if full[i] = m.crowded[keys[i]]; full[i] == nil {
			full[i] = m.beside().crowdAll(starts[i], left, opt)
		}
	})
	var best []spot
	for i, s := range full {
		if !opt.stopped() {
			m.crowded[keys[i]] = s
		}
		if m.worth(s) > m.worth(best) {
			best = s
		}
	}
	return best
}

// starts are the best of several greedy layouts, and the best that begin with
// rows of one item: which of the two has room for more is not told by what
// they are worth. Of a single item it is only the better one.
func (m *model) starts(left []int, opt Options) [][]spot {
	orders, rules := m.orders(), rules
	if opt.Effort == rect.Quick {
		orders, rules = orders[:1], rules[:2]
	}
	var led, free []spot
	keep := func(best *[]spot, s []spot) {
		if m.worth(s) > m.worth(*best) {
			*best = s
		}
	}
	for _, i := range m.leading(left, opt) {
		keep(&led, m.greedy(m.rowsOf(i, left), left, orders[0], rules[0]))
	}
	for _, order := range orders {
		for _, rule := range rules {
			if len(led) == total(left) || len(free) == total(left) || opt.stopped() {
				break
			}
			keep(&free, m.greedy(nil, left, order, rule))
		}
	}
	if m.worth(free) > m.worth(led) {
		led, free = free, led
	}
	if kinds(left) == 1 || len(led) == total(left) || m.worth(free) == 0 || slices.Equal(led, free) {
		return [][]spot{led}
	}
	return [][]spot{led, free}
}

// rowsOf is an item laid alone: as well as can be if there is no other item,
// else what is left of it as the first rows of a full container.
func (m *model) rowsOf(item int, left []int) []spot {
	if kinds(left) == 1 {
		return m.stacked(item, left[item])
	}
	full := m.stacked(item, m.roomFor(item))
	return full[:min(len(full), left[item])]
}

// kinds is how many items there are left of.
func kinds(left []int) int {
	n := 0
	for _, l := range left {
		if l > 0 {
			n++
		}
	}
	return n
}

// leading are the items worth laying in rows first: those with the most to
// lay, by area.
func (m *model) leading(left []int, opt Options) []int {
	var items []int
	for i, n := range left {
		if n > 0 {
			items = append(items, i)
		}
	}
	weight := func(i int) float64 { return m.area[i] * float64(min(left[i], m.roomFor(i))) }
	slices.SortStableFunc(items, func(a, b int) int { return cmp.Compare(weight(b), weight(a)) })
	if opt.Effort == rect.Quick {
		return items[:min(len(items), 1)]
	}
	return items[:min(len(items), 3)]
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

// greedy adds the items in order to a layout, each piece at its best free
// place by rule.
func (m *model) greedy(spots []spot, left []int, order []int, better rule) []spot {
	f := newFrontier(m, spots)
	room := float64(m.w)*float64(m.h) - m.laid(spots)
	laid := m.tally(spots)
	for _, i := range order {
		if left[i] <= laid[i] || m.area[i] > room*(1+1e-9) {
			continue
		}
		for _, s := range m.turns[i] {
			f.enter(s)
		}
		for range left[i] - laid[i] {
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

// tally is how many of each item are laid.
func (m *model) tally(spots []spot) []int {
	n := make([]int, len(m.items))
	for _, s := range spots {
		n[m.shapes[s.shape].item]++
	}
	return n
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
