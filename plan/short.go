package plan

import (
	"slices"

	"example.org/matside/plan/length"
	"example.org/matside/plan/pack"
	"example.org/matside/plan/queue"
	"example.org/matside/plan/stock"
)

// cutOut packs the fabrics that run short in an attempt for their panels,
// rough cut by rough cut, and lets those rough cuts stay as they are. The
// rest is packed anew, since mats are shared, and what then runs short is
// treated likewise.
func (m *maker) cutOut(a *attempt) *attempt {
	limits := slices.Clone(a.limits)
	kept := map[int]*spread{}
	for {
		short := a.shortOf(kept)
		if len(short) == 0 {
			m.sum(a)
			return a
		}
		for _, f := range short {
			kept[f], limits[f].Groups = m.rescue(f)
		}
		m.job.Lower = 0 // it was for all pieces
		a = m.attempt(limits)
		for f := range m.tables {
			if s := kept[f]; s == nil {
				m.reshapeFabric(a, f)
			} else {
				a.setRough(f, m.exactOf(a, f))
				a.spread[f] = s
			}
		}
	}
}

// shortOf lists the fabrics whose rough cuts don't all have a place, those
// already kept aside.
func (a *attempt) shortOf(kept map[int]*spread) (out []int) {
	for f, s := range a.spread {
		if kept[f] == nil && len(s.layout.Left) > 0 {
			out = append(out, f)
		}
	}
	return out
}

// rescue packs a fabric that runs short for its panels: how it is laid out, and
// the groups that found a place.
func (m *maker) rescue(f int) (*spread, []pack.Group) {
	var limit pack.Limit
	if all := m.suitsOf(f, true); len(all) > 0 {
		limit = slices.MinFunc(all, (*suit).compare).limit
	}
	groups, err := m.job.Fabric(f, limit)
	if err != nil {
		panic("plan: a limit no longer holds: " + err.Error())
	}
	s, some, _ := m.salvage(m.tables[f], groups)
	return s, some
}

func (m *maker) exactOf(a *attempt, f int) []stock.Box {
	var out []stock.Box
	a.eachGroup(f, func(g *pack.Group, _ *stock.Box) { out = append(out, m.exact(g)) })
	return out
}

// salvage lays groups out by themselves, keeps those whose rough cuts found a
// place, and cuts what it can of the others' pieces out of what is left of
// the panels. kept is never nil.
func (m *maker) salvage(t *table, groups []pack.Group) (s *spread, kept []pack.Group, missing int) {
	cuts := make([]stock.Cut, len(groups))
	for i := range groups {
		b := m.exact(&groups[i])
		cuts[i] = stock.Cut{W: b.W, H: b.H}
	}
	s = t.lay(cuts)
	kept = []pack.Group{}
	want := make([]int, len(m.job.Kinds))
	lost := map[int]bool{}
	for _, i := range s.layout.Left {
		lost[i] = true
		if _, ok := s.isHand(i); ok {
			missing++
		}
	}
	for i := range groups {
		if !lost[i] {
			kept = append(kept, groups[i])
			continue
		}
		for _, p := range groups[i].Parts {
			want[p.Kind]++
			missing++
		}
	}
	for p := range t.panels {
		if missing == 0 {
			break
		}
		for _, g := range m.fillPanel(s, p, want) {
			kept = append(kept, g)
			missing -= len(g.Parts)
		}
	}
	return s, kept, missing
}

// fillPanel cuts wanted pieces out of what is left of a panel.
func (m *maker) fillPanel(s *spread, p int, want []int) (out []pack.Group) {
	for again := true; again; {
		again = false
		for _, r := range s.layout.Free(p) {
			g := m.job.Fill(s.table.fabric, want, m.inset(r.W), m.inset(r.H))
			if len(g.Parts) == 0 {
				continue
			}
			b := m.exact(&g)
			s.add(p, r, stock.Cut{W: b.W, H: b.H})
			out = append(out, g)
			for _, part := range g.Parts {
				want[part.Kind]--
			}
			again = true
			break
		}
	}
	return out
}

// short says what of a fabric could not be planned: the pieces that were
// dealt no place, and what is cut by hand and found none.
func (m *maker) short(s *spread, pieces [][]piece) (queue.Short, bool) {
	t := s.table
	out := queue.Short{Fabric: t.fabric, Missing: make([]int, len(m.list.Lines))}
	total := 0
	want := make([]int, len(pieces))
	for k := range pieces {
		if m.job.Kinds[k].Fabric != t.fabric {
			continue
		}
		want[k] = len(pieces[k])
		total += len(pieces[k])
		for _, p := range pieces[k] {
			out.Missing[p.line]++
		}
	}
	var hand []stock.Cut
	for _, i := range s.layout.Left {
		h, ok := s.isHand(i)
		if !ok {
			continue
		}
		cut, n := h.cut, 1
		if cut.Across && cut.W > 0 {
			cut.W = s.layout.LeftLength
			n = int((cut.W + t.widest() - 1) / t.widest())
		}
		hand = append(hand, cut)
		out.Missing[h.line] += n
		total += n
	}
	if total > 0 {
		out.Length = m.wouldDo(t, want, hand)
	}
	return out, total > 0
}

// wouldDo is how much fabric, as wide as the widest panel, what is missing
// takes; 0 where no length would.
func (m *maker) wouldDo(t *table, want []int, hand []stock.Cut) length.Len {
	groups, err := m.job.Pieces(t.fabric, want)
	if err != nil {
		return 0
	}
	var cuts []stock.Cut
	for i := range groups {
		b := m.exact(&groups[i])
		cuts = append(cuts, stock.Cut{W: b.W, H: b.H})
	}
	panel := stock.Panel{W: t.widest(), H: endless, Endless: true}
	l := stock.Lay([]stock.Panel{panel}, append(cuts, hand...))
	if len(l.Left) > 0 {
		return 0
	}
	return toBuy(l.Reach[0], 1, m.list.Fabrics[t.fabric].ShrinkAlong)
}
