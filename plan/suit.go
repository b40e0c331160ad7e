package plan

import (
	"cmp"
	"slices"

	"example.org/matside/plan/length"
	"example.org/matside/plan/pack"
	"example.org/matside/plan/stock"
)

// suited looks for the limit on rough cuts that gets most out of a fabric's
// panels: four 10 1/2 rather than three 11 1/2 across 42.
func (m *maker) suited(f int) pack.Limit {
	var best pack.Limit
	var least *score
	for _, w := range m.sides(f, m.job.W, func(p stock.Panel) length.Len { return p.W }) {
		for _, h := range m.sides(f, m.job.H, func(p stock.Panel) length.Len { return p.H }) {
			l := pack.Limit{W: w, H: h}
			s, ok := m.try(f, l)
			if ok && (least == nil || s.less(least)) {
				best, least = l, s
			}
		}
	}
	if least != nil && least.missing == 0 {
		return best
	}
	return m.cutOut(f, best)
}

// score says how well a limit suits: pieces missing, rough cuts, fabric.
type score struct {
	missing, rough int
	fabric         int64
}

func (s *score) less(o *score) bool {
	return cmp.Or(cmp.Compare(s.missing, o.missing), cmp.Compare(s.rough, o.rough), cmp.Compare(s.fabric, o.fabric)) < 0
}

// sides are the box sides worth trying: as much as the mat allows, and what
// goes a whole number of times into a panel.
func (m *maker) sides(f int, most length.Len, side func(stock.Panel) length.Len) []length.Len {
	out := []length.Len{most}
	for _, p := range m.tables[f].panels {
		if p.Endless {
			continue
		}
		first := (side(p) + most + 2*m.list.Margin - 1) / (most + 2*m.list.Margin)
		for n := max(1, first); n < first+3; n++ {
			if s := m.inset(side(p) / n); s > 0 {
				out = append(out, min(s, most))
			}
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// try packs a fabric by itself within a limit and lays its rough cuts out.
func (m *maker) try(f int, l pack.Limit) (*score, bool) {
	groups, err := m.job.Fabric(f, l)
	if err != nil {
		return nil, false // a piece larger than this limit
	}
	t := *m.tables[f]
	t.lay(m.cutsOf(groups))
	kept, missing := m.salvage(&t, groups)
	return &score{missing, len(kept), t.layout.Fabric(t.panels)}, true
}

func (m *maker) cutsOf(groups []pack.Group) []stock.Cut {
	out := make([]stock.Cut, len(groups))
	for i := range groups {
		out[i] = m.rough(&groups[i])
	}
	return out
}

// cutOut packs a fabric within a limit and keeps what its panels can give,
// as rough cuts that stay as they are.
func (m *maker) cutOut(f int, l pack.Limit) pack.Limit {
	groups, err := m.job.Fabric(f, l)
	if err != nil {
		panic("plan: a limit no longer holds: " + err.Error())
	}
	t := m.tables[f]
	t.lay(m.cutsOf(groups))
	kept, _ := m.salvage(t, groups)
	if kept == nil {
		kept = []pack.Group{}
	}
	return pack.Limit{W: l.W, H: l.H, Groups: kept}
}

// salvage keeps the groups whose rough cuts found a place, and cuts what it
// can of the others' pieces out of what is left of the panels. It leaves the
// table's cuts and layout as they are then.
func (m *maker) salvage(t *table, groups []pack.Group) (kept []pack.Group, missing int) {
	found := make([]bool, len(t.cuts))
	for _, s := range t.layout.Spots {
		found[s.Cut] = true
	}
	for _, i := range t.layout.Left {
		found[i] = false
	}
	want := make([]int, len(m.job.Kinds))
	for i := range groups {
		if found[i] {
			kept = append(kept, groups[i])
			continue
		}
		for _, p := range groups[i].Parts {
			want[p.Kind]++
		}
	}
	for p := range t.panels {
		kept = append(kept, m.fillPanel(t, p, want)...)
	}
	for _, n := range want {
		missing += n
	}
	for _, i := range t.layout.Left {
		if _, ok := t.isHand(i); ok {
			missing++
		}
	}
	return kept, missing
}

// fillPanel cuts wanted pieces out of what is left of a panel.
func (m *maker) fillPanel(t *table, p int, want []int) (out []pack.Group) {
	for {
		progress := false
		for _, r := range t.layout.Free(p) {
			g := m.job.Fill(t.fabric, want, m.inset(r.W), m.inset(r.H))
			if len(g.Parts) == 0 {
				continue
			}
			cut := m.rough(&g)
			t.layout.Take(p, r, cut.W, cut.H, len(t.cuts))
			t.cuts = append(t.cuts, cut)
			out = append(out, g)
			for _, part := range g.Parts {
				want[part.Kind]--
			}
			progress = true
			break
		}
		if !progress {
			return out
		}
	}
}
