package blade

import (
	"cmp"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// line is a straight line: its direction in lowest terms, dx > 0 or straight
// down, and its distance from 0,0 in that measure.
type line struct {
	dx, dy length.Len
	off    length.Wide
}

// lineOf is the line through a and b, which differ; a comes first along it.
func lineOf(a, b outline.Point) line {
	dx, dy := b.X-a.X, b.Y-a.Y
	d := gcd(dx, max(dy, -dy))
	l := line{dx: dx / d, dy: dy / d}
	l.off = length.Product(l.dx, a.Y).Sub(length.Product(l.dy, a.X))
	return l
}

// compare puts parallel lines next to each other, from one side to the other.
func (l line) compare(o line) int {
	return cmp.Or(cmp.Compare(l.dx, o.dx), cmp.Compare(l.dy, o.dy), l.off.Cmp(o.off))
}

// place is where on the line p lies: further along is more.
func (l line) place(p outline.Point) length.Len {
	if l.dx == 0 {
		return p.Y
	}
	return p.X
}

// before says whether a comes first on whatever line runs through a and b.
func before(a, b outline.Point) bool { return a.X < b.X || a.X == b.X && a.Y < b.Y }

func gcd(a, b length.Len) length.Len {
	for b != 0 {
		a, b = b, a%b
	}
	return max(a, 1)
}

// Way is the length of the straight line from a to b, rounded down.
func Way(a, b outline.Point) length.Len {
	dx, dy := b.X-a.X, b.Y-a.Y
	dx, dy = max(dx, -dx), max(dy, -dy)
	return length.Mul(dx, dx).Add(length.Mul(dy, dy)).Root()
}
