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

// field knows, for a box of any size, the most worth that one fabric's tiles
// have in it when they are laid by straight cuts across what is left, each
// tile as often as one likes (Gilmore and Gomory, "Multistage cutting stock
// problems of two and more dimensions", Operations Research 13, 1965).
type field struct {
	fabric int
	tiles  []tile
	x, y   *axis // of boxes with the gap at their right and below
	cells  []cell
}

// cell is the best way found to fill a box.
type cell struct {
	worth int64
	how   how
	arg   int16 // the tile, or the place of the cut
}

// how says how a cell is filled.
type how uint8

const (
	empty    how = iota
	narrower     // as the cell before it across
	lower        // as the cell before it down
	whole        // with one tile, or group
	across       // two cells side by side
	down         // two cells one above the other
)

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
	f.x, f.y = newAxis(sums(distinct(ws), w+gap)), newAxis(sums(distinct(hs), h+gap))
	f.cells = make([]cell, len(f.x.at)*len(f.y.at))
	return f
}

// distinct are the lengths once each, longest first.
func distinct(ls []length.Len) []length.Len {
	slices.Sort(ls)
	ls = slices.Compact(ls)
	slices.Reverse(ls)
	return ls
}

// solve works every cell out, with what a piece of each kind is worth.
func (f *field) solve(j *Job, value []int64) {
	clear(f.cells)
	ny := len(f.y.at)
	for t := range f.tiles {
		var worth int64
		for _, p := range f.tiles[t].parts {
			worth += value[p.Kind]
		}
		c := &f.cells[f.ceil(f.x, f.tiles[t].w+j.List.Gap)*ny+f.ceil(f.y, f.tiles[t].h+j.List.Gap)]
		if worth > c.worth {
			*c = cell{worth, whole, int16(t)}
		}
	}
	divide(f.cells, f.x, f.y)
}

// ceil is the first place no less than l.
func (f *field) ceil(a *axis, l length.Len) int {
	i, _ := slices.BinarySearch(a.at, l)
	return i
}

// divide works out, smaller boxes first, what cells hold when they may be cut
// in two, given what they hold whole.
func divide(cells []cell, x, y *axis) {
	ny := len(y.at)
	for i := range x.at {
		for k := range y.at {
			c := cells[i*ny+k]
			if i > 0 && cells[(i-1)*ny+k].worth > c.worth {
				c = cell{cells[(i-1)*ny+k].worth, narrower, 0}
			}
			if k > 0 && cells[i*ny+k-1].worth > c.worth {
				c = cell{cells[i*ny+k-1].worth, lower, 0}
			}
			for n, r := range x.rest[i] {
				if v := cells[(n+1)*ny+k].worth + cells[int(r)*ny+k].worth; v > c.worth {
					c = cell{v, across, int16(n + 1)}
				}
			}
			row := cells[i*ny : i*ny+ny]
			for n, r := range y.rest[k] {
				if v := row[n+1].worth + row[r].worth; v > c.worth {
					c = cell{v, down, int16(n + 1)}
				}
			}
			cells[i*ny+k] = c
		}
	}
}

// lay gives the parts of the cell at places i, k, its corner at ox, oy.
func (f *field) lay(i, k int, ox, oy length.Len, out []Part) []Part {
	each(f.cells, f.x, f.y, i, k, ox, oy, func(_, _, t int, x, y length.Len) {
		for _, p := range f.tiles[t].parts {
			p.X, p.Y = p.X+x, p.Y+y
			out = append(out, p)
		}
	})
	return out
}

// each calls do for every cell filled whole that the cell at i, k is made of,
// with its places, what fills it and its corner.
func each(cells []cell, x, y *axis, i, k int, ox, oy length.Len, do func(i, k, arg int, ox, oy length.Len)) {
	switch c := cells[i*len(y.at)+k]; c.how {
	case narrower:
		each(cells, x, y, i-1, k, ox, oy, do)
	case lower:
		each(cells, x, y, i, k-1, ox, oy, do)
	case whole:
		do(i, k, int(c.arg), ox, oy)
	case across:
		n := int(c.arg)
		each(cells, x, y, n, k, ox, oy, do)
		each(cells, x, y, int(x.rest[i][n-1]), k, ox+x.at[n], oy, do)
	case down:
		n := int(c.arg)
		each(cells, x, y, i, n, ox, oy, do)
		each(cells, x, y, i, int(y.rest[k][n-1]), ox, oy+y.at[n], do)
	}
}
