package bound

import (
	"slices"

	"example.org/matside/plan/length"
)

// room is a box of one fabric: of each lying the most it may hold, and
// measures of which it holds no more than its own each.
type room struct {
	any      bool
	most     []int64
	own      []int64
	measures [][]int64 // what a piece takes, by lying
}

// unitOfScale is the whole of a scale within a room.
const unitOfScale = 1 << 15

// room makes the largest room at i, j of the grid.
func (l *lister) room(i, j int) *room {
	key := [2]int{i, j}
	if r, ok := l.rooms[key]; ok {
		return r
	}
	r := l.newRoom(l.side(l.x, l.W, i), l.side(l.y, l.H, j))
	l.rooms[key] = r
	return r
}

// side is the longest side of a box at place i of an axis of the grid.
func (s *sharing) side(axis []length.Len, mat length.Len, i int) length.Len {
	if i == len(axis)-1 {
		return mat
	}
	return axis[i+1] - s.Apart - 1
}

func (l *lister) newRoom(w, h length.Len) *room {
	r := &room{most: make([]int64, len(l.ways))}
	area := make([]int64, len(l.ways))
	for v, way := range l.ways {
		p := &l.cloth.kinds[way.kind]
		fits := p.Aslant || way.w <= w && way.h <= h || !p.Rect && p.Turn && way.h <= w && way.w <= h
		if w <= 0 || h <= 0 || !fits {
			continue
		}
		r.most[v], r.any = int64(p.Count), true
		if l.cloth.single {
			r.most[v] = 1
		}
		area[v] = p.Area.FloorDiv(length.Mul(length.Micrometre, length.Micrometre))
	}
	if !r.any || l.cloth.single {
		return r
	}
	r.add(length.Mul(w+l.Gap, h+l.Gap).CeilDiv(length.Mul(length.Micrometre, length.Micrometre)), area)
	for _, p := range l.pins {
		takes := make([]int64, len(l.ways))
		for v, way := range l.ways {
			takes[v] = p.worth[l.cloth.kinds[way.kind].shape]
		}
		r.add(p.within(w+l.rim(), h+l.rim()), takes)
	}
	l.byScales(r, w+l.Keep, h+l.Keep)
	return r
}

func (r *room) add(own int64, takes []int64) {
	r.own, r.measures = append(r.own, own), append(r.measures, takes)
}

// byScales measures rectangles by pairs of scales for the room's sides.
func (l *lister) byScales(r *room, w, h length.Len) {
	f, g := l.scalesFor(w), l.scalesFor(h)
	all, ok := l.pairs[[2]int{f, g}]
	if !ok {
		for _, a := range l.scales[f] {
			for _, b := range l.scales[g] {
				all = unbeaten(all, l.takes(a, b))
			}
		}
		l.pairs[[2]int{f, g}] = all
	}
	for _, takes := range all {
		r.add(unitOfScale*unitOfScale, takes)
	}
}

// scalesFor numbers the sets of scales that sides have.
func (l *lister) scalesFor(side length.Len) int {
	fs := roomScales(l.lengths, side)
	n := slices.IndexFunc(l.scales, func(o [][]int64) bool { return slices.EqualFunc(o, fs, slices.Equal[[]int64]) })
	if n < 0 {
		n = len(l.scales)
		l.scales = append(l.scales, fs)
	}
	return n
}

// takes is what a rectangle takes by a pair of scales, as it lies.
func (l *lister) takes(f, g []int64) []int64 {
	out := make([]int64, len(l.ways))
	for v, way := range l.ways {
		if p := &l.cloth.kinds[way.kind]; p.Rect && !p.Aslant {
			a, _ := slices.BinarySearch(l.lengths, way.w+l.Keep)
			b, _ := slices.BinarySearch(l.lengths, way.h+l.Keep)
			out[v] = f[a] * g[b]
		}
	}
	return out
}

// unbeaten adds a measure unless another takes as much of every kind, and
// drops those that take no more than it.
func unbeaten(all [][]int64, takes []int64) [][]int64 {
	beats := func(a, b []int64) bool {
		for k := range a {
			if a[k] < b[k] {
				return false
			}
		}
		return true
	}
	if slices.ContainsFunc(all, func(o []int64) bool { return beats(o, takes) }) {
		return all
	}
	return append(slices.DeleteFunc(all, func(o []int64) bool { return beats(takes, o) }), takes)
}

// roomScales are scales for the lengths within a side, of unitOfScale each:
// the lengths themselves, and how many of each length, at least, a longer one
// is as good as. What a full row is worth is found by trying every row.
func roomScales(ls []length.Len, side length.Len) [][]int64 {
	var out [][]int64
	try := func(value func(l length.Len) int64) {
		f := make([]int64, len(ls))
		for i, l := range ls {
			if l <= side {
				f[i] = value(l)
			}
		}
		most := fullRow(ls, f, side)
		if most == 0 {
			return
		}
		for i := range f {
			f[i] = f[i] * unitOfScale / most
		}
		if !slices.ContainsFunc(out, func(o []int64) bool { return slices.Equal(o, f) }) {
			out = append(out, f)
		}
	}
	try(func(l length.Len) int64 { return int64(l / length.Micrometre) })
	for _, k := range ls {
		if k > side {
			break
		}
		f := mirrored(int64(side), int64(k))
		try(func(l length.Len) int64 { return f(int64(l)) })
		try(func(l length.Len) int64 { return int64(l / k) })
	}
	return out
}

// fullRow is the most that lengths in a row within a side are worth.
func fullRow(ls []length.Len, value []int64, side length.Len) int64 {
	if len(ls) == 0 || side < ls[0] {
		return 0
	}
	last := len(ls) - 1
	best := int64(0)
	for n := length.Len(0); n*ls[last] <= side; n++ {
		best = max(best, int64(n)*value[last]+fullRow(ls[:last], value, side-n*ls[last]))
	}
	return best
}
