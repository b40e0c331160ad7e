package bound

import (
	"slices"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// few tells by exhaustion whether a few convex pieces can lie on a mat
// together. Two convex outlines share no area if and only if the line along a
// side of one of them parts them (the separating axis theorem): for every two
// pieces a side is chosen, in all ways, and each choice is a linear inequality
// in their places. Ranges of the places are narrowed by the inequalities;
// where one comes to be empty, the choice is impossible. Places are whole
// nanometres, so all of it is exact. What can't be told in the steps there are
// counts as possible.
//
// To branch over no-fit polygon sides is common for exact nesting: Fischetti
// and Luzzi, "Mixed-integer programming models for nesting problems", Journal
// of Heuristics 15 (2009), from memory.
type few struct {
	w, h  length.Len
	ways  []outline.Outline // of all shapes in turn
	from  []int             // each shape's first; one more at the end
	moved [][]int           // what each move of the mat makes of the ways
	apart [][][]parting     // of the second way seen from the first
	steps int
}

// parting is a side that parts two pieces: a*dx + b*dy >= c, where dx, dy is
// the way from the place of the first to that of the second.
type parting struct{ a, b, c int64 }

// Bounds on what is looked at: pieces, and a side of the mat, so that sums of
// products stay within 64 bits.
const (
	mostFew  = 6
	mostSide = 700 * length.Millimetre
)

func newFew(w, h length.Len, shapes []shape, steps int) *few {
	f := &few{w: w, h: h, steps: steps}
	for _, s := range shapes {
		f.from = append(f.from, len(f.ways))
		f.ways = append(f.ways, s.ways...)
	}
	f.from = append(f.from, len(f.ways))
	for _, o := range f.ways {
		var row [][]parting
		for _, p := range f.ways {
			row = append(row, partings(o, p))
		}
		f.apart = append(f.apart, row)
	}
	f.moved = movedWays(shapes, w == h)
	return f
}

// movedWays are the numbers of the ways after each move, all moves that can
// be made one after the other.
func movedWays(shapes []shape, square bool) (all [][]int) {
	var steps [][]int
	for _, m := range movesOf(square, shapes) {
		var to []int
		for _, s := range shapes {
			first := len(to)
			for _, o := range s.ways {
				next := m.outline(o)
				to = append(to, first+slices.IndexFunc(s.ways, func(w outline.Outline) bool { return outline.Same(w, next) }))
			}
		}
		steps = append(steps, to)
	}
	all = slices.Clone(steps)
	for i := 0; i < len(all); i++ {
		for _, s := range steps {
			both := make([]int, len(s))
			for w := range both {
				both[w] = s[all[i][w]]
			}
			if !slices.ContainsFunc(all, func(o []int) bool { return slices.Equal(o, both) }) {
				all = append(all, both)
			}
		}
	}
	return all
}

// partings are the sides of two outlines that can part them.
func partings(o, p outline.Outline) (out []parting) {
	add := func(a, b length.Len) {
		far, near := int64(-1<<62), int64(1<<62)
		for _, q := range o {
			far = max(far, int64(a*q.X+b*q.Y))
		}
		for _, q := range p {
			near = min(near, int64(a*q.X+b*q.Y))
		}
		out = append(out, parting{int64(a), int64(b), far - near})
	}
	for i, q := range o {
		d := o[(i+1)%len(o)].Sub(q)
		add(d.Y, -d.X) // outward
	}
	for i, q := range p {
		d := p[(i+1)%len(p)].Sub(q)
		add(-d.Y, d.X)
	}
	return out
}

// may says whether so many of each shape may lie on the mat: false is proved.
// Pieces of a shape are told apart by nothing, so they come by their ways, and
// those of one way from left to right; of ways that a move of the mat makes of
// one another, one is enough.
func (f *few) may(count []int) bool {
	var ways, shapes []int
	for k, n := range count {
		for range n {
			ways, shapes = append(ways, 0), append(shapes, k)
		}
	}
	var all func(at int) bool
	all = func(at int) bool {
		if at == len(ways) {
			return f.first(ways) && f.start(ways).may(f)
		}
		from := f.from[shapes[at]]
		if at > 0 && shapes[at-1] == shapes[at] {
			from = ways[at-1]
		}
		for w := from; w < f.from[shapes[at]+1]; w++ {
			if ways[at] = w; all(at + 1) {
				return true
			}
		}
		return false
	}
	return all(0)
}

// first says that no move makes ways of these that come before them.
func (f *few) first(ways []int) bool {
	return !slices.ContainsFunc(f.moved, func(to []int) bool {
		other := make([]int, len(ways))
		for i, w := range ways {
			other[i] = to[w]
		}
		slices.Sort(other)
		return slices.Compare(other, ways) < 0
	})
}

// known is what is chosen so far: of each piece the range of its place, x and
// y in turn, and what parts it from others.
type known struct {
	ways      []int
	low, high [2 * mostFew]int64
	chosen    []inequality
	parted    [mostFew][mostFew]bool
}

type inequality struct {
	i, j int
	parting
}

func (f *few) start(ways []int) *known {
	k := &known{ways: ways}
	for i, w := range ways {
		b := f.ways[w].Bounds()
		k.high[2*i], k.high[2*i+1] = int64(f.w-b.Width()), int64(f.h-b.Height())
		if i > 0 && ways[i-1] == w {
			k.chosen = append(k.chosen, inequality{i - 1, i, parting{1, 0, 0}})
		}
	}
	return k
}

func (k *known) clone() *known {
	o := *k
	o.chosen = slices.Clone(k.chosen)
	return &o
}

// may says whether there may be places within the ranges: it chooses for the
// two pieces that have the fewest sides left to part them.
func (k *known) may(f *few) bool {
	if f.steps--; f.steps < 0 {
		return true
	}
	if !k.settle() {
		return false
	}
	var best []inequality
	for j := range k.ways {
		for i := range j {
			if k.parted[i][j] {
				continue
			}
			can, sure := k.sides(i, j, f.apart[k.ways[i]][k.ways[j]])
			if k.parted[i][j] = sure; sure {
				continue
			}
			if best == nil || len(can) < len(best) {
				best = can
			}
			if len(can) == 0 {
				return false
			}
		}
	}
	if best == nil {
		return k.split(f)
	}
	for _, c := range best {
		o := k.clone()
		o.parted[c.i][c.j] = true
		o.chosen = append(o.chosen, c)
		if o.may(f) {
			return true
		}
	}
	return false
}

// sides are those that can part two pieces; sure says that one does wherever
// they are.
func (k *known) sides(i, j int, all []parting) (can []inequality, sure bool) {
	can = make([]inequality, 0, len(all))
	for _, p := range all {
		c := inequality{i, j, p}
		least, most := k.reach(&c)
		if least >= p.c {
			return nil, true
		}
		if most >= p.c {
			can = append(can, c)
		}
	}
	return can, false
}

// terms are the ranges in an inequality, and what each counts.
func (c *inequality) terms() (ranges [4]int, by [4]int64) {
	return [4]int{2 * c.j, 2 * c.i, 2*c.j + 1, 2*c.i + 1}, [4]int64{c.a, -c.a, c.b, -c.b}
}

// reach is the least and the most that the left side can be.
func (k *known) reach(c *inequality) (least, most int64) {
	ranges, by := c.terms()
	for n, v := range ranges {
		a, b := by[n]*k.low[v], by[n]*k.high[v]
		least, most = least+min(a, b), most+max(a, b)
	}
	return least, most
}

// settle narrows the ranges by all that is chosen, some times over; false if
// it can't be kept.
func (k *known) settle() bool {
	for range 12 {
		any := false
		for n := range k.chosen {
			_, most := k.reach(&k.chosen[n])
			slack := most - k.chosen[n].c
			if slack < 0 {
				return false
			}
			ranges, by := k.chosen[n].terms()
			for n, v := range ranges {
				low, high := k.low[v], k.high[v]
				if g := by[n]; g > 0 {
					low = max(low, high-slack/g)
				} else if g < 0 {
					high = min(high, low+slack/-g)
				}
				any = any || low != k.low[v] || high != k.high[v]
				k.low[v], k.high[v] = low, high
			}
		}
		if !any {
			break
		}
	}
	return true
}

// split halves the widest range, down to a thousandth of the mat.
func (k *known) split(f *few) bool {
	wide := 0
	for v := range k.low[:2*len(k.ways)] {
		if k.high[v]-k.low[v] > k.high[wide]-k.low[wide] {
			wide = v
		}
	}
	if k.high[wide]-k.low[wide] < int64(max(f.w, f.h))/1000 {
		return true
	}
	a, b := k.clone(), k.clone()
	a.high[wide] = k.low[wide] + (k.high[wide]-k.low[wide])/2
	b.low[wide] = a.high[wide] + 1
	return a.may(f) || b.may(f)
}
