package bound

import "slices"

// axis is what may lie in a row: a side and the lengths, ascending, each with
// the most pieces that can show it.
type axis struct {
	side    int64
	lengths []int64
	copies  []int64
}

// A scale gives each length of an axis a value, such that pieces in a row that
// fit the axis have values adding up to at most whole. Fekete and Schepers ("A
// general framework for bounds for higher-dimensional orthogonal packing
// problems", Math. Methods Oper. Res. 60 (2004)) call it conservative and show
// that it may replace the lengths: pieces w x h that share a bin satisfy
// sum f(w)*g(h) <= f.whole*g.whole for any two scales f, g.
type scale struct {
	whole int64
	value []int64 // by index into axis.lengths
}

// axes lists the lengths along the bin's width and height. For a square bin
// they are one and the same, as every layout may be turned whole.
func (p *problem) axes() (x, y *axis) {
	x, y = &axis{side: p.w}, &axis{side: p.h}
	for _, k := range p.kinds {
		x.lengths, y.lengths = append(x.lengths, k.w), append(y.lengths, k.h)
		if k.turn || p.square {
			x.lengths, y.lengths = append(x.lengths, k.h), append(y.lengths, k.w)
		}
	}
	for _, a := range []*axis{x, y} {
		slices.Sort(a.lengths)
		a.lengths = slices.Compact(a.lengths)
		a.copies = make([]int64, len(a.lengths))
	}
	for _, k := range p.kinds {
		both := k.turn || p.square
		for i, c := range x.lengths {
			if c == k.w || both && c == k.h {
				x.copies[i] += k.count
			}
		}
		for i, c := range y.lengths {
			if c == k.h || both && c == k.w {
				y.copies[i] += k.count
			}
		}
	}
	return x, y
}

func (a *axis) index(x int64) int {
	i, _ := slices.BinarySearch(a.lengths, x)
	return i
}

// scaleOf tabulates f over the axis's lengths.
func (a *axis) scaleOf(f func(x int64) int64) scale {
	s := scale{f(a.side), make([]int64, len(a.lengths))}
	for i, x := range a.lengths {
		s.value[i] = f(x)
	}
	return s
}
