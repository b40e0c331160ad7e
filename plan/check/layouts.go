package check

import (
	"cmp"
	"slices"

	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
)

// layouts compares the loads that say they are cut from one drawing.
func (c *checker) layouts() {
	drawings := map[int][]outline.Outline{}
	for i := range c.queue.Loads {
		l := &c.queue.Loads[i]
		if l.Layout < 1 {
			c.fault(Layout, inLoad(i), "its layout has no number")
			continue
		}
		d := drawing(l.Pieces)
		first, seen := drawings[l.Layout]
		if !seen {
			drawings[l.Layout] = d
		} else if !slices.EqualFunc(first, d, slices.Equal) {
			c.fault(Layout, inLoad(i), "it is cut from another drawing than layout %d", l.Layout)
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
