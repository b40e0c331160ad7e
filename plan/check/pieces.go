package check

import (
	"cmp"
	"slices"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
)

// pose is a line's outline as it may lie, but for its place.
type pose struct {
	line, turn int
	mirrored   bool
}

// model is the outline of a pose, made ready once for all copies.
type model struct {
	region   outline.Region
	headings []heading // of its edges
}

// model is what a placement must look like, wherever it lies.
func (c *checker) model(p *queue.Placement) *model {
	key := pose{p.Line, p.Turn, p.Mirrored}
	m := c.models[key]
	if m == nil {
		o := c.list.Lines[p.Line].Outline
		if p.Mirrored {
			o = o.Mirror()
		}
		m = newModel(o.Turn(p.Turn))
		c.models[key] = m
	}
	return m
}

func newModel(o outline.Outline) *model {
	m := &model{region: outline.NewRegion(o)}
	for i, a := range o {
		m.headings = append(m.headings, newHeading(a, o[(i+1)%len(o)]))
	}
	return m
}

// placed is a placement found to be what it should be, ready for its
// neighbours.
type placed struct {
	index  int
	model  *model
	region outline.Region // as the model has it, corner by corner, moved to its place
}

// piece looks at one placement by itself, and says whether it is worth
// comparing with its neighbours: a broken outline is not.
func (c *checker) piece(load, index int, usable outline.Box) (placed, bool) {
	l := &c.queue.Loads[load]
	p := &l.Pieces[index]
	if !c.refers(p, load, index) {
		return placed{}, false
	}
	line := &c.list.Lines[p.Line]
	rough := &l.RoughCuts[p.RoughCut]
	if faceDown := c.list.Fabrics[line.Fabric].FaceDown; p.Mirrored != faceDown {
		c.fault(Mirror, load, "%s: mirrored is %v, its fabric is face down is %v", c.name(p.Line, p.Copy), p.Mirrored, faceDown)
	}
	if !c.mayTurn(line, p.Turn) {
		c.fault(Turn, load, "%s is turned %d millionths of a degree", c.name(p.Line, p.Copy), p.Turn)
	}
	if rough.Fabric != line.Fabric {
		c.fault(Fabric, load, "%s lies in a rough cut of %s", c.name(p.Line, p.Copy), c.list.Fabrics[rough.Fabric].Name)
	}
	if len(p.Outline) == 0 {
		c.fault(Outline, load, "%s has no outline", c.name(p.Line, p.Copy))
		return placed{}, false
	}
	box := p.Outline.Bounds()
	if !usable.Contains(box) {
		c.fault(Usable, load, "%s lies outside what the blade reaches", c.name(p.Line, p.Copy))
	}
	if !roughBox(rough).Grow(-c.list.Margin).Contains(box) {
		c.fault(Margin, load, "%s is less than %s from the edge of its rough cut", c.name(p.Line, p.Copy), c.list.Margin)
	}
	m := c.model(p)
	region := m.region.Move(box.Min.X-m.region.Box.Min.X, box.Min.Y-m.region.Box.Min.Y)
	if !outline.Same(region.Outline, p.Outline) {
		c.fault(Outline, load, "%s has another outline than its line", c.name(p.Line, p.Copy))
		return placed{}, false
	}
	return placed{index, m, region}, true
}

// refers says whether all that a placement refers to is there, and counts it.
func (c *checker) refers(p *queue.Placement, load, index int) bool {
	l := &c.queue.Loads[load]
	if p.Line < 0 || p.Line >= len(c.list.Lines) {
		c.fault(Reference, load, "piece %d is of no line", index)
		return false
	}
	if c.list.Lines[p.Line].Kind != cutlist.OnMat {
		c.fault(Reference, load, "%s is cut by hand and lies on a mat", c.name(p.Line, p.Copy))
		return false
	}
	c.see(p.Line, p.Copy, load)
	switch {
	case p.RoughCut < 0 || p.RoughCut >= len(l.RoughCuts):
		c.fault(Reference, load, "%s lies in no rough cut", c.name(p.Line, p.Copy))
	case !c.isFabric(l.RoughCuts[p.RoughCut].Fabric):
		// The rough cut has been told of.
	default:
		return true
	}
	return false
}

func (c *checker) isFabric(f int) bool { return f >= 0 && f < len(c.list.Fabrics) }

// mayTurn says whether the grain and the print allow a turn.
func (c *checker) mayTurn(l *cutlist.Line, turn int) bool {
	switch {
	case turn < 0 || turn >= outline.FullTurn:
		return false
	case c.list.Fabrics[l.Fabric].OneWay:
		return turn == 0
	case l.Grain == cutlist.AnyGrain:
		return true
	case l.Grain == cutlist.QuarterTurns:
		return turn%outline.QuarterTurn == 0
	}
	return turn%(2*outline.QuarterTurn) == 0
}

// neighbours finds the pieces of a load that are too close. They are taken from
// left to right and each is compared with those that start before it ends.
func (c *checker) neighbours(load int, pieces []placed) {
	gap := c.list.Gap
	slices.SortFunc(pieces, func(a, b placed) int {
		return cmp.Or(cmp.Compare(a.region.Box.Min.X, b.region.Box.Min.X), cmp.Compare(a.index, b.index))
	})
	for i := range pieces {
		p := &pieces[i]
		for j := i + 1; j < len(pieces) && pieces[j].region.Box.Min.X < p.region.Box.Max.X+gap; j++ {
			if o := &pieces[j]; !p.region.Apart(o.region, gap) {
				c.tooClose(load, min(p.index, o.index), max(p.index, o.index), gap)
			}
		}
	}
}

func (c *checker) tooClose(load, i, j int, gap length.Len) {
	a, b := &c.queue.Loads[load].Pieces[i], &c.queue.Loads[load].Pieces[j]
	how := "overlap"
	if gap > 0 {
		how = "are less than " + gap.String() + " apart"
	}
	c.fault(Gap, load, "%s and %s %s", c.name(a.Line, a.Copy), c.name(b.Line, b.Copy), how)
}
