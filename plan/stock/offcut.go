package stock

import (
	"cmp"
	"slices"

	"example.org/matside/plan/length"
)

// Offcuts are the free rectangles of a panel, such that straight cuts across
// what is left free each of them and each box that is used already. Where the
// used boxes can't be freed so, what lies among them is given up.
func Offcuts(p Panel) []Box { return split(Box{0, 0, p.W, p.H}, p.Used) }

// split looks for a straight cut across r that meets no used box, strips
// across first, and goes on with both sides of it.
func split(r Box, used []Box) []Box {
	if r.W <= 0 || r.H <= 0 {
		return nil
	}
	if len(used) == 0 {
		return []Box{r}
	}
	if y, ok := cutAt(used, r.Y, r.Y+r.H, func(b Box) (length.Len, length.Len) { return b.Y, b.Y + b.H }); ok {
		above := Box{r.X, r.Y, r.W, y - r.Y}
		below := Box{r.X, y, r.W, r.Y + r.H - y}
		return append(split(above, within(used, above)), split(below, within(used, below))...)
	}
	if x, ok := cutAt(used, r.X, r.X+r.W, func(b Box) (length.Len, length.Len) { return b.X, b.X + b.W }); ok {
		left := Box{r.X, r.Y, x - r.X, r.H}
		right := Box{x, r.Y, r.X + r.W - x, r.H}
		return append(split(left, within(used, left)), split(right, within(used, right))...)
	}
	return nil
}

// cutAt finds the first straight cut strictly between from and to that meets
// no used box: in front of the first, or else behind it and all beside it.
func cutAt(used []Box, from, to length.Len, side func(Box) (length.Len, length.Len)) (length.Len, bool) {
	type span struct{ a, b length.Len }
	spans := make([]span, len(used))
	for i, u := range used {
		a, b := side(u)
		spans[i] = span{a, b}
	}
	slices.SortFunc(spans, func(x, y span) int { return cmp.Compare(x.a, y.a) })
	if first := spans[0].a; first > from {
		return first, true
	}
	end := spans[0].b
	for _, s := range spans[1:] {
		if s.a >= end && end > from && end < to {
			return end, true
		}
		end = max(end, s.b)
	}
	if end > from && end < to {
		return end, true
	}
	return 0, false
}

func within(used []Box, r Box) []Box {
	var out []Box
	for _, u := range used {
		if u.X >= r.X && u.Y >= r.Y && u.X+u.W <= r.X+r.W && u.Y+u.H <= r.Y+r.H {
			out = append(out, u)
		}
	}
	return out
}
