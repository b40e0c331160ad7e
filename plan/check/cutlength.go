package check

import (
	"cmp"
	"math"
	"slices"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// stretch is one edge as a stretch of the line it lies on. The line is known by
// its direction in lowest terms, dx > 0 or straight down, and by the whole point
// on it that lies next to the y axis (next to the x axis if it runs down): whole
// points of a line are exactly one such direction apart.
type stretch struct {
	dx, dy   length.Len
	foot     outline.Point
	from, to length.Len // along x, or along y if it runs straight down
}

func newStretch(a, b outline.Point) stretch {
	if comparePoints(a, b) > 0 {
		a, b = b, a
	}
	d := divisor(b.X-a.X, b.Y-a.Y)
	s := stretch{dx: (b.X - a.X) / d, dy: (b.Y - a.Y) / d, from: a.X, to: b.X}
	if s.dx == 0 {
		s.foot, s.from, s.to = outline.Point{X: a.X}, a.Y, b.Y
		return s
	}
	steps := a.X / s.dx
	s.foot = outline.Point{X: a.X - steps*s.dx, Y: a.Y - steps*s.dy}
	return s
}

// divisor is the greatest common divisor of a, which is not negative, and b,
// which are not both 0.
func divisor(a, b length.Len) length.Len {
	for b = max(b, -b); b != 0; {
		a, b = b, a%b
	}
	return a
}

func (s stretch) compare(t stretch) int {
	return cmp.Or(s.compareLines(t), cmp.Compare(s.from, t.from), cmp.Compare(s.to, t.to))
}

func (s stretch) compareLines(t stretch) int {
	return cmp.Or(cmp.Compare(s.dx, t.dx), cmp.Compare(s.dy, t.dy), comparePoints(s.foot, t.foot))
}

// cutLength adds up what the blade travels over a load: all edges of its
// pieces, where they lie on each other once. That is exact along the grain; a
// slanted cut has no whole length, and each may be a nanometre off.
func (c *checker) cutLength(load int) {
	l := &c.queue.Loads[load]
	edges := 0
	for _, p := range l.Pieces {
		edges += len(p.Outline)
	}
	all := make([]stretch, 0, edges)
	for _, p := range l.Pieces {
		for i, a := range p.Outline {
			all = append(all, newStretch(a, p.Outline[(i+1)%len(p.Outline)]))
		}
	}
	slices.SortFunc(all, stretch.compare)
	straight, slanted, runs := length.Len(0), 0.0, length.Len(0)
	for i := 0; i < len(all); {
		s := all[i]
		for i++; i < len(all) && all[i].compareLines(s) == 0 && all[i].from <= s.to; i++ {
			s.to = max(s.to, all[i].to)
		}
		if s.dx == 0 || s.dy == 0 {
			straight += s.to - s.from
			continue
		}
		runs++
		slanted += float64(s.to-s.from) / float64(s.dx) * math.Hypot(float64(s.dx), float64(s.dy))
	}
	// The sum of float64s is within one nanometre for any load below a kilometre.
	if off := l.CutLength - straight - length.Len(math.Round(slanted)); off > runs || off < -runs {
		c.fault(CutLength, inLoad(load), "the blade travels %s, not %s", straight+length.Len(math.Round(slanted)), l.CutLength)
	}
}
