package pack

import (
	"cmp"
	"slices"

	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
)

// shapeSteps is how many widths a rough cut is tried at.
const shapeSteps = 16

// Shapes are other shapes that a rough cut could have: the group's pieces,
// laid as low as they go in boxes of several widths, the group itself not
// among them. None is both wider and higher than another. There are none
// where a piece lies aslant.
func (j *Job) Shapes(g *Group) []Group {
	want := make([]int, len(j.Kinds))
	for _, p := range g.Parts {
		want[p.Kind]++
	}
	bs := j.blocks(g.Fabric, want)
	covered := 0
	for _, b := range bs {
		covered += b.count * len(b.parts)
	}
	if covered < len(g.Parts) {
		return nil
	}
	gap := j.List.Gap
	var all []Group
	for n := 1; n <= shapeSteps; n++ {
		w := j.W * length.Len(n) / shapeSteps
		if bin, _, ok := rect.Strip(w+gap, j.H+gap, j.sizes(bs), j.options()); ok {
			all = append(all, j.group(g.Fabric, bs, bin))
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
