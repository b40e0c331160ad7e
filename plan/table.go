package plan

import (
	"math/bits"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/stock"
)

// table is one fabric on the cutting table: its panels, what is cut from them
// by hand, and where everything comes out.
type table struct {
	fabric  int
	panels  []stock.Panel
	endless bool // the last panel is fabric still to be bought
	hand    []handCut
}

// spread is a table with everything laid out on it.
type spread struct {
	table  *table
	rough  int // how many rough cuts come first among the cuts; then those by hand, then rough cuts that were added
	cuts   int
	layout *stock.Layout
}

// handCut is a piece, strip or binding to be cut at the table.
type handCut struct {
	line, copy int
	cut        stock.Cut
}

func newTable(list *cutlist.List, f int, copies [][]int, opt Options) *table {
	fabric := &list.Fabrics[f]
	t := &table{fabric: f}
	for _, p := range fabric.Stock {
		t.add(shrunk(p.Width, fabric.ShrinkAcross), shrunk(p.Height, fabric.ShrinkAlong))
	}
	for _, u := range opt.Used {
		if u.Fabric != f {
			continue
		}
		for len(t.panels) < u.Panel { // fabric without stock, bought for the loads before
			t.add(u.Width, u.Height)
		}
		p := &t.panels[u.Panel-1]
		for _, r := range u.RoughCuts {
			p.Used = append(p.Used, stock.Box{X: r.X, Y: r.Y, W: r.Width, H: r.Height})
		}
		for _, h := range u.ByHand {
			p.Used = append(p.Used, stock.Box{X: h.X, Y: h.Y, W: h.Width, H: h.Height})
		}
	}
	if len(fabric.Stock) == 0 {
		t.add(shrunk(cutlist.BuyWidth, fabric.ShrinkAcross), endless)
		t.panels[len(t.panels)-1].Endless, t.endless = true, true
	}
	for i := range list.Lines {
		if list.Lines[i].Fabric == f {
			t.addHand(list, i, copies[i])
		}
	}
	return t
}

// endless is longer than any fabric, and short enough to add to.
const endless = 1_000_000 * length.Metre

func (t *table) add(w, h length.Len) { t.panels = append(t.panels, stock.Panel{W: w, H: h}) }

func (t *table) addHand(list *cutlist.List, line int, copies []int) {
	l := &list.Lines[line]
	for _, c := range copies {
		var cut stock.Cut
		switch l.Kind {
		case cutlist.OnMat:
			return
		case cutlist.ByHand:
			cut.Hand = true
			for _, p := range l.Outline {
				cut.W, cut.H = max(cut.W, p.X), max(cut.H, p.Y)
			}
			cut.Turn = !list.Fabrics[t.fabric].OneWay && (l.Grain == cutlist.QuarterTurns || l.Grain == cutlist.AnyGrain)
		case cutlist.Strips:
			cut = stock.Cut{H: l.StripWidth, Across: true}
		case cutlist.Binding:
			cut = stock.Cut{W: l.Length, H: l.StripWidth, Across: true}
		}
		t.hand = append(t.hand, handCut{line, c, cut})
	}
}

// lay finds places for rough cuts and for what is cut by hand.
func (t *table) lay(rough []stock.Cut) *spread {
	cuts := append([]stock.Cut(nil), rough...)
	for _, h := range t.hand {
		cuts = append(cuts, h.cut)
	}
	return &spread{t, len(rough), len(cuts), stock.Lay(t.panels, cuts)}
}

// add lays one more rough cut in a free rectangle of a panel.
func (s *spread) add(panel int, free stock.Box, c stock.Cut) {
	s.layout.Take(panel, free, c.W, c.H, s.cuts)
	s.cuts++
}

// isHand says which by-hand cut a cut laid is, if it is one.
func (s *spread) isHand(cut int) (handCut, bool) {
	if i := cut - s.rough; i >= 0 && i < len(s.table.hand) {
		return s.table.hand[i], true
	}
	return handCut{}, false
}

func (t *table) widest() length.Len {
	w := length.Len(1)
	for _, p := range t.panels {
		w = max(w, p.W)
	}
	return w
}

// shrunk is what is left of a length after washing, rounded down; ppm is in
// millionths.
func shrunk(l length.Len, ppm int64) length.Len {
	hi, lo := bits.Mul64(uint64(l), uint64(1_000_000-ppm))
	q, _ := bits.Div64(hi, lo, 1_000_000)
	return length.Len(q)
}

// toBuy is the least length in whole steps that still is need after washing.
func toBuy(need, step length.Len, ppm int64) length.Len {
	n := (need + step - 1) / step
	for shrunk(n*step, ppm) < need {
		n++
	}
	return n * step
}
