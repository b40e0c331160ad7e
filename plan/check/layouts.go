package check

import (
	"cmp"
	"slices"

	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
)

// layouts compares the loads that say they are cut from one drawing.
func (c *checker) layouts() {
	first := map[int]int{} // the first load of each layout
	drawings := map[int][]outline.Outline{}
	for i := range c.queue.Loads {
		n := c.queue.Loads[i].Layout
		if n < 1 {
			c.fault(Layout, i, "its layout has no number")
			continue
		}
		f, seen := first[n]
		if !seen {
			first[n] = i
			continue
		}
		if drawings[n] == nil {
			drawings[n] = drawing(c.queue.Loads[f].Pieces)
		}
		if !slices.EqualFunc(drawings[n], drawing(c.queue.Loads[i].Pieces), slices.Equal) {
			c.fault(Layout, i, "it is cut from another drawing than layout %d", n)
		}
	}
}

// drawing is the outlines of a load in one order, whatever their order in the
// queue and whichever corner they start at.
func drawing(pieces []queue.Placement) []outline.Outline {
	var ds []outline.Outline
	for _, p := range pieces {
		ds = append(ds, fromFirst(p.Outline))
	}
	slices.SortFunc(ds, func(a, b outline.Outline) int { return slices.CompareFunc(a, b, comparePoints) })
	return ds
}

// fromFirst is o started at its leftmost corner, of these the topmost.
func fromFirst(o outline.Outline) outline.Outline {
	first := 0
	for i := range o {
		if comparePoints(o[i], o[first]) < 0 {
			first = i
		}
	}
	return append(slices.Clone(o[first:]), o[:first]...)
}

func comparePoints(a, b outline.Point) int {
	return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y))
}
