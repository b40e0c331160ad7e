package nest

import (
	"math"
	"slices"
)

// window lays a lattice's pieces that fall inside the container, the lattice
// moved so that they are the most. It need only be tried with each piece of the
// motif at the left side, for any layout can be moved there; and how far down is
// best is where most pieces' stretches of free play overlap.
func (m *model) window(l lattice) []spot {
	around := m.around(l)
	var best []spot
	for _, first := range l.motif {
		x := -first.at.x
		lo, hi := -first.at.y, m.h-m.shapes[first.shape].h-first.at.y
		column := around[:0:0]
		var ends []int64 // twice where a stretch begins, or twice where it ends and one
		for _, p := range around {
			sh := &m.shapes[p.shape]
			if px := p.at.x + x; px < 0 || px+sh.w > m.w {
				continue
			}
			if a, b := max(lo, -p.at.y), min(hi, m.h-sh.h-p.at.y); a <= b {
				column = append(column, p)
				ends = append(ends, 2*a, 2*b+1)
			}
		}
		y, n := deepest(ends)
		if n <= len(best) {
			continue
		}
		best = best[:0]
		for _, p := range column {
			if at := p.at.add(vec{x, y}); m.inside(p.shape, at) {
				best = append(best, spot{p.shape, at})
			}
		}
	}
	return best
}

// deepest is where most stretches overlap, and how many.
func deepest(ends []int64) (at int64, most int) {
	slices.Sort(ends)
	n := 0
	for _, e := range ends {
		if e&1 == 1 {
			n--
		} else if n++; n > most {
			at, most = e>>1, n
		}
	}
	return at, most
}

// around are a lattice's pieces that can lie in the container together with
// the motif at 0,0.
func (m *model) around(l lattice) []spot {
	var out []spot
	// With a reduced basis no step i, j is shorter than i·|u| or j·|v| by more
	// than a factor of √3/2.
	reach := 1.2 * (float64(m.w) + float64(m.h))
	ni, nj := nearest(reach/math.Sqrt(norm(l.u)))+1, nearest(reach/math.Sqrt(norm(l.v)))+1
	for j := -nj; j <= nj; j++ {
		for i := -ni; i <= ni; i++ {
			at := l.at(i, j)
			if abs(at.x) > 2*m.w || abs(at.y) > 2*m.h {
				continue
			}
			for _, p := range l.motif {
				out = append(out, spot{p.shape, at.add(p.at)})
			}
		}
	}
	return out
}
