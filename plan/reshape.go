package plan

import (
	"cmp"
	"encoding/binary"
	"slices"

	"example.org/matside/plan/length"
	"example.org/matside/plan/pack"
	"example.org/matside/plan/rect"
	"example.org/matside/plan/stock"
)

// reshaped gives rough cuts other shapes, their pieces laid anew and every
// load keeping its own, as long as that saves fabric: two strips across
// instead of three, or a long narrow cut that fits beside the others. It
// goes from the smallest rough cut of a fabric to the largest, again and
// again until none helps or the effort is spent.
func (m *maker) reshaped(a *attempt) {
	for f := range m.tables {
		m.reshapeFabric(a, f)
	}
	m.sum(a)
}

// reshapeFabric does so for one fabric, and leaves the sums to be done.
func (m *maker) reshapeFabric(a *attempt, f int) {
	shapes := map[string][]pack.Group{}
	work := m.reshapeWork()
	for again := true; again; {
		again = false
		for _, at := range a.groupsOf(f) {
			if m.reshape(a, at, shapes, &work) {
				again = true
			}
		}
	}
}

// reshapeWork is how many rough cuts an effort may lay out anew for one
// fabric's sake.
func (m *maker) reshapeWork() int {
	switch m.opt.Effort {
	case rect.Quick:
		return 2_000
	case rect.Thorough:
		return 200_000
	}
	return 20_000
}

// onMat is where an attempt has a group: on which mat, and the how manieth.
type onMat struct{ mat, group int }

// groupsOf lists a fabric's groups, the smallest rough cut first.
func (a *attempt) groupsOf(f int) (all []onMat) {
	for i := range a.mats {
		for k := range a.mats[i].Groups {
			if a.mats[i].Groups[k].Fabric == f {
				all = append(all, onMat{i, k})
			}
		}
	}
	area := func(at onMat) length.Area { r := a.rough[at.mat][at.group]; return length.Mul(r.W, r.H) }
	slices.SortStableFunc(all, func(x, y onMat) int {
		return cmp.Or(area(x).Cmp(area(y)), cmp.Compare(x.mat, y.mat), cmp.Compare(x.group, y.group))
	})
	return all
}

// reshape tries the other shapes of one group, and keeps the best that saves
// fabric. It counts the rough cuts laid out off work and stops at 0.
func (m *maker) reshape(a *attempt, at onMat, shapes map[string][]pack.Group, work *int) bool {
	g, r := &a.mats[at.mat].Groups[at.group], &a.rough[at.mat][at.group]
	f := g.Fabric
	t := m.tables[f]
	key := groupKey(g)
	if _, ok := shapes[key]; !ok && *work > 0 {
		shapes[key] = m.job.Shapes(g)
	}
	had, hadRough, better := *g, *r, false
	for _, s := range shapes[key] {
		cuts := a.roughCuts(f)
		if *work -= len(cuts); *work < 0 || m.stopped() {
			break
		}
		was, wasRough := *g, *r
		*g, *r = had, hadRough // what else is on the mat stays
		if !m.put(a, at, s) {
			*g, *r = was, wasRough
			continue
		}
		spread := t.lay(a.roughCuts(f))
		if !m.saves(t, spread, a.spread[f]) {
			*g, *r = was, wasRough
			continue
		}
		a.spread[f], better = spread, true
	}
	return better
}

// saves says whether a fabric laid out anew leaves less over or takes less
// than before.
func (m *maker) saves(t *table, now, before *spread) bool {
	return cmp.Or(cmp.Compare(len(now.layout.Left), len(before.layout.Left)), cmp.Compare(m.steps(t, now), m.steps(t, before)),
		cmp.Compare(now.layout.Fabric(t.panels), before.layout.Fabric(t.panels))) < 0
}

// put gives a group another shape, on whole steps of the ruler at the first
// place where the rest of the mat leaves room: at the edge or beside another
// rough cut.
func (m *maker) put(a *attempt, at onMat, shape pack.Group) bool {
	rough := a.rough[at.mat]
	sideX, sideY := m.matSides()
	xs, ys := []length.Len{0}, []length.Len{0}
	for k, r := range rough {
		if k != at.group {
			xs, ys = append(xs, r.X+r.W+sideX.apart), append(ys, r.Y+r.H+sideX.apart)
		}
	}
	slices.Sort(xs)
	slices.Sort(ys)
	w, h := up(shape.W+2*m.list.Margin, sideX.step), up(shape.H+2*m.list.Margin, sideX.step)
	for _, y := range ys {
		for _, x := range xs {
			sx, okX := sideX.stand(x, shape.W, w)
			sy, okY := sideY.stand(y, shape.H, h)
			if box := (stock.Box{X: sx.at, Y: sy.at, W: w, H: h}); okX && okY && clear(box, rough, at.group, sideX.apart) {
				shape.X, shape.Y = sx.piece, sy.piece
				a.mats[at.mat].Groups[at.group], rough[at.group] = shape, box
				return true
			}
		}
	}
	return false
}

// clear says whether a box keeps apart from all rough cuts but one.
func clear(b stock.Box, rough []stock.Box, but int, apart length.Len) bool {
	for k, r := range rough {
		if k != but && b.X < r.X+r.W+apart && r.X < b.X+b.W+apart && b.Y < r.Y+r.H+apart && r.Y < b.Y+b.H+apart {
			return false
		}
	}
	return true
}

// sum adds up what an attempt misses and takes.
func (m *maker) sum(a *attempt) {
	a.missing, a.fabric, a.raw = 0, 0, 0
	for f, t := range m.tables {
		a.missing += a.missingOf(f, t)
		a.fabric += m.cost(t, a.spread[f])
		a.raw += a.spread[f].layout.Fabric(t.panels)
	}
}

// groupKey is the same for groups with the same pieces laid the same way.
func groupKey(g *pack.Group) string {
	b := binary.AppendUvarint(nil, uint64(g.Fabric))
	for _, p := range g.Parts {
		for _, v := range []int64{int64(p.Kind), int64(p.Turn), int64(p.X), int64(p.Y)} {
			b = binary.AppendVarint(b, v)
		}
	}
	return string(b)
}
