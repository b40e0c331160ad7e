package blade

import (
	"cmp"
	"math/bits"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// line is a straight line: its direction in lowest terms, dx > 0 or straight
// down, and its distance from 0,0 in that measure, 128 bits.
type line struct {
	dx, dy length.Len
	hi, lo uint64
}

// lineOf is the line through a and b, which differ; a comes first along it.
func lineOf(a, b outline.Point) line {
	dx, dy := b.X-a.X, b.Y-a.Y
	d := gcd(dx, max(dy, -dy))
	l := line{dx: dx / d, dy: dy / d}
	h1, l1 := mul(l.dx, a.Y)
	h2, l2 := mul(l.dy, a.X)
	var borrow uint64
	l.lo, borrow = bits.Sub64(l1, l2, 0)
	l.hi, _ = bits.Sub64(h1, h2, borrow)
	return l
}

// compare puts parallel lines next to each other, from one side to the other.
func (l line) compare(o line) int {
	return cmp.Or(cmp.Compare(l.dx, o.dx), cmp.Compare(l.dy, o.dy), cmp.Compare(int64(l.hi), int64(o.hi)), cmp.Compare(l.lo, o.lo))
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

// mul is a·b in 128 bits, two's complement.
func mul(a, b length.Len) (hi, lo uint64) {
	hi, lo = bits.Mul64(uint64(a), uint64(b))
	if a < 0 {
		hi -= uint64(b)
	}
	if b < 0 {
		hi -= uint64(a)
	}
	return hi, lo
}

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
	if dx == 0 || dy == 0 {
		return dx + dy
	}
	return length.Len(hypot(uint64(dx), uint64(dy)))
}

// hypot is the length of (a, b), rounded down: a square root taken bit by bit,
// so that it rounds alike on every machine.
func hypot(a, b uint64) uint64 {
	h1, l1 := bits.Mul64(a, a)
	h2, l2 := bits.Mul64(b, b)
	lo, carry := bits.Add64(l1, l2, 0)
	hi := h1 + h2 + carry
	var root uint64
	for bit := uint64(1) << 62; bit > 0; bit >>= 1 {
		if h, l := bits.Mul64(root|bit, root|bit); h < hi || h == hi && l <= lo {
			root |= bit
		}
	}
	return root
}
