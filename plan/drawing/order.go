package drawing

import (
	"slices"

	"example.org/matside/plan/blade"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// join makes paths of runs: where exactly two of them end at one corner, they
// are cut in one go. Where more than two end there no pair is better than
// another, and the blade is lifted.
func join(runs []blade.Run) []Path {
	ends := make(map[outline.Point][]int, 2*len(runs))
	for i, r := range runs {
		ends[r.A] = append(ends[r.A], i)
		ends[r.B] = append(ends[r.B], i)
	}
	j := joiner{runs, ends, make([]bool, len(runs))}
	var paths []Path
	for i, r := range runs {
		if !j.done[i] && (len(ends[r.A]) != 2 || len(ends[r.B]) != 2) {
			from := r.A
			if len(ends[r.A]) == 2 {
				from = r.B
			}
			paths = append(paths, j.follow(i, from))
		}
	}
	for i, r := range runs { // what is left are rings
		if !j.done[i] {
			paths = append(paths, j.follow(i, r.A))
		}
	}
	return paths
}

type joiner struct {
	runs []blade.Run
	ends map[outline.Point][]int // the runs that end at a point
	done []bool
}

// follow is the path that begins with run i at its end from.
func (j *joiner) follow(i int, from outline.Point) Path {
	p := Path{Points: []outline.Point{from}}
	for at := from; ; {
		j.done[i] = true
		at = j.runs[i].A.Add(j.runs[i].B).Sub(at) // its other end
		if at == from {
			p.Closed = true
			return p
		}
		p.Points = append(p.Points, at)
		here := j.ends[at]
		if len(here) != 2 || j.done[here[0]] && j.done[here[1]] {
			return p
		}
		if i = here[0]; j.done[i] {
			i = here[1]
		}
	}
}

// reach is how many of the paths still to cut are looked at for the nearest
// one, so that many thousands of them don't take for ever.
const reach = 1024

// inTurn puts paths in an order in which the blade has little way to go
// between them: always to the nearest next, from at on. Paths that aren't
// closed may be cut from either end.
func inTurn(at outline.Point, paths []Path) []Path {
	left := slices.Clone(paths)
	ordered := make([]Path, 0, len(left))
	for len(left) > 0 {
		best, back, least := 0, false, length.Len(-1)
		for i, p := range left[:min(reach, len(left))] {
			if d := apart(at, p.Points[0]); least < 0 || d < least {
				best, back, least = i, false, d
			}
			if d := apart(at, p.Points[len(p.Points)-1]); !p.Closed && d < least {
				best, back, least = i, true, d
			}
		}
		p := left[best]
		if back {
			p.Points = slices.Clone(p.Points)
			slices.Reverse(p.Points)
		}
		ordered, left = append(ordered, p), slices.Delete(left, best, best+1)
		at = p.end()
	}
	return ordered
}

// apart is the way between two points as a machine goes it that moves both its
// axes at once.
func apart(a, b outline.Point) length.Len {
	dx, dy := a.X-b.X, a.Y-b.Y
	return max(dx, -dx, dy, -dy)
}

// end is where the blade is lifted.
func (p Path) end() outline.Point {
	if p.Closed {
		return p.Points[0]
	}
	return p.Points[len(p.Points)-1]
}

// start is where the next path after these begins to be looked for.
func start(paths []Path) outline.Point {
	if len(paths) == 0 {
		return outline.Point{}
	}
	return paths[len(paths)-1].end()
}
