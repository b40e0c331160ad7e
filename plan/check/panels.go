package check

import (
	"math/bits"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
)

// panelKey is one panel of one fabric.
type panelKey struct{ fabric, panel int }

// stripTally is what has been seen of a binding.
type stripTally struct {
	count    int
	together length.Len
	shortest length.Len
}

// stock looks at what comes out of each panel.
func (c *checker) stock() {
	seen := map[panelKey]bool{}
	cut := map[[2]int]bool{} // rough cuts that come out of some panel: load, index
	for i := range c.queue.Stock {
		u := &c.queue.Stock[i]
		key := panelKey{u.Fabric, u.Panel}
		if !c.isFabric(u.Fabric) {
			c.fault(Reference, nowhere, "panel %d is of no fabric", u.Panel)
			continue
		}
		if seen[key] {
			c.fault(Panel, nowhere, "panel %d of %s stands there twice", u.Panel, c.fabricName(u.Fabric))
		}
		seen[key] = true
		if w, h, ok := c.panelSize(u); !ok || u.Width != w || u.Height != h {
			c.fault(Panel, nowhere, "%s has no panel %d of %s x %s", c.fabricName(u.Fabric), u.Panel, u.Width, u.Height)
		}
		boxes := c.usedBoxes(u)
		for _, r := range u.RoughCuts {
			boxes = c.fromPanel(i, r, cut, boxes)
		}
		for _, h := range u.ByHand {
			boxes = c.byHand(i, h, boxes)
		}
		c.share(i, boxes)
	}
	for i := range c.queue.Loads {
		for k := range c.queue.Loads[i].RoughCuts {
			if !cut[[2]int{i, k}] {
				c.fault(FromPanel, i, "rough cut %d comes out of no panel", k)
			}
		}
	}
}

// panelSize is the size a panel must have, if there is such a panel.
func (c *checker) panelSize(u *queue.PanelUse) (w, h length.Len, ok bool) {
	f := &c.list.Fabrics[u.Fabric]
	if u.Panel < 1 {
		return 0, 0, false
	}
	if len(f.Stock) > 0 {
		if u.Panel > len(f.Stock) {
			return 0, 0, false
		}
		p := f.Stock[u.Panel-1]
		return washed(p.Width, f.ShrinkAcross), washed(p.Height, f.ShrinkAlong), true
	}
	if used := c.used(u.Fabric, u.Panel); used != nil {
		return used.Width, used.Height, true
	}
	// What is still to be bought is one panel, after those bought before.
	if u.Panel > 1 && c.used(u.Fabric, u.Panel-1) == nil {
		return 0, 0, false
	}
	for _, b := range c.queue.Buy {
		if b.Fabric == u.Fabric {
			return washed(b.Width, f.ShrinkAcross), washed(b.Length, f.ShrinkAlong), true
		}
	}
	return 0, 0, false
}

// used is what came out of a panel before, nil if nothing.
func (c *checker) used(fabric, panel int) *queue.PanelUse {
	for i := range c.asked.Used {
		if u := &c.asked.Used[i]; u.Fabric == fabric && u.Panel == panel {
			return u
		}
	}
	return nil
}

// usedBoxes is where a panel has been cut before.
func (c *checker) usedBoxes(u *queue.PanelUse) (boxes []outline.Box) {
	for i := range c.asked.Used {
		before := &c.asked.Used[i]
		if before.Fabric != u.Fabric || before.Panel != u.Panel {
			continue
		}
		for _, r := range before.RoughCuts {
			boxes = append(boxes, outline.NewBox(r.X, r.Y, r.Width, r.Height))
		}
		for _, h := range before.ByHand {
			boxes = append(boxes, outline.NewBox(h.X, h.Y, h.Width, h.Height))
		}
	}
	return boxes
}

// washed is what is left of l once it has shrunk by millionths, rounded down.
func washed(l length.Len, millionths int64) length.Len {
	const whole = 1_000_000
	if l < 0 || millionths < 0 || millionths > whole {
		return 0
	}
	hi, lo := bits.Mul64(uint64(l), uint64(whole-millionths))
	q, _ := bits.Div64(hi, lo, whole)
	return length.Len(q)
}

// fromPanel looks at one rough cut on its panel and adds its box.
func (c *checker) fromPanel(panel int, r queue.FromPanel, cut map[[2]int]bool, boxes []outline.Box) []outline.Box {
	u := &c.queue.Stock[panel]
	load, ok := c.loadOf[r.Load]
	if !ok || r.RoughCut < 0 || r.RoughCut >= len(c.queue.Loads[load].RoughCuts) {
		c.fault(Reference, nowhere, "%s, panel %d: there is no rough cut %d of load %d", c.fabricName(u.Fabric), u.Panel, r.RoughCut, r.Load)
		return boxes
	}
	key := [2]int{load, r.RoughCut}
	if cut[key] {
		c.fault(FromPanel, load, "rough cut %d comes out of the fabric twice", r.RoughCut)
	}
	cut[key] = true
	rough := &c.queue.Loads[load].RoughCuts[r.RoughCut]
	if rough.Fabric != u.Fabric || rough.Panel != u.Panel || rough.Width != r.Width || rough.Height != r.Height {
		c.fault(FromPanel, load, "rough cut %d is another than what comes out of %s, panel %d", r.RoughCut, c.fabricName(u.Fabric), u.Panel)
	}
	return append(boxes, outline.NewBox(r.X, r.Y, rough.Width, rough.Height))
}

// byHand looks at one piece cut by hand and adds its box.
func (c *checker) byHand(panel int, h queue.HandCut, boxes []outline.Box) []outline.Box {
	u := &c.queue.Stock[panel]
	if h.Line < 0 || h.Line >= len(c.list.Lines) || c.list.Lines[h.Line].Kind == cutlist.OnMat || c.list.Lines[h.Line].Fabric != u.Fabric {
		c.fault(Reference, nowhere, "%s, panel %d: no line asks for what is cut by hand", c.fabricName(u.Fabric), u.Panel)
		return boxes
	}
	c.see(h.Line, h.Copy, nowhere)
	switch l := &c.list.Lines[h.Line]; l.Kind {
	case cutlist.ByHand:
		size := l.Outline.Bounds()
		asIs := h.Width == size.Width() && h.Height == size.Height()
		turned := h.Width == size.Height() && h.Height == size.Width() && c.mayTurn(l, outline.QuarterTurn)
		if !asIs && !turned {
			c.fault(HandSize, nowhere, "%s is cut %s x %s", c.name(h.Line, h.Copy), h.Width, h.Height)
		}
	case cutlist.Strips, cutlist.Binding:
		if h.X != 0 || h.Width != u.Width {
			c.fault(Strip, nowhere, "%s does not go across the whole width", c.name(h.Line, h.Copy))
		}
		if h.Height != l.StripWidth {
			c.fault(HandSize, nowhere, "%s is cut %s wide", c.name(h.Line, h.Copy), h.Height)
		}
		t := &c.strips[h.Line]
		if t.count == 0 || h.Width < t.shortest {
			t.shortest = h.Width
		}
		t.count++
		t.together += h.Width
	}
	return append(boxes, outline.NewBox(h.X, h.Y, h.Width, h.Height))
}

// share looks at how things lie together on a panel.
func (c *checker) share(panel int, boxes []outline.Box) {
	u := &c.queue.Stock[panel]
	whole := outline.NewBox(0, 0, u.Width, u.Height)
	name := c.fabricName(u.Fabric)
	for _, b := range boxes {
		if !whole.Contains(b) {
			c.fault(OffPanel, nowhere, "what is cut at %s, %s hangs over panel %d of %s", b.Min.X, b.Min.Y, u.Panel, name)
		}
	}
	pairs := overlaps(boxes)
	for _, p := range pairs {
		a, b := boxes[p[0]], boxes[p[1]]
		c.fault(PanelShare, nowhere, "what is cut at %s, %s and at %s, %s overlaps on panel %d of %s", a.Min.X, a.Min.Y, b.Min.X, b.Min.Y, u.Panel, name)
	}
	if len(pairs) == 0 && !separable(boxes) {
		c.fault(Stuck, nowhere, "cuts straight across don't free all that comes out of panel %d of %s", u.Panel, name)
	}
}
