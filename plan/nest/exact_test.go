package nest

import (
	"fmt"
	"math/big"
	"slices"
	"testing"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// The tests' own verdict on a layout: fractions of math/big, no code of nest's
// and none of outline's.

type point struct{ x, y *big.Rat }

func at(p outline.Point) point { return point{ratOf(p.X), ratOf(p.Y)} }

func ratOf(l length.Len) *big.Rat { return new(big.Rat).SetInt64(int64(l)) }

func minus(a, b point) point {
	return point{new(big.Rat).Sub(a.x, b.x), new(big.Rat).Sub(a.y, b.y)}
}

func times(a, b point) (cross, dot *big.Rat) {
	mul := func(p, q *big.Rat) *big.Rat { return new(big.Rat).Mul(p, q) }
	cross = mul(a.x, b.y)
	cross.Sub(cross, mul(a.y, b.x))
	dot = mul(a.x, b.x)
	return cross, dot.Add(dot, mul(a.y, b.y))
}

// along is the point t of the way from a to b.
func along(a, b point, t *big.Rat) point {
	d := minus(b, a)
	d.x.Mul(d.x, t).Add(d.x, a.x)
	d.y.Mul(d.y, t).Add(d.y, a.y)
	return d
}

// sideOf is 1 if p is inside o, −1 outside, 0 on the edge.
func sideOf(o outline.Outline, p point) int {
	in := -1
	for i := range o {
		a, b := at(o[i]), at(o[(i+1)%len(o)])
		cross, _ := times(minus(b, a), minus(p, a))
		if _, dot := times(minus(a, p), minus(b, p)); cross.Sign() == 0 && dot.Sign() <= 0 {
			return 0
		}
		if (a.y.Cmp(p.y) > 0) != (b.y.Cmp(p.y) > 0) && (cross.Sign() > 0) == (b.y.Cmp(a.y) > 0) {
			in = -in
		}
	}
	return in
}

// cuts are the parts t of the way from a to b at which o's edge is met, with 0
// and 1, in order.
func cuts(a, b point, o outline.Outline) []*big.Rat {
	ts := []*big.Rat{new(big.Rat), big.NewRat(1, 1)}
	add := func(num, den *big.Rat) {
		if t := new(big.Rat).Quo(num, den); t.Sign() > 0 && t.Cmp(ts[1]) < 0 {
			ts = append(ts, t)
		}
	}
	d := minus(b, a)
	_, d2 := times(d, d)
	for i := range o {
		p, q := at(o[i]), at(o[(i+1)%len(o)])
		if den, _ := times(d, minus(q, p)); den.Sign() != 0 {
			num, _ := times(minus(p, a), minus(q, p))
			add(num, den)
			continue
		}
		_, t := times(minus(p, a), d) // parallel: where its ends come to lie
		add(t, d2)
	}
	slices.SortFunc(ts, (*big.Rat).Cmp)
	return ts
}

// enters reports whether a's edge runs through b's inside, follows whether all
// of it lies on b's edge.
func enters(a, b outline.Outline) (enters, follows bool) {
	follows = true
	half := big.NewRat(1, 2)
	for i := range a {
		p, q := at(a[i]), at(a[(i+1)%len(a)])
		ts := cuts(p, q, b)
		for k := range ts[1:] {
			t := new(big.Rat).Add(ts[k], ts[k+1])
			side := sideOf(b, along(p, q, t.Mul(t, half)))
			enters, follows = enters || side > 0, follows && side == 0
		}
	}
	return enters, follows
}

// shareArea reports whether two simple outlines share area: the edge of one
// runs through the other, or they are the same.
func shareArea(a, b outline.Outline) bool {
	in, same := enters(a, b)
	if in || same {
		return true
	}
	in, _ = enters(b, a)
	return in
}

// nearer reports whether two outlines that share no area come nearer than gap.
func nearer(a, b outline.Outline, gap length.Len) bool {
	return cornersNearer(a, b, gap) || cornersNearer(b, a, gap)
}

// cornersNearer reports whether a corner of a is nearer than gap to a side of b.
func cornersNearer(a, b outline.Outline, gap length.Len) bool {
	g2 := new(big.Rat).Mul(ratOf(gap), ratOf(gap))
	for _, c := range a {
		for i := range b {
			p, u := at(b[i]), minus(at(b[(i+1)%len(b)]), at(b[i]))
			_, u2 := times(u, u)
			_, t := times(minus(at(c), p), u)
			if t.Quo(t, u2); t.Sign() < 0 {
				t.SetInt64(0)
			} else if one := big.NewRat(1, 1); t.Cmp(one) > 0 {
				t = one
			}
			off := minus(at(c), point{u.x.Mul(u.x, t).Add(u.x, p.x), u.y.Mul(u.y, t).Add(u.y, p.y)})
			if _, d2 := times(off, off); d2.Cmp(g2) < 0 {
				return true
			}
		}
	}
	return false
}

// farApart reports whether all of one outline lies beyond the gap to the left
// or right of all of the other, or above or below: most do, and need no fractions.
func farApart(a, b outline.Outline, gap length.Len) bool {
	before := func(of func(outline.Point) length.Len, a, b outline.Outline) bool {
		most, least := of(a[0]), of(b[0])
		for _, p := range a {
			most = max(most, of(p))
		}
		for _, p := range b {
			least = min(least, of(p))
		}
		return most+gap <= least
	}
	x := func(p outline.Point) length.Len { return p.X }
	y := func(p outline.Point) length.Len { return p.Y }
	return before(x, a, b) || before(x, b, a) || before(y, a, b) || before(y, b, a)
}

// exactLayout says what is wrong with a layout.
func exactLayout(w, h, gap length.Len, ps []Placed) error {
	for i, p := range ps {
		for _, c := range p.Outline {
			if c.X < 0 || c.Y < 0 || c.X > w || c.Y > h {
				return fmt.Errorf("piece %d sticks out at %v", i, c)
			}
		}
		for j, q := range ps[:i] {
			if farApart(p.Outline, q.Outline, gap) {
				continue
			}
			if shareArea(p.Outline, q.Outline) {
				return fmt.Errorf("pieces %d and %d share area", i, j)
			}
			if gap > 0 && nearer(p.Outline, q.Outline, gap) {
				return fmt.Errorf("pieces %d and %d are nearer than the gap", i, j)
			}
		}
	}
	return nil
}

// The verdict is itself tried on pairs known by eye.
func TestVerdict(t *testing.T) {
	square := outline.Rect(0, 0, 10, 10)
	ell := outline.Outline{{X: 0, Y: 0}, {X: 20, Y: 0}, {X: 20, Y: 10}, {X: 10, Y: 10}, {X: 10, Y: 20}, {X: 0, Y: 20}}
	for _, c := range []struct {
		name    string
		a, b    outline.Outline
		overlap bool
		apart   length.Len // the distance between them
	}{
		{"same", square, square, true, 0},
		{"inside", square, outline.Rect(2, 2, 3, 3), true, 0},
		{"beside", square, outline.Rect(10, 3, 4, 4), false, 0},
		{"corner to corner", square, outline.Rect(10, 10, 4, 4), false, 0},
		{"one in", square, outline.Rect(9, 0, 10, 10), true, 0},
		{"plus", outline.Rect(0, 3, 10, 3), outline.Rect(3, 0, 3, 10), true, 0},
		{"in the notch", ell, outline.Rect(10, 10, 10, 10), false, 0},
		{"in the notch, apart", ell, outline.Rect(13, 13, 10, 10), false, 3},
		{"half of it", square, outline.Outline{{X: 0, Y: 0}, {X: 10, Y: 0}, {X: 0, Y: 10}}, true, 0},
		{"3, 4, 5", square, outline.Rect(13, 14, 1, 1), false, 5},
	} {
		if shareArea(c.a, c.b) != c.overlap || shareArea(c.b, c.a) != c.overlap {
			t.Errorf("%s: overlap is not %v", c.name, c.overlap)
		}
		if !c.overlap && (nearer(c.a, c.b, c.apart) || !nearer(c.a, c.b, c.apart+1)) {
			t.Errorf("%s: distance is not %v", c.name, c.apart)
		}
	}
}
