package pack

import "example.org/matside/plan/length"

// grid knows, for a box of any size, the most worth that can be laid in it by
// straight cuts across what is left, each thing as often as one likes
// (Gilmore and Gomory, "Multistage cutting stock problems of two and more
// dimensions", Operations Research 13, 1965). Boxes are told apart by the
// places of the axes that they reach.
type grid struct {
	x, y  *axis
	whole []int64 // by place across, by place down: the most worth of a thing laid whole
	thing []int16 // which
	worth []int64 // the most worth, laid whole or cut
}

func newGrid(x, y *axis) grid {
	n := len(x.at) * len(y.at)
	return grid{x, y, make([]int64, n), make([]int16, n), make([]int64, n)}
}

// put lays a thing whole in the boxes of a place, if it is worth most there.
func (g *grid) put(i, k int, worth int64, thing int) {
	if c := i*len(g.y.at) + k; worth > g.whole[c] {
		g.whole[c], g.thing[c] = worth, int16(thing)
	}
}

// solve works out what boxes hold when they may be cut, smaller ones first,
// given what was put in them whole.
func (g *grid) solve() {
	copy(g.worth, g.whole)
	for i := range g.x.at {
		row := g.row(i)
		if i > 0 {
			for k, v := range g.row(i - 1) {
				row[k] = max(row[k], v)
			}
		}
		for n, rest := range g.x.rest[i] {
			left, right := g.row(n + 1)[:len(row)], g.row(int(rest))[:len(row)]
			for k := range row {
				row[k] = max(row[k], left[k]+right[k])
			}
		}
		for k := 1; k < len(row); k++ {
			most := max(row[k], row[k-1])
			for n, rest := range g.y.rest[k] {
				most = max(most, row[n+1]+row[rest])
			}
			row[k] = most
		}
	}
}

// row is the worth of boxes as wide as a place.
func (g *grid) row(i int) []int64 {
	n := len(g.y.at)
	return g.worth[i*n : (i+1)*n]
}

// most is the worth of the largest box.
func (g *grid) most() int64 { return g.worth[len(g.worth)-1] }

// each calls do for every thing laid in the boxes of a place, with the place
// of the box that it has to itself and its corner, the larger box's at ox, oy.
func (g *grid) each(i, k int, ox, oy length.Len, do func(i, k, thing int, ox, oy length.Len)) {
	row, worth := g.row(i), g.row(i)[k]
	switch c := i*len(row) + k; {
	case worth == 0:
		return
	case worth == g.whole[c]:
		do(i, k, int(g.thing[c]), ox, oy)
		return
	case i > 0 && worth == g.row(i - 1)[k]:
		g.each(i-1, k, ox, oy, do)
		return
	case k > 0 && worth == row[k-1]:
		g.each(i, k-1, ox, oy, do)
		return
	}
	for n, rest := range g.x.rest[i] {
		if rest := int(rest); worth == g.row(n + 1)[k]+g.row(rest)[k] {
			g.each(n+1, k, ox, oy, do)
			g.each(rest, k, ox+g.x.at[n+1], oy, do)
			return
		}
	}
	for n, rest := range g.y.rest[k] {
		if rest := int(rest); worth == row[n+1]+row[rest] {
			g.each(i, n+1, ox, oy, do)
			g.each(i, rest, ox, oy+g.y.at[n+1], do)
			return
		}
	}
}
