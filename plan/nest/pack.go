package nest

import (
	"cmp"
	"math"
	"slices"

	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
)

// Pack lays every piece in as few containers of w x h as it can. It returns
// false and nothing if a piece fits at no turn.
func Pack(w, h, gap length.Len, items []Item, opt Options) ([][]Placed, bool) {
	m := newModel(newContainer(w, h, gap), items)
	left := m.counts()
	for i, n := range left {
		if n > 0 && len(m.turns[i]) == 0 {
			return nil, false
		}
	}
	bins := m.fillAll(left, opt)
	if len(bins) > m.fewest() {
		bins = m.emptyWeakest(bins, opt)
	}
	out := make([][]Placed, len(bins))
	for i, b := range bins {
		out[i] = m.placed(b)
	}
	return out, true
}

// fillAll fills container after container, each layout as often as the pieces
// left allow: what was best once is best again while nothing has run out.
func (m *model) fillAll(left []int, opt Options) [][]spot {
	left = slices.Clone(left)
	purse := packWork[opt.Effort]
	var bins [][]spot
	for total(left) > 0 {
		part := purse / 4 // the first are laid again and again, so they get more
		purse -= part
		spots := m.fill(left, &part, opt)
		purse += part
		used := m.tally(spots)
		for covers(left, used) {
			for i, n := range used {
				left[i] -= n
			}
			bins = append(bins, spots)
		}
	}
	return bins
}

func covers(left, used []int) bool {
	for i, n := range used {
		if n > left[i] {
			return false
		}
	}
	return total(left) > 0
}

// fewest is the number of containers that the area alone asks for.
func (m *model) fewest() int {
	var area float64
	for i, it := range m.items {
		area += float64(float64(it.Count) * m.area[i])
	}
	return int(math.Ceil(area / (float64(m.w) * float64(m.h)) * (1 - 1e-9)))
}

// Work that crowding may do for Pack in all, and emptyWeakest after that.
var packWork = map[rect.Effort]int{rect.Quick: 10_000_000, rect.Usual: 20_000_000, rect.Thorough: 2_000_000_000}
var emptyWork = map[rect.Effort]int{rect.Quick: 4_000_000, rect.Usual: 20_000_000, rect.Thorough: 2_000_000_000}

// emptyWeakest takes the container with the least in it and crowds its pieces
// into the others, again and again as long as that comes off.
func (m *model) emptyWeakest(bins [][]spot, opt Options) [][]spot {
	work := emptyWork[opt.Effort]
	for len(bins) > 1 && work > 0 && !opt.stopped() {
		fuller := slices.Clone(bins)
		slices.SortStableFunc(fuller, func(a, b []spot) int { return cmp.Compare(m.laid(b), m.laid(a)) })
		weakest := fuller[len(fuller)-1]
		fuller = fuller[:len(fuller)-1]
		if !m.share(weakest, fuller, &work, opt) {
			break
		}
		bins = fuller
	}
	return bins
}

// laid is the area of the pieces laid.
func (m *model) laid(spots []spot) float64 {
	var a float64
	for _, s := range spots {
		a += m.area[m.shapes[s.shape].item]
	}
	return a
}

// share crowds the pieces into the bins, the largest first; false as soon as
// one goes nowhere.
func (m *model) share(pieces []spot, bins [][]spot, work *int, opt Options) bool {
	e := crowdEffort[opt.Effort]
	pieces = slices.Clone(pieces)
	slices.SortStableFunc(pieces, func(a, b spot) int {
		return cmp.Compare(m.area[m.shapes[b.shape].item], m.area[m.shapes[a.shape].item])
	})
	var full float64
	room := float64(m.w) * float64(m.h)
	for _, b := range bins {
		full += m.laid(b)
	}
	if full+m.laid(pieces) > room*float64(len(bins))*(1+1e-9) {
		return false
	}
	for k, p := range pieces {
		item := m.shapes[p.shape].item
		if !m.into(bins, item, opt.Seed+uint64(k), e.work, room, work, opt) {
			return false
		}
	}
	return true
}

// into crowds one piece of an item into one of the bins, the emptiest first.
func (m *model) into(bins [][]spot, item int, seed uint64, each int, room float64, work *int, opt Options) bool {
	order := make([]int, len(bins))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(m.laid(bins[a]), m.laid(bins[b])) })
	for _, i := range order {
		if m.laid(bins[i])+m.area[item] > room*(1+1e-9) || *work <= 0 || opt.stopped() {
			return false
		}
		more, done, ok := m.crowd(bins[i], item, min(each, *work), seed, opt.Stop)
		if *work -= done; ok {
			bins[i] = more
			return true
		}
	}
	return false
}
