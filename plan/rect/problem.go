package rect

import (
	"sort"

	"example.org/matside/plan/length"
)

// kind is a size as the searches see it: lengths divided by their common
// measure, equal sizes of the caller's joined, n copies of it wanted.
type kind struct {
	w, h int64
	turn bool
	n    int
}

// problem is a bin and the kinds to be packed in it. Lengths are in multiples
// of unit; the bin is cut back to what multiples reach, so that nothing is lost.
type problem struct {
	w, h  int64
	unit  length.Len
	kinds []kind
	// from[k] lists the caller's sizes that kind k stands for.
	from [][]source
}

// source is a size of the caller's; swap says that its W is the kind's h.
type source struct {
	size  int
	swap  bool
	count int
}

// newProblem joins equal sizes and divides all lengths by their common
// measure. Sizes without copies, and those fitting at no turn, are left out.
// Sizes of unequal value, if any is given, stay apart.
// A size that fits one way only loses its freedom to turn.
func newProblem(w, h length.Len, sizes []Size, value []int64) *problem {
	p := &problem{unit: 0}
	type key struct {
		w, h  length.Len
		turn  bool
		worth int64
	}
	at := map[key]int{}
	var keys []key
	for i, s := range sizes {
		if s.Count <= 0 || s.W <= 0 || s.H <= 0 || !fits(w, h, s) {
			continue
		}
		k, swap := key{s.W, s.H, s.Turn && s.W != s.H, 0}, false
		switch {
		case k.w > w || k.h > h:
			k, swap = key{s.H, s.W, false, 0}, true
		case k.h > w || k.w > h:
			k.turn = false
		case k.turn && k.w < k.h:
			k, swap = key{s.H, s.W, true, 0}, true
		}
		if value != nil {
			k.worth = value[i]
		}
		j, ok := at[k]
		if !ok {
			j = len(keys)
			at[k] = j
			keys = append(keys, k)
			p.from = append(p.from, nil)
			p.unit = gcd(gcd(p.unit, k.w), k.h)
		}
		p.from[j] = append(p.from[j], source{i, swap, s.Count})
	}
	if p.unit == 0 {
		p.unit = 1
	}
	p.w, p.h = int64(w/p.unit), int64(h/p.unit)
	for j, k := range keys {
		n := 0
		for _, f := range p.from[j] {
			n += f.count
		}
		p.kinds = append(p.kinds, kind{int64(k.w / p.unit), int64(k.h / p.unit), k.turn, n})
	}
	p.sortKinds()
	return p
}

// sortKinds puts the kinds in an order that does not depend on the caller's:
// large before small.
func (p *problem) sortKinds() {
	order := make([]int, len(p.kinds))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(i, j int) bool {
		a, b := p.kinds[order[i]], p.kinds[order[j]]
		if fa, fb := a.area(), b.area(); fa != fb {
			return fa > fb
		}
		if a.w != b.w {
			return a.w > b.w
		}
		if a.h != b.h {
			return a.h > b.h
		}
		return a.turn && !b.turn
	})
	kinds, from := make([]kind, len(order)), make([][]source, len(order))
	for i, o := range order {
		kinds[i], from[i] = p.kinds[o], p.from[o]
	}
	p.kinds, p.from = kinds, from
}

// area guides searches only: it is exact up to 2^53 and rounded beyond.
func (k kind) area() float64 { return mul(float64(k.w), float64(k.h)) }

// mul is a product rounded at once: without the conversion some machines would
// fuse it with a following sum and walk another way through the same search.
func mul(a, b float64) float64 { return float64(a * b) }

// many says that there are so many copies of each kind that the question is
// how often to cut which pattern.
func (p *problem) many() bool { return total(p.counts()) >= 10*len(p.kinds) }

// counts are the copies wanted of each kind.
func (p *problem) counts() []int {
	n := make([]int, len(p.kinds))
	for i, k := range p.kinds {
		n[i] = k.n
	}
	return n
}

func gcd(a, b length.Len) length.Len {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// spot is one copy of a kind in a bin.
type spot struct {
	kind   int
	x, y   int64
	turned bool
}

// pattern is what lies in one bin, and how often that bin is cut.
type pattern struct {
	spots []spot
	times int
}

// bins gives the patterns in the caller's terms, each size's copies in order.
func (p *problem) bins(pats []pattern) []Bin {
	next := make([][]source, len(p.from))
	for k, f := range p.from {
		next[k] = append([]source(nil), f...)
	}
	var out []Bin
	for _, pat := range pats {
		for range pat.times {
			bin := make(Bin, 0, len(pat.spots))
			for _, s := range pat.spots {
				f := next[s.kind]
				bin = append(bin, Placed{f[0].size, length.Len(s.x) * p.unit, length.Len(s.y) * p.unit, s.turned != f[0].swap})
				if f[0].count--; f[0].count == 0 {
					next[s.kind] = f[1:]
				}
			}
			out = append(out, bin)
		}
	}
	return out
}
