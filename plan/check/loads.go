package check

import (
	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
)

// loads looks at every load by itself.
func (c *checker) loads() {
	mat, usable := c.mat()
	for i := range c.queue.Loads {
		l := &c.queue.Loads[i]
		if i == 0 && l.Number < 1 || i > 0 && l.Number <= c.queue.Loads[i-1].Number {
			c.fault(Number, i, "its number is out of order")
		}
		c.loadOf[l.Number] = i
		c.roughCuts(i, mat)
		var pieces []placed
		whole := true
		for k := range l.Pieces {
			if p, ok := c.piece(i, k, usable); ok {
				pieces = append(pieces, p)
			} else {
				whole = false
			}
		}
		c.neighbours(i, pieces)
		c.company(i)
		if whole {
			c.cutLength(i, pieces)
		}
	}
}

func roughBox(r *queue.RoughCut) outline.Box { return outline.NewBox(r.X, r.Y, r.Width, r.Height) }

// roughCuts looks at where the rough cuts of a load lie on the mat.
func (c *checker) roughCuts(load int, mat outline.Box) {
	rough := c.queue.Loads[load].RoughCuts
	var boxes []outline.Box
	for k := range rough {
		if !c.isFabric(rough[k].Fabric) {
			c.fault(Reference, load, "rough cut %d is of no fabric", k)
		}
		b := roughBox(&rough[k])
		if !mat.Contains(b) || b.Width() <= 0 || b.Height() <= 0 {
			c.fault(Mat, load, "the rough cut of %s hangs over the mat", c.fabricName(rough[k].Fabric))
		}
		boxes = append(boxes, b)
	}
	for _, p := range overlaps(boxes) {
		c.fault(RoughCuts, load, "the rough cuts of %s and %s overlap",
			c.fabricName(rough[p[0]].Fabric), c.fabricName(rough[p[1]].Fabric))
	}
}

func (c *checker) fabricName(f int) string {
	if c.isFabric(f) {
		return c.list.Fabrics[f].Name
	}
	return "no fabric"
}

// company looks at which pieces share a rough cut: every one holds a piece, and
// a fussy piece has one to itself.
func (c *checker) company(load int) {
	l := &c.queue.Loads[load]
	held := make([]int, len(l.RoughCuts))
	for _, p := range l.Pieces {
		if p.RoughCut >= 0 && p.RoughCut < len(held) {
			held[p.RoughCut]++
		}
	}
	for k, n := range held {
		if n == 0 {
			c.fault(Idle, load, "the rough cut of %s holds no piece", c.fabricName(l.RoughCuts[k].Fabric))
		}
	}
	for _, p := range l.Pieces {
		if p.Line < 0 || p.Line >= len(c.list.Lines) || p.RoughCut < 0 || p.RoughCut >= len(held) {
			continue
		}
		if c.list.Lines[p.Line].Fussy && held[p.RoughCut] > 1 {
			c.fault(Fussy, load, "%s shares its rough cut", c.name(p.Line, p.Copy))
		}
	}
}
