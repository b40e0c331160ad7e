package plan

import (
	"cmp"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/pack"
	"example.org/matside/plan/stock"
)

// attempt is one way to plan the whole list.
type attempt struct {
	limits []pack.Limit
	mats   []pack.Mat
	rough  [][]stock.Box // of each mat, its groups' rough cuts as they lie on it
	spread []*spread     // of each fabric

	missing int   // pieces that found no fabric
	fabric  int64 // in buying steps where it is bought, to compare by
	raw     int64 // the same to the square tenth of a millimetre
}

// attempt packs all loads within the limits and lays their rough cuts out.
func (m *maker) attempt(limits []pack.Limit) *attempt {
	packing, err := m.job.Start(limits)
	if err != nil {
		panic("plan: a limit is smaller than a piece: " + err.Error())
	}
	m.prove(packing.Loads())
	mats := packing.Improved()
	a := &attempt{limits: limits, mats: mats, spread: make([]*spread, len(m.tables))}
	a.rough = make([][]stock.Box, len(mats))
	for i := range mats {
		a.rough[i] = m.snapped(&mats[i])
	}
	for f := range m.tables {
		m.place(a, f)
	}
	m.sum(a)
	return a
}

// place lays a fabric's rough cuts out: in whole eighths where that costs
// nothing, else as small as their pieces allow.
func (m *maker) place(a *attempt, f int) {
	t := m.tables[f]
	s := t.lay(a.roughCuts(f))
	if exact := m.exactly(a, f); exact != nil {
		e := t.lay(cutsOf(exact))
		if cmp.Or(cmp.Compare(len(e.layout.Left), len(s.layout.Left)), cmp.Compare(m.steps(t, e), m.steps(t, s))) < 0 {
			s = e
			a.setRough(f, exact)
		}
	}
	a.spread[f] = s
}

// steps is how much of a fabric is to be bought, whole steps; 0 where it is
// cut from stock.
func (m *maker) steps(t *table, s *spread) length.Len {
	if !t.endless {
		return 0
	}
	return toBuy(s.layout.Reach[len(t.panels)-1], cutlist.BuyStep(m.list.Unit), m.list.Fabrics[t.fabric].ShrinkAlong)
}

// cost is how much fabric a table takes: whole buying steps of what is
// bought, and as much of a panel as is cut into.
func (m *maker) cost(t *table, s *spread) int64 {
	sum := s.layout.Fabric(t.panels)
	if t.endless {
		last := len(t.panels) - 1
		more := m.steps(t, s)/length.TenthMM - s.layout.Reach[last]/length.TenthMM // as layout.Fabric rounds
		sum += int64(more) * int64(t.panels[last].W/length.TenthMM)
	}
	return sum
}

// better says whether a is a better plan than o: fewer pieces missing, then
// fewer loads, then less fabric.
func (a *attempt) better(o *attempt) bool {
	return cmp.Or(cmp.Compare(a.missing, o.missing), cmp.Compare(len(a.mats), len(o.mats)),
		cmp.Compare(a.fabric, o.fabric), cmp.Compare(a.raw, o.raw)) < 0
}

// eachGroup calls do for every group of a fabric, in order.
func (a *attempt) eachGroup(f int, do func(g *pack.Group, rough *stock.Box)) {
	for i := range a.mats {
		for k := range a.mats[i].Groups {
			if g := &a.mats[i].Groups[k]; g.Fabric == f {
				do(g, &a.rough[i][k])
			}
		}
	}
}

func (a *attempt) roughCuts(f int) []stock.Cut {
	var out []stock.Cut
	a.eachGroup(f, func(_ *pack.Group, r *stock.Box) { out = append(out, stock.Cut{W: r.W, H: r.H}) })
	return out
}

func (a *attempt) setRough(f int, boxes []stock.Box) {
	i := 0
	a.eachGroup(f, func(_ *pack.Group, r *stock.Box) { *r = boxes[i]; i++ })
}

// missingOf counts the pieces of a fabric that found no place.
func (a *attempt) missingOf(f int, t *table) int {
	var parts []int
	a.eachGroup(f, func(g *pack.Group, _ *stock.Box) { parts = append(parts, len(g.Parts)) })
	n := 0
	for _, i := range a.spread[f].layout.Left {
		if i < len(parts) {
			n += parts[i]
		} else {
			n++
		}
	}
	return n
}

func cutsOf(boxes []stock.Box) []stock.Cut {
	out := make([]stock.Cut, len(boxes))
	for i, b := range boxes {
		out[i] = stock.Cut{W: b.W, H: b.H}
	}
	return out
}
