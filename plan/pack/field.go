package pack

import (
	"slices"

	"example.org/matside/plan/length"
)

// tile is a rectangle that a field is laid out with: a block lying one way,
// or outlines nested.
type tile struct {
	w, h  length.Len
	parts []Part
}

// field is a grid of one fabric's tiles, of boxes with the gap at their right
// and below.
type field struct {
	grid
	fabric int
	tiles  []tile
	solved []int64 // the worth of each tile when it was solved last
}

// newField takes the tiles that fit w x h.
func (j *Job) newField(fabric int, tiles []tile, w, h length.Len) *field {
	f := &field{fabric: fabric}
	gap := j.List.Gap
	var ws, hs []length.Len
	for _, t := range tiles {
		if t.w <= w && t.h <= h {
			f.tiles = append(f.tiles, t)
			ws, hs = append(ws, t.w+gap), append(hs, t.h+gap)
		}
	}
	f.grid = newGrid(newAxis(sums(distinct(ws), w+gap)), newAxis(sums(distinct(hs), h+gap)))
	return f
}

// distinct are the lengths once each, longest first.
func distinct(ls []length.Len) []length.Len {
	slices.Sort(ls)
	ls = slices.Compact(ls)
	slices.Reverse(ls)
	return ls
}

// solve works every box out, with what a piece of each kind is worth.
func (f *field) solve(j *Job, value []int64) {
	worth := make([]int64, len(f.tiles))
	for t := range f.tiles {
		for _, p := range f.tiles[t].parts {
			worth[t] += value[p.Kind]
		}
	}
	if slices.Equal(worth, f.solved) {
		return
	}
	f.solved = worth
	clear(f.whole)
	for t, v := range worth {
		f.put(f.x.ceil(f.tiles[t].w+j.List.Gap), f.y.ceil(f.tiles[t].h+j.List.Gap), v, t)
	}
	f.grid.solve()
}

// lay gives the parts of the box at places i, k, its corner at 0, 0.
func (f *field) lay(i, k int) (out []Part) {
	f.each(i, k, 0, 0, func(_, _, t int, x, y length.Len) {
		for _, p := range f.tiles[t].parts {
			p.X, p.Y = p.X+x, p.Y+y
			out = append(out, p)
		}
	})
	return out
}
