package plan

import (
	"cmp"
	"slices"

	"example.org/matside/plan/length"
	"example.org/matside/plan/pack"
	"example.org/matside/plan/rect"
	"example.org/matside/plan/stock"
)

// suit is a limit on a fabric's rough cuts, and how the fabric does by itself
// within it.
type suit struct {
	limit          pack.Limit
	missing, rough int
	fabric         int64
}

// suits are limits worth an attempt for all fabrics together: for each the
// one that misses least, then takes fewest rough cuts, then least fabric.
func (m *maker) suits(best *attempt) [][]pack.Limit {
	limits := slices.Clone(best.limits)
	changed := false
	for f := range m.tables {
		all := m.suitsOf(f, len(best.spread[f].layout.Left) > 0)
		if len(all) == 0 {
			continue
		}
		if s := slices.MinFunc(all, (*suit).compare); s.limit.W != m.job.W || s.limit.H != m.job.H {
			limits[f], changed = s.limit, true
		}
	}
	if !changed {
		return nil
	}
	return [][]pack.Limit{limits}
}

func (s *suit) compare(o *suit) int {
	return cmp.Or(cmp.Compare(s.missing, o.missing), cmp.Compare(s.rough, o.rough), cmp.Compare(s.fabric, o.fabric))
}

// suitsOf tries limits that a fabric's panels suggest. Heights are tried only
// where the fabric runs short, or with thorough effort.
func (m *maker) suitsOf(f int, short bool) []*suit {
	widths := m.sides(f, m.job.W, func(p stock.Panel) length.Len { return p.W })
	heights := []length.Len{m.job.H}
	if short || m.opt.Effort == rect.Thorough {
		heights = m.sides(f, m.job.H, func(p stock.Panel) length.Len { return p.H })
	}
	if m.job.Empty(f) || !short && m.opt.Effort == rect.Quick {
		return nil
	}
	var out []*suit
	for _, w := range widths {
		for _, h := range heights {
			if s := m.try(f, pack.Limit{W: w, H: h}); s != nil && !m.stopped() {
				out = append(out, s)
			}
		}
	}
	for _, s := range out {
		if l := m.levelled(f, s); l != nil {
			out = append(out, l)
		}
	}
	return out
}

// sides are the box sides worth trying: as much as the mat allows, and what
// goes a whole number of times into a panel.
func (m *maker) sides(f int, most length.Len, side func(stock.Panel) length.Len) []length.Len {
	out := []length.Len{most}
	for _, p := range m.tables[f].panels {
		s := side(p)
		if s == endless {
			continue
		}
		whole := most + 2*m.list.Margin
		first := (s + whole - 1) / whole
		for n := first; n < first+2; n++ {
			if s := m.inset(s / n); s > 0 && s < most {
				out = append(out, s)
			}
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// inset is a panel's side as the box of a rough cut's pieces sees it.
func (m *maker) inset(side length.Len) length.Len { return side - 2*m.list.Margin }

// try packs a fabric by itself within a limit and lays its rough cuts out; it
// is nil where a piece is larger than the limit.
func (m *maker) try(f int, l pack.Limit) *suit {
	groups, err := m.job.Fabric(f, l)
	if err != nil {
		return nil
	}
	t := m.tables[f]
	s, kept, missing := m.salvage(t, groups)
	return &suit{limit: l, missing: missing, rough: len(kept), fabric: m.cost(t, s)}
}
