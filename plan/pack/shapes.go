package pack

import (
	"cmp"
	"slices"

	"example.org/matside/plan/length"
)

// shapeSteps is how many widths a rough cut is tried at.
const shapeSteps = 16

// Shapes are other shapes that a rough cut could have: the group's pieces,
// laid as low as they go in boxes of several widths, the group itself not
// among them. None is both wider and higher than another. There are none
// where a piece lies aslant.
func (j *Job) Shapes(g *Group) []Group {
	bs, ok := j.blocksOf(g)
	if !ok {
		return nil
	}
	var all []Group
	for n := 1; n <= shapeSteps; n++ {
		if o, ok := j.strip(g.Fabric, bs, j.W*length.Len(n)/shapeSteps, j.H); ok {
			all = append(all, o)
		}
	}
	slices.SortStableFunc(all, func(a, b Group) int { return cmp.Or(cmp.Compare(a.W, b.W), cmp.Compare(a.H, b.H)) })
	var out []Group
	low := j.H + 1
	for _, s := range all {
		if s.H < low {
			low = s.H
			if s.W != g.W || s.H != g.H {
				out = append(out, s)
			}
		}
	}
	return out
}
