package check

import (
	"cmp"
	"math"
	"slices"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// line is a straight line: its direction in lowest terms, dx > 0 or straight
// down, and the whole point on it that lies next to the y axis (next to the x
// axis if it runs down). Whole points of a line are exactly one such direction
// apart.
type line struct {
	dx, dy length.Len
	foot   outline.Point
}

// heading is the direction of one edge of a pose: which of its two corners
// comes first along it, and the way from there in lowest terms.
type heading struct {
	dx, dy   length.Len
	backward bool // the edge runs against it
}

func newHeading(a, b outline.Point) heading {
	h := heading{backward: comparePoints(a, b) > 0}
	if h.backward {
		a, b = b, a
	}
	d := divisor(b.X-a.X, b.Y-a.Y)
	h.dx, h.dy = (b.X-a.X)/d, (b.Y-a.Y)/d
	return h
}

// divisor is the greatest common divisor of a, which is not negative, and b,
// which are not both 0.
func divisor(a, b length.Len) length.Len {
	for b = max(b, -b); b != 0; {
		a, b = b, a%b
	}
	return a
}

// stretch is the part of a line that an edge takes: along x, or along y if it
// runs straight down. next is the next one on the same line, by index from 1.
type stretch struct {
	from, to length.Len
	next     int32
}

// along is where an edge from a to b lies: its line, and which part of it.
func (h heading) along(a, b outline.Point) (line, stretch) {
	if h.backward {
		a, b = b, a
	}
	if h.dx == 0 {
		return line{dy: h.dy, foot: outline.Point{X: a.X}}, stretch{from: a.Y, to: b.Y}
	}
	steps := a.X / h.dx
	return line{h.dx, h.dy, outline.Point{X: a.X - steps*h.dx, Y: a.Y - steps*h.dy}}, stretch{from: a.X, to: b.X}
}

// travel is the ground to add up what the blade travels on, kept from load to
// load.
type travel struct {
	number map[line]int32 // of each line, in the order they came in
	lines  []line
	last   []int32 // of each line, the last stretch, by index from 1
	all    []stretch
	one    []stretch // those of one line
}

func (t *travel) clear() {
	if t.number == nil {
		t.number = map[line]int32{}
	}
	clear(t.number)
	t.lines, t.last, t.all = t.lines[:0], t.last[:0], t.all[:0]
}

func (t *travel) add(l line, s stretch) {
	n, ok := t.number[l]
	if !ok {
		n = int32(len(t.lines))
		t.number[l], t.lines, t.last = n, append(t.lines, l), append(t.last, 0)
	}
	s.next = t.last[n]
	t.all = append(t.all, s)
	t.last[n] = int32(len(t.all))
}

// of is the stretches of line number n, from its start.
func (t *travel) of(n int) []stretch {
	t.one = t.one[:0]
	for i := t.last[n]; i > 0; i = t.all[i-1].next {
		t.one = append(t.one, t.all[i-1])
	}
	slices.SortFunc(t.one, func(a, b stretch) int { return cmp.Or(cmp.Compare(a.from, b.from), cmp.Compare(a.to, b.to)) })
	return t.one
}

// cutLength adds up what the blade travels over a load: all edges of its
// pieces, where they lie on each other once. That is exact along the grain; a
// slanted cut has no whole length, and each may be a nanometre off.
func (c *checker) cutLength(load int, pieces []placed) {
	t := &c.travel
	t.clear()
	for _, p := range pieces {
		o := p.region.Outline
		for i, h := range p.model.headings {
			t.add(h.along(o[i], o[(i+1)%len(o)]))
		}
	}
	straight, slanted, runs := length.Len(0), 0.0, length.Len(0)
	for n, l := range t.lines {
		all := t.of(n)
		for i := 0; i < len(all); {
			s := all[i]
			for i++; i < len(all) && all[i].from <= s.to; i++ {
				s.to = max(s.to, all[i].to)
			}
			if l.dx == 0 || l.dy == 0 {
				straight += s.to - s.from
				continue
			}
			runs++
			slanted += float64(s.to-s.from) / float64(l.dx) * math.Hypot(float64(l.dx), float64(l.dy))
		}
	}
	// The sum of float64s is within one nanometre for any load below a kilometre.
	sum := straight + length.Len(math.Round(slanted))
	if off := c.queue.Loads[load].CutLength - sum; off > runs || off < -runs {
		c.fault(CutLength, load, "the blade travels %s, not %s", sum, c.queue.Loads[load].CutLength)
	}
}
