package bound

import "example.org/matside/plan/length"

// stickFor finds pins for so many of each shape on a w x h mat: the better of
// those of linear programs and those of a game.
func stickFor(w, h length.Len, shapes []shape, count []int, spent spending) *pins {
	moves := movesOf(w == h, shapes)
	some := make([]shape, len(shapes))
	for k, s := range shapes {
		some[k] = shape{ways: s.first(moves), area: s.area, count: count[k]}
	}
	p, q := linearly(w, h, some, moves, spent), playing(w, h, some, moves, int64(spent.pins)/rounds)
	if p == nil || q != nil && p.part(some) < q.part(some) {
		return q
	}
	return p
}

// playing finds pins by a game within about so many steps a round; nil if that
// is too few.
func playing(w, h length.Len, shapes []shape, moves []move, steps int64) *pins {
	points := pointsFor(w, h, shapes, steps)
	if points == 0 {
		return nil
	}
	l := newLattice(w, h, points)
	area := length.Mul(w, h)
	return l.weigh(newGame(l, area, shapes, l.orbits(moves)).play(rounds), area, shapes)
}

// rounds is how many are played: more of them gain less than more points.
const rounds = 150

// The fewest and the most points across the shorter side of a mat.
const (
	fewPoints  = 32
	manyPoints = 144
)

// pointsFor is how many points across a round of the game may have in so many
// steps, 0 if too few.
func pointsFor(w, h length.Len, shapes []shape, steps int64) int {
	for n := manyPoints; n >= fewPoints; n -= 4 {
		if stepsOf(w, h, shapes, n) <= steps {
			return n
		}
	}
	return 0
}

// stepsOf is about what a round costs: it goes through every row of every
// piece, laid from every point, and through all points.
func stepsOf(w, h length.Len, shapes []shape, points int) int64 {
	pitch := max(1, min(w, h)/length.Len(points))
	sum := int64(w/pitch) * int64(h/pitch)
	for _, s := range shapes {
		for _, o := range s.ways {
			if b := o.Bounds(); s.count > 0 {
				sum += int64((w-b.Width())/pitch+1) * int64((h-b.Height())/pitch+1) * int64(b.Height()/pitch+1) * coarse * coarse
			}
		}
	}
	return sum
}
