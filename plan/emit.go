package plan

import (
	"slices"

	"example.org/matside/plan/blade"
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/pack"
	"example.org/matside/plan/queue"
	"example.org/matside/plan/stock"
)

// emit writes an attempt down: loads in order, their pieces given copies,
// their rough cuts given panels.
func (m *maker) emit(a *attempt) *queue.Queue {
	q := &queue.Queue{List: m.list}
	pieces := m.deal()
	for _, i := range m.ordered(a) {
		q.Loads = append(q.Loads, m.load(&a.mats[i], a.rough[i], len(q.Loads)+1, pieces))
	}
	layouts(q.Loads)
	for _, s := range a.spread {
		q.Stock = append(q.Stock, m.panelUses(s, q.Loads)...)
		if b, ok := m.buy(s); ok {
			q.Buy = append(q.Buy, b)
		}
		if short, ok := m.short(s, pieces); ok {
			q.Short = append(q.Short, short)
		}
	}
	n := m.fewest(a)
	q.Fewest = queue.Fewest{Loads: n, Proved: n == len(q.Loads)}
	return q
}

// piece is one copy of a line.
type piece struct{ line, copy int }

// deal gives out the copies of each kind, those with the First label first.
func (m *maker) deal() [][]piece {
	out := make([][]piece, len(m.job.Kinds))
	for k := range m.job.Kinds {
		lines := slices.Clone(m.job.Kinds[k].Lines)
		slices.SortStableFunc(lines, func(a, b int) int { return m.late(a) - m.late(b) })
		for _, i := range lines {
			for _, c := range m.copies[i] {
				out[k] = append(out[k], piece{i, c})
			}
		}
	}
	return out
}

// late is 0 for a line whose pieces come first and 1 for the rest.
func (m *maker) late(line int) int {
	if m.opt.First != "" && m.list.Lines[line].Label == m.opt.First {
		return 0
	}
	return 1
}

func (m *maker) load(mat *pack.Mat, rough []stock.Box, number int, pieces [][]piece) queue.Load {
	l := queue.Load{Number: number}
	for i := range mat.Groups {
		g, r := &mat.Groups[i], rough[i]
		l.RoughCuts = append(l.RoughCuts, queue.RoughCut{Fabric: g.Fabric, X: r.X, Y: r.Y, Width: r.W, Height: r.H})
		for _, p := range g.Parts {
			next := pieces[p.Kind][0]
			pieces[p.Kind] = pieces[p.Kind][1:]
			l.Pieces = append(l.Pieces, queue.Placement{Line: next.line, Copy: next.copy, RoughCut: i, Turn: p.Turn,
				Mirrored: m.list.Fabrics[g.Fabric].FaceDown, Outline: m.job.Lay(p, g.X, g.Y)})
		}
	}
	l.CutLength = blade.Length(l.Pieces)
	return l
}

// panelUses says what comes out of each panel of a table. Rough cuts of one
// size are all alike: each takes the next place of its size.
func (m *maker) panelUses(sp *spread, loads []queue.Load) []queue.PanelUse {
	t := sp.table
	uses := make([]queue.PanelUse, len(t.panels))
	for p := range uses {
		uses[p] = queue.PanelUse{Fabric: t.fabric, Panel: p + 1, Width: t.panels[p].W, Height: t.panels[p].H}
	}
	if t.endless {
		last := len(uses) - 1
		step, ppm := cutlist.BuyStep(m.list.Unit), m.list.Fabrics[t.fabric].ShrinkAlong
		uses[last].Height = shrunk(toBuy(sp.layout.Reach[last], step, ppm), ppm)
	}
	places := map[stock.Cut][]stock.Spot{}
	for _, s := range sp.layout.Spots {
		if h, ok := sp.isHand(s.Cut); ok {
			uses[s.Panel].ByHand = append(uses[s.Panel].ByHand,
				queue.HandCut{Line: h.line, Copy: h.copy, X: s.X, Y: s.Y, Width: s.W, Height: s.H})
			continue
		}
		size := stock.Cut{W: s.W, H: s.H}
		places[size] = append(places[size], s)
	}
	for i := range loads {
		for k := range loads[i].RoughCuts {
			r := &loads[i].RoughCuts[k]
			if r.Fabric != t.fabric {
				continue
			}
			size := stock.Cut{W: r.Width, H: r.Height}
			s := places[size][0]
			places[size] = places[size][1:]
			r.Panel = s.Panel + 1
			uses[s.Panel].RoughCuts = append(uses[s.Panel].RoughCuts,
				queue.FromPanel{Load: loads[i].Number, RoughCut: k, X: s.X, Y: s.Y, Width: s.W, Height: s.H})
		}
	}
	t.number(uses, m.list)
	return slices.DeleteFunc(uses, func(u queue.PanelUse) bool { return len(u.RoughCuts)+len(u.ByHand) == 0 })
}

// number counts the strips of a binding, which are all of one copy to the
// packer, from 1.
func (t *table) number(uses []queue.PanelUse, list *cutlist.List) {
	strips := map[int]int{}
	for p := range uses {
		for i := range uses[p].ByHand {
			h := &uses[p].ByHand[i]
			if list.Lines[h.Line].Kind == cutlist.Binding {
				strips[h.Line]++
				h.Copy = strips[h.Line]
			}
		}
	}
}

func (m *maker) buy(s *spread) (queue.Buy, bool) {
	t := s.table
	if !t.endless || s.layout.Reach[len(t.panels)-1] == 0 {
		return queue.Buy{}, false
	}
	length := toBuy(s.layout.Reach[len(t.panels)-1], cutlist.BuyStep(m.list.Unit), m.list.Fabrics[t.fabric].ShrinkAlong)
	return queue.Buy{Fabric: t.fabric, Width: cutlist.BuyWidth, Length: length}, true
}

// layouts numbers the drawings: loads with the same outlines at the same
// places share one.
func layouts(loads []queue.Load) {
	seen := map[string]int{}
	for i := range loads {
		key := loads[i].Drawing()
		if seen[key] == 0 {
			seen[key] = len(seen) + 1
		}
		loads[i].Layout = seen[key]
	}
}
