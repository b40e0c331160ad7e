package pack

import "example.org/matside/plan/length"

// shapeSteps is how many widths a rough cut is tried at.
const shapeSteps = 16

// Shapes are other shapes that a rough cut could have: the group's pieces,
// laid as low as they go in boxes of several widths, the group itself not
// among them. None is both wider and higher than another. There are none
// where a piece lies aslant.
func (j *Job) Shapes(g *Group) (out []Group) {
	for _, f := range j.forms(g.Fabric, j.holds(g)) {
		if f.w != g.W || f.h != g.H {
			out = append(out, f.groups[0])
		}
	}
	return out
}

// forms are the ways to lay wanted pieces of a fabric, as low as they go in
// boxes of several widths; none where a piece must lie aslant.
func (j *Job) forms(fabric int, want []int) []form {
	bs, ok := j.blocksFor(fabric, want)
	if !ok {
		return nil
	}
	var all []form
	for n := 1; n <= shapeSteps; n++ {
		if g, ok := j.strip(fabric, bs, j.W*length.Len(n)/shapeSteps, j.H); ok {
			all = append(all, form{g.W, g.H, []Group{g}})
		}
	}
	return least(all)
}
