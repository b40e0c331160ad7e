package plan

import (
	"slices"

	"example.org/matside/plan/length"
	"example.org/matside/plan/pack"
	"example.org/matside/plan/stock"
)

// ruler is the step a quilter's ruler and the mat's grid are read in: an
// eighth of an inch, or 5 mm.
func ruler(u length.Unit) length.Len {
	if u == length.In {
		return length.Inch / 8
	}
	return 5 * length.Millimetre
}

// exact is the rough cut of a group as it lies on the mat: the box of its
// pieces with the margin round it.
func (m *maker) exact(g *pack.Group) stock.Box {
	e := m.list.Margin
	return stock.Box{X: g.X - e, Y: g.Y - e, W: g.W + 2*e, H: g.H + 2*e}
}

// snapped moves the groups of a mat so that their rough cuts have edges on
// whole steps of the ruler, and gives those rough cuts: as large as their
// pieces need, in whole steps. Where the mat has no room for that, the rough
// cut that gains most is cut exactly to its pieces' size instead, and so on,
// along each side of the mat by itself.
func (m *maker) snapped(mat *pack.Mat) []stock.Box {
	x, y := m.sidesOf(mat)
	out := make([]stock.Box, len(mat.Groups))
	for i, s := range x.settle() {
		mat.Groups[i].X, out[i].X, out[i].W = s.piece, s.at, s.size
	}
	for i, s := range y.settle() {
		mat.Groups[i].Y, out[i].Y, out[i].H = s.piece, s.at, s.size
	}
	return out
}

// side is one side of a mat: what lies along it, and what must lie before
// what.
type side struct {
	step, margin length.Len
	mat          length.Len // how long the side is
	from, to     length.Len // the part of it that pieces may lie in
	apart        length.Len // between rough cuts, besides their margins
	all          []span
	before       [][]int // of each, those that lie before it
}

// span is the extent of a rough cut along a side of the mat: where the box
// of its pieces begins and how long it is, and where the rough cut begins and
// how long it is.
type span struct{ piece, need, at, size length.Len }

// matSides are the two sides of the mat, with nothing along them yet.
func (m *maker) matSides() (x, y side) {
	e := m.list.Margin
	x = side{step: ruler(m.list.Unit), margin: e, apart: max(0, m.list.Gap-2*e)}
	y = x
	x.mat, x.from, x.to = m.list.Mat.Width, m.job.X, m.job.X+m.job.W
	y.mat, y.from, y.to = m.list.Mat.Height, m.job.Y, m.job.Y+m.job.H
	return x, y
}

// sidesOf reads what lies along a mat's two sides. Two groups keep apart the
// way they do now; where they do so both across and along, the way that
// leaves most room.
func (m *maker) sidesOf(mat *pack.Mat) (x, y side) {
	x, y = m.matSides()
	x.before, y.before = make([][]int, len(mat.Groups)), make([][]int, len(mat.Groups))
	for i := range mat.Groups {
		g, r := &mat.Groups[i], m.exact(&mat.Groups[i])
		x.all = append(x.all, span{g.X, g.W, r.X, r.W})
		y.all = append(y.all, span{g.Y, g.H, r.Y, r.H})
		for k := range i {
			if x.between(i, k) >= y.between(i, k) {
				x.order(i, k)
			} else {
				y.order(i, k)
			}
		}
	}
	return x, y
}

// between is how much room there is along a side between two rough cuts; less
// than 0 where they overlap there.
func (s *side) between(i, k int) length.Len {
	a, b := &s.all[i], &s.all[k]
	return max(a.at-b.at-b.size, b.at-a.at-a.size)
}

// order notes which of two rough cuts lies before the other.
func (s *side) order(i, k int) {
	if s.all[i].at > s.all[k].at {
		i, k = k, i
	}
	s.before[k] = append(s.before[k], i)
}

// settle puts every rough cut on the ruler's steps as far as there is room.
func (s *side) settle() []span {
	whole := make([]bool, len(s.all))
	for i := range whole {
		whole[i] = true
	}
	for {
		if out, ok := s.pushed(whole); ok {
			return out
		}
		most, gain := -1, length.Len(0)
		for i, p := range s.all {
			if g := up(p.size, s.step) - p.size; whole[i] && g > gain {
				most, gain = i, g
			}
		}
		if most < 0 {
			return s.all // not even the places can be whole
		}
		whole[most] = false
	}
}

// pushed puts every rough cut at the first whole step where it fits behind
// those before it, its size in whole steps where whole says so.
func (s *side) pushed(whole []bool) ([]span, bool) {
	out := slices.Clone(s.all)
	order := make([]int, len(out))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return int(min(1, max(-1, s.all[a].at-s.all[b].at))) })
	for _, i := range order {
		need, size, from := out[i].need, out[i].size, length.Len(0)
		if whole[i] {
			size = up(size, s.step)
		}
		for _, k := range s.before[i] {
			from = max(from, out[k].at+out[k].size+s.apart)
		}
		p, ok := s.stand(from, need, size)
		if !ok {
			return nil, false
		}
		out[i] = p
	}
	return out, true
}

// stand is a rough cut at the first whole step, no sooner than from, that
// leaves its pieces in their part of the mat and the margin round them.
func (s *side) stand(from, need, size length.Len) (span, bool) {
	at := up(max(from, s.from+need+s.margin-size, 0), s.step)
	p := span{max(s.from, at+s.margin), need, at, size}
	return p, p.piece+need <= s.to && at+size <= s.mat
}

// exactly gives a fabric's rough cuts without the snapping; nil if none has
// been snapped.
func (m *maker) exactly(a *attempt, f int) []stock.Box {
	var out []stock.Box
	differs := false
	a.eachGroup(f, func(g *pack.Group, r *stock.Box) {
		e := m.exact(g)
		differs = differs || e != *r
		out = append(out, e)
	})
	if !differs {
		return nil
	}
	return out
}

func up(l, step length.Len) length.Len { return (l + step - 1) / step * step }
