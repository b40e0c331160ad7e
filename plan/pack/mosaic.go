package pack

import (
	"example.org/matside/plan/length"
)

// mosaic lays out a mat with the most worth there is in boxes of the several
// fabrics, parted by straight cuts with the margins between them: the same
// sum as a field's, over the fields.
type mosaic struct {
	*solver
	fields []*field
	places [][2][]int16 // by field, across and down: the field's place for each of the mat's
	x, y   *axis        // of boxes with their distance from the next at their right and below
	cells  []cell
	value  []int64
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
	m.x, m.y = newAxis(s.cuts(ws, s.W)), newAxis(s.cuts(hs, s.H))
	m.cells = make([]cell, len(m.x.at)*len(m.y.at))
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
	for _, b := range boxes {
		out = append(out, b+s.Apart, side-b)
	}
	return out
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
	m.value = value
	for _, f := range m.fields {
		f.solve(m.Job, value)
	}
	ny := len(m.y.at)
	clear(m.cells)
	for n, f := range m.fields {
		px, py, fy := m.places[n][0], m.places[n][1], len(f.y.at)
		for i := range m.x.at {
			for k := range m.y.at {
				if w := f.cells[int(px[i])*fy+int(py[k])].worth; w > m.cells[i*ny+k].worth {
					m.cells[i*ny+k] = cell{w, whole, int16(n)}
				}
			}
		}
	}
	for n := range m.solids {
		g := &m.solids[n]
		i, k := m.ceil(m.x, g.W+m.Apart), m.ceil(m.y, g.H+m.Apart)
		for ; i < len(m.x.at) && solid[n] > 0; i++ {
			for k := k; k < ny; k++ {
				if solid[n] > m.cells[i*ny+k].worth {
					m.cells[i*ny+k] = cell{solid[n], whole, int16(len(m.fields) + n)}
				}
			}
		}
	}
	divide(m.cells, m.x, m.y)
	return m.load(len(m.x.at)-1, ny-1)
}

func (m *mosaic) ceil(a *axis, l length.Len) int {
	i := a.floor(l)
	if a.at[i] < l {
		i++
	}
	return i
}

// load reads a load off the cells.
func (m *mosaic) load(i, k int) load {
	var l load
	each(m.cells, m.x, m.y, i, k, m.X, m.Y, func(i, k, arg int, x, y length.Len) {
		o := offer{solid: -1}
		if arg < len(m.fields) {
			f := m.fields[arg]
			o.Fabric = f.fabric
			o.Parts = f.lay(int(m.places[arg][0][i]), int(m.places[arg][1][k]), 0, 0, nil)
			m.tighten(&o.Group)
		} else {
			o.solid = arg - len(m.fields)
			o.Group = m.solids[o.solid]
		}
		o.X, o.Y = x, y
		l.offers = append(l.offers, o)
	})
	return l
}
