package plan

import (
	"slices"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/pack"
	"example.org/matside/plan/queue"
	"example.org/matside/plan/stock"
)

// queue writes the plan down: loads in order, their pieces given copies,
// their rough cuts given panels.
func (m *maker) queue() *queue.Queue {
	q := &queue.Queue{List: m.list}
	pieces := m.hand()
	for _, l := range m.ordered() {
		q.Loads = append(q.Loads, m.load(l, len(q.Loads)+1, pieces))
	}
	layouts(q.Loads)
	for f, t := range m.tables {
		q.Stock = append(q.Stock, m.panelUses(t, q.Loads)...)
		if b, ok := m.buy(t); ok {
			q.Buy = append(q.Buy, b)
		}
		if s, ok := m.short(f, pieces); ok {
			q.Short = append(q.Short, s)
		}
	}
	q.Fewest = m.fewest(q)
	return q
}

// piece is one copy of a line.
type piece struct{ line, copy int }

// hand deals out the copies of each kind, those with the First label first.
func (m *maker) hand() [][]piece {
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

func (m *maker) load(mat *pack.Mat, number int, pieces [][]piece) queue.Load {
	l := queue.Load{Number: number}
	for i := range mat.Groups {
		g := &mat.Groups[i]
		l.RoughCuts = append(l.RoughCuts, queue.RoughCut{Fabric: g.Fabric,
			X: g.X - m.list.Margin, Y: g.Y - m.list.Margin, Width: g.W + 2*m.list.Margin, Height: g.H + 2*m.list.Margin})
		for _, p := range g.Parts {
			next := pieces[p.Kind][0]
			pieces[p.Kind] = pieces[p.Kind][1:]
			l.Pieces = append(l.Pieces, queue.Placement{Line: next.line, Copy: next.copy, RoughCut: i, Turn: p.Turn,
				Mirrored: m.list.Fabrics[g.Fabric].FaceDown, Outline: m.job.Lay(p, g.X, g.Y)})
		}
	}
	l.CutLength = cutLength(l.Pieces)
	return l
}

// panelUses says what comes out of each panel of a table. Rough cuts of one
// size are all alike: each takes the next place of its size.
func (m *maker) panelUses(t *table, loads []queue.Load) []queue.PanelUse {
	uses := make([]queue.PanelUse, len(t.panels))
	for p := range uses {
		uses[p] = queue.PanelUse{Fabric: t.fabric, Panel: p + 1, Width: t.panels[p].W, Height: t.panels[p].H}
	}
	if t.endless {
		last := len(uses) - 1
		step, ppm := buyStep(m.list.Unit), m.list.Fabrics[t.fabric].ShrinkAlong
		uses[last].Height = shrunk(toBuy(t.layout.Reach[last], step, ppm), ppm)
	}
	places := map[stock.Cut][]stock.Spot{}
	for _, s := range t.layout.Spots {
		if h, ok := t.isHand(s.Cut); ok {
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

func (m *maker) buy(t *table) (queue.Buy, bool) {
	if !t.endless || t.layout.Reach[len(t.panels)-1] == 0 {
		return queue.Buy{}, false
	}
	length := toBuy(t.layout.Reach[len(t.panels)-1], buyStep(m.list.Unit), m.list.Fabrics[t.fabric].ShrinkAlong)
	return queue.Buy{Fabric: t.fabric, Width: cutlist.BuyWidth, Length: length}, true
}

// short says what of a fabric could not be planned: the pieces that were
// dealt no place, and what is cut by hand and found none.
func (m *maker) short(f int, pieces [][]piece) (queue.Short, bool) {
	s := queue.Short{Fabric: f, Missing: make([]int, len(m.list.Lines))}
	t := m.tables[f]
	total := 0
	var want []int
	for k := range pieces {
		n := 0
		if m.job.Kinds[k].Fabric == f {
			n = len(pieces[k])
			total += n
			for _, p := range pieces[k] {
				s.Missing[p.line]++
			}
		}
		want = append(want, n)
	}
	var hand []stock.Cut
	for _, i := range t.layout.Left {
		h, ok := t.isHand(i)
		if !ok {
			continue
		}
		cut, n := h.cut, 1
		if cut.Across && cut.W > 0 {
			cut.W = t.layout.LeftLength
			n = int((cut.W + t.widest() - 1) / t.widest())
		}
		hand = append(hand, cut)
		s.Missing[h.line] += n
		total += n
	}
	if total > 0 {
		s.Length = m.wouldDo(f, want, hand)
	}
	return s, total > 0
}

// wouldDo is how much fabric, as wide as the widest panel, what is missing
// takes; 0 where no length would.
func (m *maker) wouldDo(f int, want []int, hand []stock.Cut) length.Len {
	t := m.tables[f]
	groups, err := m.job.Pieces(f, want)
	if err != nil {
		return 0
	}
	cuts := append(m.cutsOf(groups), hand...)
	panel := stock.Panel{W: t.widest(), H: endless, Endless: true}
	l := stock.Lay([]stock.Panel{panel}, cuts)
	if len(l.Left) > 0 {
		return 0
	}
	return toBuy(l.Reach[0], 1, m.list.Fabrics[f].ShrinkAlong)
}

func (t *table) widest() length.Len {
	w := length.Len(1)
	for _, p := range t.panels {
		w = max(w, p.W)
	}
	return w
}

// isHand says which by-hand cut a cut laid is, if it is one.
func (t *table) isHand(cut int) (handCut, bool) {
	if i := cut - t.rough; i >= 0 && i < len(t.hand) {
		return t.hand[i], true
	}
	return handCut{}, false
}

// layouts numbers the drawings: loads with the same outlines at the same
// places share one.
func layouts(loads []queue.Load) {
	seen := map[string]int{}
	for i := range loads {
		key := drawing(loads[i].Pieces)
		if seen[key] == 0 {
			seen[key] = len(seen) + 1
		}
		loads[i].Layout = seen[key]
	}
}

// drawing is a load's outlines as one string, whatever their order.
func drawing(pieces []queue.Placement) string {
	var all []string
	for _, p := range pieces {
		all = append(all, corners(p.Outline))
	}
	slices.Sort(all)
	var b []byte
	for _, s := range all {
		b = append(append(b, s...), '\n')
	}
	return string(b)
}

// corners is an outline as bytes, from its first corner from the top left.
func corners(o outline.Outline) string {
	first := 0
	for i, p := range o {
		if p.Y < o[first].Y || p.Y == o[first].Y && p.X < o[first].X {
			first = i
		}
	}
	b := make([]byte, 0, 16*len(o))
	for i := range o {
		p := o[(first+i)%len(o)]
		for _, v := range []length.Len{p.X, p.Y} {
			for s := 56; s >= 0; s -= 8 {
				b = append(b, byte(v>>s))
			}
		}
	}
	return string(b)
}
