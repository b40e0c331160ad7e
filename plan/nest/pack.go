package nest

import "example.org/matside/plan/length"

// Pack lays every piece in as few containers of w x h as it can. It returns
// false and nothing if a piece fits at no turn.
func Pack(w, h, gap length.Len, items []Item, opt Options) ([][]Placed, bool) {
	m := newModel(newContainer(w, h, gap), items)
	left := m.counts()
	total := 0
	for i, n := range left {
		if n > 0 && len(m.turns[i]) == 0 {
			return nil, false
		}
		total += n
	}
	var out [][]Placed
	for total > 0 {
		spots := m.fill(left, opt)
		for _, s := range spots {
			left[m.shapes[s.shape].item]--
		}
		total -= len(spots)
		out = append(out, m.placed(spots))
	}
	return out, true
}
