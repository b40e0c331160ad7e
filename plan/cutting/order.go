package cutting

import (
	"cmp"
	"slices"

	"example.org/matside/plan/length"
	"example.org/matside/plan/queue"
	"example.org/matside/plan/stock"
)

// Step is one straight cut at the table, or the piece it sets free. Lengths
// are measured from the top left corner of what is on the table: Left and
// Top are where that lies in the panel.
type Step struct {
	Fabric, Panel int
	// Depth says what is being cut: 0 the panel, 1 a strip of it, 2 a piece
	// of a strip, and so on.
	Depth          int
	Left, Top      length.Len // in the panel
	Width, Height  length.Len // of what this cut takes off
	Across         bool       // the cut runs across, from edge to edge; else along the lengthwise grain
	At             length.Len // how far down, or to the right, of what is on the table it runs; 0: nothing to cut
	Load, RoughCut int        // the rough cut set free: load from 1; Load 0 if none is
	Line, Copy     int        // the piece cut by hand set free; Copy 0 if none is
	Offcut         bool       // nothing more comes out of it
}

// Order tells in which order to cut the fabric: panel by panel, strips
// across first, then pieces of strips. Every rough cut and every piece cut by
// hand is set free by exactly one step; doing the steps in order never asks
// for a cut through something still needed.
func Order(q *queue.Queue) []Step {
	var out []Step
	for i := range q.Stock {
		u := &q.Stock[i]
		t := &cutter{use: u, step: Step{Fabric: u.Fabric, Panel: u.Panel}}
		for k, r := range u.RoughCuts {
			t.all = append(t.all, wares{stock.Box{X: r.X, Y: r.Y, W: r.Width, H: r.Height}, k, -1})
		}
		for k, h := range u.ByHand {
			t.all = append(t.all, wares{stock.Box{X: h.X, Y: h.Y, W: h.Width, H: h.Height}, -1, k})
		}
		t.cut(stock.Box{W: u.Width, H: u.Height}, t.all, 0)
		out = append(out, t.out...)
	}
	return out
}

// wares is one box to be set free: a rough cut or a piece by hand.
type wares struct {
	stock.Box
	rough, hand int
}

// cutter cuts one panel apart.
type cutter struct {
	use  *queue.PanelUse
	all  []wares
	step Step
	out  []Step
}

// cut frees everything in region r, strips across before cuts along.
func (c *cutter) cut(r stock.Box, in []wares, depth int) {
	if len(in) == 0 {
		return
	}
	if len(in) == 1 && in[0].Box == r {
		c.free(in[0])
		return
	}
	across := depth%2 == 0
	if c.slice(r, in, depth, across) {
		return
	}
	if !c.slice(r, in, depth, !across) {
		panic("cutting: straight cuts don't free a panel's pieces")
	}
}

// slice takes strips off r, one after another, across or along, and cuts
// each apart in turn. It reports whether there was any to take.
func (c *cutter) slice(r stock.Box, in []wares, depth int, across bool) bool {
	side := func(b stock.Box) (length.Len, length.Len) {
		if across {
			return b.Y, b.Y + b.H
		}
		return b.X, b.X + b.W
	}
	sorted := slices.Clone(in)
	slices.SortStableFunc(sorted, func(a, b wares) int {
		a0, _ := side(a.Box)
		b0, _ := side(b.Box)
		return cmp.Or(cmp.Compare(a0, b0), cmp.Compare(a.Y, b.Y), cmp.Compare(a.X, b.X))
	})
	from, to := side(r)
	done := false
	for start := 0; start < len(sorted); {
		// A strip ends where no box begins before it and ends after it.
		_, end := side(sorted[start].Box)
		first, _ := side(sorted[start].Box)
		next := start + 1
		for next < len(sorted) {
			a, b := side(sorted[next].Box)
			if a >= end {
				break
			}
			end = max(end, b)
			next++
		}
		if first == from && end == to {
			if !done {
				return false // one strip, all of r
			}
			c.cut(c.part(r, from, end, across), sorted[start:next], depth+1)
			return true
		}
		done = true
		if first > from { // a strip of waste before it
			c.take(r, from, first, depth, across)
			from = first
		}
		if end < to {
			c.take(r, from, end, depth, across)
		}
		c.cut(c.part(r, from, end, across), sorted[start:next], depth+1)
		from, start = end, next
	}
	return done
}

// part is the strip of r between two places.
func (c *cutter) part(r stock.Box, from, to length.Len, across bool) stock.Box {
	if across {
		return stock.Box{X: r.X, Y: from, W: r.W, H: to - from}
	}
	return stock.Box{X: from, Y: r.Y, W: to - from, H: r.H}
}

// take notes the cut that takes a strip off what is left of r.
func (c *cutter) take(r stock.Box, from, to length.Len, depth int, across bool) {
	b := c.part(r, from, to, across)
	s := c.step
	s.Depth, s.Across, s.At = depth, across, to-from
	s.Left, s.Top, s.Width, s.Height = b.X, b.Y, b.W, b.H
	s.Offcut = true
	for _, w := range c.all {
		if w.X >= b.X && w.Y >= b.Y && w.X+w.W <= b.X+b.W && w.Y+w.H <= b.Y+b.H {
			s.Offcut = false
		}
	}
	c.out = append(c.out, s)
}

// free labels the step that set a box free: the last cut, if that took off
// just this box, else a step of its own without a cut.
func (c *cutter) free(w wares) {
	if n := len(c.out); n == 0 || c.out[n-1].box() != w.Box {
		s := c.step
		s.Left, s.Top, s.Width, s.Height = w.X, w.Y, w.W, w.H
		if n > 0 {
			s.Depth = c.out[n-1].Depth
		}
		c.out = append(c.out, s)
	}
	s := &c.out[len(c.out)-1]
	if w.rough >= 0 {
		s.Load, s.RoughCut = c.use.RoughCuts[w.rough].Load, c.use.RoughCuts[w.rough].RoughCut
		return
	}
	s.Line, s.Copy = c.use.ByHand[w.hand].Line, c.use.ByHand[w.hand].Copy
}

func (s *Step) box() stock.Box { return stock.Box{X: s.Left, Y: s.Top, W: s.Width, H: s.Height} }
