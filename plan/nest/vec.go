package nest

import (
	"math"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// vec is a place, or the way from one place to another, in nanometres.
type vec struct{ x, y int64 }

func (a vec) add(b vec) vec { return vec{a.x + b.x, a.y + b.y} }
func (a vec) sub(b vec) vec { return vec{a.x - b.x, a.y - b.y} }
func (a vec) neg() vec      { return vec{-a.x, -a.y} }

// crossSign is the sign of a × b, exact for every pair of int64s short of
// the most negative: the products are compared in 128 bits.
func crossSign(a, b vec) int {
	return compareProducts(a.x, b.y, a.y, b.x)
}

// turnAt is the sign of the turn a→b→c: positive at a corner that bulges out
// of an outline of positive shoelace sum.
func turnAt(a, b, c vec) int { return crossSign(b.sub(a), c.sub(b)) }

// compareProducts compares a·b with c·d.
func compareProducts(a, b, c, d int64) int {
	return length.Product(length.Len(a), length.Len(b)).Cmp(length.Product(length.Len(c), length.Len(d)))
}

// ring is a closed run of corners of positive shoelace sum.
type ring []vec

func ringOf(o outline.Outline) ring {
	r := make(ring, len(o))
	for i, p := range o {
		r[i] = vec{int64(p.X), int64(p.Y)}
	}
	return r
}

// outlineAt is the ring as an outline, moved by d.
func (r ring) outlineAt(d vec) outline.Outline {
	o := make(outline.Outline, len(r))
	for i, p := range r {
		o[i] = outline.Point{X: length.Len(p.x + d.x), Y: length.Len(p.y + d.y)}
	}
	return o
}

// box is the ring's bounding box.
func (r ring) box() (lo, hi vec) {
	lo, hi = r[0], r[0]
	for _, p := range r[1:] {
		lo = vec{min(lo.x, p.x), min(lo.y, p.y)}
		hi = vec{max(hi.x, p.x), max(hi.y, p.y)}
	}
	return lo, hi
}

// area2 is twice the ring's area as a float: good for ranking only.
func (r ring) area2() float64 {
	var sum float64
	for i, p := range r {
		q := r[(i+1)%len(r)]
		sum += float64(float64(p.x)*float64(q.y)) - float64(float64(p.y)*float64(q.x))
	}
	return sum
}

// straight drops corners that do not turn.
func (r ring) straight() ring {
	out := append(ring(nil), r...)
	for again := true; again && len(out) > 3; {
		again = false
		for i := 0; i < len(out) && len(out) > 3; i++ {
			n := len(out)
			a, b, c := out[(i+n-1)%n], out[i], out[(i+1)%n]
			if a == b || turnAt(a, b, c) == 0 {
				out = append(out[:i], out[i+1:]...)
				again, i = true, i-1
			}
		}
	}
	return out
}

// Floats, for ranking only.
func cross(a, b vec) float64 {
	return float64(float64(a.x)*float64(b.y)) - float64(float64(a.y)*float64(b.x))
}

func dotProduct(a, b vec) float64 {
	return float64(float64(a.x)*float64(b.x)) + float64(float64(a.y)*float64(b.y))
}

func norm(a vec) float64 { return dotProduct(a, a) }

func nearest(x float64) int64 { return int64(math.Round(x)) }
