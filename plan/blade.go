package plan

import (
	"cmp"
	"math/bits"
	"slices"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
)

// cutLength is how far the blade travels over the pieces' outlines; where two
// share a cut, it counts once.
func cutLength(pieces []queue.Placement) length.Len {
	var edges []edge
	for _, p := range pieces {
		for i, a := range p.Outline {
			edges = append(edges, edgeOf(a, p.Outline[(i+1)%len(p.Outline)]))
		}
	}
	slices.SortFunc(edges, edge.compare)
	var sum length.Len
	for i := 0; i < len(edges); {
		k, end := i+1, edges[i].to
		for k < len(edges) && edges[k].line == edges[i].line && edges[k].from <= end {
			end = max(end, edges[k].to)
			k++
		}
		sum += edges[i].along(end - edges[i].from)
		i = k
	}
	return sum
}

// line is a straight line: its direction in lowest terms, dx > 0 or straight
// down, and its distance from 0,0 in that measure, 128 bits.
type line struct {
	dx, dy length.Len
	hi, lo uint64
}

// edge is the part of a line between two values of x, or of y if the line
// runs straight down.
type edge struct {
	line
	from, to length.Len
}

func edgeOf(a, b outline.Point) edge {
	if a.X > b.X || a.X == b.X && a.Y > b.Y {
		a, b = b, a
	}
	dx, dy := b.X-a.X, b.Y-a.Y
	d := gcd(dx, max(dy, -dy))
	l := line{dx: dx / d, dy: dy / d}
	h1, l1 := mul(l.dx, a.Y)
	h2, l2 := mul(l.dy, a.X)
	var borrow uint64
	l.lo, borrow = bits.Sub64(l1, l2, 0)
	l.hi, _ = bits.Sub64(h1, h2, borrow)
	if dx == 0 {
		return edge{l, a.Y, b.Y}
	}
	return edge{l, a.X, b.X}
}

func (e edge) compare(o edge) int {
	return cmp.Or(cmp.Compare(e.dx, o.dx), cmp.Compare(e.dy, o.dy), cmp.Compare(e.hi, o.hi), cmp.Compare(e.lo, o.lo),
		cmp.Compare(e.from, o.from), cmp.Compare(e.to, o.to))
}

// along is the length of a stretch of the line, given what it spans of x, or
// of y if the line runs straight down.
func (e edge) along(span length.Len) length.Len {
	if e.dx == 0 || e.dy == 0 {
		return span
	}
	// Both sides are whole multiples of the direction only for whole edges;
	// a shared part of one may round by a nanometre, which no blade sees.
	hi, lo := bits.Mul64(uint64(span), uint64(max(e.dy, -e.dy)))
	dy, _ := bits.Div64(hi, lo, uint64(e.dx))
	return length.Len(hypot(uint64(span), dy))
}

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

// hypot is the length of (a, b), rounded down.
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
