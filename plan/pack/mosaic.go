package pack

import (
	"slices"

	"example.org/matside/plan/length"
)

// mosaic lays out a mat with the most worth there is in boxes of the several
// fabrics, parted by straight cuts with the margins between them: the same
// sum as a field's, over the fields.
type mosaic struct {
	*solver
	grid   // of boxes with their distance from the next at their right and below
	fields []*field
	places [][2][]int16 // by field, across and down: the field's place for each of the mat's
	solved int          // how often it was, the measure of effort
}

// newMosaic has a field for each fabric that has pieces to lay one by one;
// tiles are by fabric.
func (s *solver) newMosaic(tiles [][]tile) *mosaic {
	m := &mosaic{solver: s}
	for f := range s.of {
		if len(tiles[f]) == 0 || s.limits[f].Groups != nil {
			continue
		}
		w, h := s.reachOf(s.limits[f])
		m.fields = append(m.fields, s.newField(f, tiles[f], w, h))
	}
	var ws, hs []length.Len
	for _, f := range m.fields {
		ws, hs = append(ws, less(f.x.at, s.List.Gap)...), append(hs, less(f.y.at, s.List.Gap)...)
	}
	for i := range s.solids {
		ws, hs = append(ws, s.solids[i].W), append(hs, s.solids[i].H)
	}
	m.grid = newGrid(newAxis(s.cuts(ws, s.W)), newAxis(s.cuts(hs, s.H)))
	for _, f := range m.fields {
		w, h := s.reachOf(s.limits[f.fabric])
		m.places = append(m.places, [2][]int16{s.placesOf(f.x, m.x, w), s.placesOf(f.y, m.y, h)})
	}
	return m
}

// less are the places of a field as the boxes that reach them.
func less(at []length.Len, gap length.Len) []length.Len {
	var out []length.Len
	for _, l := range at {
		if l > gap {
			out = append(out, l-gap)
		}
	}
	return out
}

// cuts are the places on a mat's side where boxes end, laid from either edge.
func (s *solver) cuts(boxes []length.Len, side length.Len) []length.Len {
	out := []length.Len{0, side + s.Apart}
	var apart []length.Len
	for _, b := range boxes {
		out = append(out, b+s.Apart, side-b)
		apart = append(apart, b+s.Apart)
	}
	slices.Sort(out)
	out = slices.Compact(out)
	if len(out) >= mostPlaces {
		return out
	}
	more := sums(distinct(apart), side+s.Apart)
	if n := mostPlaces - len(out); len(more) > n {
		for i := range n {
			out = append(out, more[i*(len(more)-1)/(n-1)])
		}
		return out
	}
	return append(out, more...)
}

// placesOf says for each place of the mat how much of a field's fits there,
// and within most.
func (s *solver) placesOf(field, mat *axis, most length.Len) []int16 {
	out := make([]int16, len(mat.at))
	for i, at := range mat.at {
		if l := min(at-s.Apart, most); l > 0 {
			out[i] = int16(field.floor(l + s.List.Gap))
		}
	}
	return out
}

// solve finds the load of most worth, with what a piece of each kind and a
// solid of each class is worth.
func (m *mosaic) solve(value, solid []int64) load {
	m.solved++
	clear(m.whole)
	for n, f := range m.fields {
		f.solve(m.Job, value)
		down := m.places[n][1]
		for i, across := range m.places[n][0] {
			row := f.row(int(across))
			for k, at := range down {
				m.put(i, k, row[at], n)
			}
		}
	}
	for n := range m.solids {
		g := &m.solids[n]
		for i := m.x.ceil(g.W + m.Apart); i < len(m.x.at) && solid[n] > 0; i++ {
			for k := m.y.ceil(g.H + m.Apart); k < len(m.y.at); k++ {
				m.put(i, k, solid[n], len(m.fields)+n)
			}
		}
	}
	m.grid.solve()
	return m.load(len(m.x.at)-1, len(m.y.at)-1)
}

// load reads a load off the grid.
func (m *mosaic) load(i, k int) load {
	var l load
	m.each(i, k, m.X, m.Y, func(i, k, thing int, x, y length.Len) {
		o := offer{solid: -1}
		if thing < len(m.fields) {
			f := m.fields[thing]
			o.Fabric = f.fabric
			o.Parts = f.lay(int(m.places[thing][0][i]), int(m.places[thing][1][k]))
			m.tighten(&o.Group)
		} else {
			o.solid = thing - len(m.fields)
			o.Group = m.solids[o.solid]
		}
		o.X, o.Y = x, y
		l.offers = append(l.offers, o)
	})
	return l
}
