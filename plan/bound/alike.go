package bound

import (
	"slices"

	"example.org/matside/plan/outline"
)

// move is one of the ways in which a mat lies on itself: what it does to an
// outline and to a point of a lattice.
type move struct {
	outline func(o outline.Outline) outline.Outline
	point   func(l *lattice, i, j int) (int, int)
}

var (
	quarterTurn = move{
		func(o outline.Outline) outline.Outline { return o.Turn(outline.QuarterTurn).Normalise() },
		func(l *lattice, i, j int) (int, int) { return j, l.n - 1 - i },
	}
	halfTurn = move{
		func(o outline.Outline) outline.Outline { return o.Turn(2 * outline.QuarterTurn).Normalise() },
		func(l *lattice, i, j int) (int, int) { return l.n - 1 - i, l.m - 1 - j },
	}
	mirror = move{
		func(o outline.Outline) outline.Outline { return o.Mirror().Normalise() },
		func(l *lattice, i, j int) (int, int) { return l.n - 1 - i, j },
	}
)

// movesOf are those after which all shapes may lie as they did before. Pins
// may as well be alike under them: what a piece covers at the least can only
// rise when pins are replaced by the mean of what they are after each move.
func movesOf(square bool, shapes []shape) []move {
	all := []move{halfTurn, mirror}
	if square {
		all = append(all, quarterTurn)
	}
	return slices.DeleteFunc(all, func(m move) bool {
		return slices.ContainsFunc(shapes, func(s shape) bool { return !s.closed(m) })
	})
}

func (s *shape) closed(m move) bool {
	return !slices.ContainsFunc(s.ways, func(o outline.Outline) bool { return !among(s.ways, m.outline(o)) })
}

func among(ways []outline.Outline, o outline.Outline) bool {
	return slices.ContainsFunc(ways, func(w outline.Outline) bool { return outline.Same(w, o) })
}

// first are the ways of which the moves make all others.
func (s *shape) first(moves []move) (out []outline.Outline) {
	var seen []outline.Outline
	for _, o := range s.ways {
		if among(seen, o) {
			continue
		}
		out, seen = append(out, o), append(seen, o)
		for i := len(seen) - 1; i < len(seen); i++ {
			for _, m := range moves {
				if next := m.outline(seen[i]); !among(seen, next) {
					seen = append(seen, next)
				}
			}
		}
	}
	return out
}

// orbits are the points that the moves make of one another.
func (l *lattice) orbits(moves []move) (out [][]int) {
	seen := make([]bool, l.n*l.m)
	for at := range seen {
		if seen[at] {
			continue
		}
		seen[at] = true
		orbit := []int{at}
		for k := 0; k < len(orbit); k++ {
			for _, m := range moves {
				i, j := m.point(l, orbit[k]%l.n, orbit[k]/l.n)
				if next := j*l.n + i; !seen[next] {
					seen[next] = true
					orbit = append(orbit, next)
				}
			}
		}
		out = append(out, orbit)
	}
	return out
}
