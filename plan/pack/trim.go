package pack

import (
	"encoding/binary"

	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
)

// trimSteps is how many widths a group is tried at.
const trimSteps = 12

// trim packs a group anew, so that its rough cut is as small as can be found:
// the same load, less fabric. Unless it has its mat to itself, it stays in
// its box.
func (s *solver) trim(g *Group, alone bool) {
	w, h := g.W, g.H
	if alone {
		w, h = s.reachOf(s.limits[g.Fabric])
	}
	key := []byte{}
	for _, v := range []length.Len{length.Len(g.Fabric), w, h} {
		key = binary.AppendVarint(key, int64(v))
	}
	for _, p := range g.Parts {
		for _, v := range []length.Len{length.Len(p.Kind), length.Len(p.Turn), p.X, p.Y} {
			key = binary.AppendVarint(key, int64(v))
		}
	}
	best, ok := s.trimmed[string(key)]
	if !ok {
		best = s.smallest(g, w, h)
		s.trimmed[string(key)] = best
	}
	best.X, best.Y = g.X, g.Y
	*g = best
}

// smallest is a group's pieces in the smallest rough cut found within a box
// of w x h.
func (s *solver) smallest(g *Group, w, h length.Len) Group {
	best := *g
	bs, ok := s.blocksOf(g)
	if !ok {
		return best
	}
	for n := 1; n <= trimSteps; n++ {
		if o, ok := s.strip(g.Fabric, bs, w*length.Len(n)/trimSteps, h); ok && s.rough(&o) < s.rough(&best) {
			best = o
		}
	}
	return best
}

// blocksOf are the blocks that hold a group's pieces; not ok where some piece
// lies aslant.
func (j *Job) blocksOf(g *Group) (bs []block, ok bool) {
	return j.blocksFor(g.Fabric, j.holds(g))
}

// holds counts a group's pieces by kind.
func (j *Job) holds(g *Group) []int {
	out := make([]int, len(j.Kinds))
	for _, p := range g.Parts {
		out[p.Kind]++
	}
	return out
}

// blocksFor are the blocks that hold wanted pieces of a fabric; not ok where
// some piece goes on the mat aslant only.
func (j *Job) blocksFor(fabric int, want []int) (bs []block, ok bool) {
	bs = j.blocks(fabric, want)
	left := 0
	for _, k := range j.of[fabric] {
		left += want[k]
	}
	for _, b := range bs {
		left -= b.count * len(b.parts)
	}
	return bs, left <= 0
}

// strip packs blocks as low as it can in a box of at most w x h.
func (j *Job) strip(fabric int, bs []block, w, h length.Len) (Group, bool) {
	bin, _, ok := rect.Strip(w+j.List.Gap, h+j.List.Gap, j.sizes(bs), j.options())
	if !ok {
		return Group{}, false
	}
	return j.group(fabric, bs, bin), true
}

// rough is the area of a group's rough cut, to compare by.
func (j *Job) rough(g *Group) int64 {
	m := 2 * j.List.Margin
	return square(g.W+m, g.H+m)
}
