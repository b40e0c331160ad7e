package outline

import (
	"math"
	"math/big"
	"slices"
	"testing"

	"example.org/matside/plan/length"
	"pgregory.net/rapid"
)

// grids is what the coordinates of a random outline are multiples of: 1 makes
// corners and edges coincide often, the others reach into 64 and 128 bits.
var grids = []length.Len{1, length.Inch, 20 * length.Metre}

// anOutline draws a simple polygon of 3 to 8 corners on a grid of 7 by 7.
func anOutline(grid length.Len) *rapid.Generator[Outline] {
	coordinate := rapid.Int64Range(0, 6)
	point := rapid.Custom(func(t *rapid.T) Point {
		return Point{grid * length.Len(coordinate.Draw(t, "x")), grid * length.Len(coordinate.Draw(t, "y"))}
	})
	tidy := func(ps []Point) Outline {
		o, _ := Tidy(untangled(ps))
		return o
	}
	return rapid.Custom(func(t *rapid.T) Outline {
		corners := rapid.SliceOfN(point, 3, 8).Filter(func(ps []Point) bool { return tidy(ps) != nil })
		return tidy(corners.Draw(t, "corners"))
	})
}

// untangled turns stretches of a way round that crosses itself about, until it
// doesn't or has had enough of it.
func untangled(ps []Point) []Point {
	ps = slices.Clone(ps)
	for range 20 {
		for i := range ps {
			for j := i + 2; j < len(ps); j++ {
				if k := (j + 1) % len(ps); k != i && ps[i] != ps[i+1] && ps[j] != ps[k] && meet(ps[i], ps[i+1], ps[j], ps[k]) {
					slices.Reverse(ps[i+1 : j+1])
				}
			}
		}
	}
	return ps
}

func rat(l length.Len) *big.Rat { return new(big.Rat).SetInt64(int64(l)) }

// overlapSlow says whether a and b share area, in fractions: between two
// neighbouring x at which anything starts, ends or crosses, the edges keep their
// order, so one upright line in the middle tells all.
func overlapSlow(a, b Outline) bool {
	var xs []*big.Rat
	both := append(edgesOf(a), edgesOf(b)...)
	for i, e := range both {
		xs = append(xs, rat(e[0].X))
		for _, f := range both[i+1:] {
			if x := crossingX(e, f); x != nil {
				xs = append(xs, x)
			}
		}
	}
	slices.SortFunc(xs, (*big.Rat).Cmp)
	for i := range xs[1:] {
		if xs[i].Cmp(xs[i+1]) == 0 {
			continue
		}
		mid := new(big.Rat).Add(xs[i], xs[i+1])
		mid.Quo(mid, big.NewRat(2, 1))
		for _, p := range inside(a, mid) {
			for _, q := range inside(b, mid) {
				if p[0].Cmp(q[1]) < 0 && q[0].Cmp(p[1]) < 0 {
					return true
				}
			}
		}
	}
	return false
}

func edgesOf(o Outline) (es [][2]Point) {
	for i, p := range o {
		es = append(es, [2]Point{p, o.next(i)})
	}
	return es
}

// crossingX is the x where the lines of two edges cross, nil if they are parallel.
func crossingX(e, f [2]Point) *big.Rat {
	u, v := e[1].Sub(e[0]), f[1].Sub(f[0])
	d := ratCross(u, v)
	if d.Sign() == 0 {
		return nil
	}
	t := ratCross(f[0].Sub(e[0]), v)
	t.Quo(t, d).Mul(t, rat(u.X))
	return t.Add(t, rat(e[0].X))
}

func ratCross(u, v Point) *big.Rat {
	a := new(big.Rat).Mul(rat(u.X), rat(v.Y))
	return a.Sub(a, new(big.Rat).Mul(rat(u.Y), rat(v.X)))
}

// inside is the stretches of the upright line at x that lie inside o.
func inside(o Outline, x *big.Rat) (in [][2]*big.Rat) {
	var ys []*big.Rat
	for _, e := range edgesOf(o) {
		lo, hi := rat(min(e[0].X, e[1].X)), rat(max(e[0].X, e[1].X))
		if lo.Cmp(x) >= 0 || x.Cmp(hi) >= 0 {
			continue
		}
		y := new(big.Rat).Sub(x, rat(e[0].X))
		y.Mul(y, rat(e[1].Y-e[0].Y)).Quo(y, rat(e[1].X-e[0].X))
		ys = append(ys, y.Add(y, rat(e[0].Y)))
	}
	slices.SortFunc(ys, (*big.Rat).Cmp)
	for i := 0; i+1 < len(ys); i += 2 {
		in = append(in, [2]*big.Rat{ys[i], ys[i+1]})
	}
	return in
}

// distanceSlow is the square of the distance between the borders of a and b that
// don't cross, in fractions.
func distanceSlow(a, b Outline) *big.Rat {
	var least *big.Rat
	look := func(p Point, e [2]Point) {
		u, w := e[1].Sub(e[0]), p.Sub(e[0])
		t := ratDot(w, u)
		t.Quo(t, ratDot(u, u))
		if t.Sign() < 0 {
			t.SetInt64(0)
		} else if t.Cmp(big.NewRat(1, 1)) > 0 {
			t.SetInt64(1)
		}
		x := new(big.Rat).Mul(t, rat(u.X))
		y := new(big.Rat).Mul(t, rat(u.Y))
		x.Sub(rat(w.X), x)
		y.Sub(rat(w.Y), y)
		d := x.Mul(x, x).Add(x, y.Mul(y, y))
		if least == nil || d.Cmp(least) < 0 {
			least = d
		}
	}
	for _, o := range [2][2]Outline{{a, b}, {b, a}} {
		for _, p := range o[0] {
			for _, e := range edgesOf(o[1]) {
				look(p, e)
			}
		}
	}
	return least
}

func ratDot(u, v Point) *big.Rat {
	a := new(big.Rat).Mul(rat(u.X), rat(v.X))
	return a.Add(a, new(big.Rat).Mul(rat(u.Y), rat(v.Y)))
}

func overlaps(a, b Outline) bool { return NewRegion(a).Overlaps(NewRegion(b)) }

func apart(a, b Outline, gap length.Len) bool { return NewRegion(a).Apart(NewRegion(b), gap) }

func TestOverlapsLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		grid := rapid.SampledFrom(grids).Draw(t, "grid")
		a, b := anOutline(grid).Draw(t, "a"), anOutline(grid).Draw(t, "b")
		d := rapid.Int64Range(-6, 6)
		b = b.Move(grid*length.Len(d.Draw(t, "dx")), grid*length.Len(d.Draw(t, "dy")))
		want := overlapSlow(a, b)
		turn := rapid.IntRange(0, 3).Draw(t, "turn") * QuarterTurn
		for name, got := range map[string]bool{
			"as they are":   overlaps(a, b),
			"(1) swapped":   overlaps(b, a),
			"(3) turned":    overlaps(a.Turn(turn), b.Turn(turn)),
			"(3) mirrored":  overlaps(a.Mirror(), b.Mirror()),
			"gap 0":         !apart(a, b, 0),
			"moved regions": NewRegion(a).Move(5, 7).Overlaps(NewRegion(b).Move(5, 7)),
		} {
			if got != want {
				t.Errorf("%s: Overlaps = %v, want %v", name, got, want)
			}
		}
		if !overlaps(a, a) {
			t.Error("(2) not with itself")
		}
	})
}

func TestApartLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		grid := rapid.SampledFrom(grids).Draw(t, "grid")
		a, b := anOutline(grid).Draw(t, "a"), anOutline(grid).Draw(t, "b")
		d := rapid.Int64Range(-9, 9)
		b = b.Move(grid*length.Len(d.Draw(t, "dx")), grid*length.Len(d.Draw(t, "dy")))
		if overlapSlow(a, b) {
			if apart(a, b, 1) {
				t.Error("apart though they overlap")
			}
			return
		}
		square := distanceSlow(a, b)
		// The largest gap that is kept, and the one a nanometre larger.
		root := new(big.Int).Sqrt(new(big.Int).Quo(square.Num(), square.Denom()))
		gap := length.Len(root.Int64())
		if !apart(a, b, gap) || apart(a, b, gap+1) {
			t.Errorf("distance² %v: Apart by %d is %v, by one more %v", square, gap, apart(a, b, gap), apart(a, b, gap+1))
		}
		if apart(b, a, gap+1) {
			t.Error("apart the other way round")
		}
	})
}

func TestPartsLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		grid := rapid.SampledFrom(grids).Draw(t, "grid")
		o := anOutline(grid).Draw(t, "o")
		parts := Parts(o)
		var sum length.Area
		for i, p := range parts {
			if !p.Convex() || !p.Simple() || p.shoelace().Sign() <= 0 {
				t.Errorf("part %v", p)
			}
			sum = sum.Add(p.TwiceArea())
			for _, q := range parts[i+1:] {
				if convexOverlap(p, q) || overlapSlow(p, q) {
					t.Errorf("parts %v and %v overlap", p, q)
				}
			}
		}
		if sum != o.TwiceArea() {
			t.Errorf("parts of %v cover %v, not %v", o, sum, o.TwiceArea())
		}
		if (len(parts) == 1) != o.Convex() {
			t.Errorf("%d parts, convex %v", len(parts), o.Convex())
		}
	})
}

func TestTurnLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := anOutline(rapid.SampledFrom(grids).Draw(t, "grid")).Draw(t, "o")
		angle := rapid.IntRange(-2*FullTurn, 2*FullTurn).Draw(t, "angle")
		if q := o.Turn(QuarterTurn).Turn(QuarterTurn).Turn(QuarterTurn).Turn(QuarterTurn); !slices.Equal(q, o) {
			t.Errorf("(1) four quarter turns: %v", q)
		}
		turned := o.Turn(angle)
		if !slices.Equal(turned, o.Turn(angle+FullTurn)) {
			t.Error("(3) a full turn more is another turn")
		}
		sin, cos := math.Sincos(float64(angle) / Degree * math.Pi / 180)
		for i, p := range o {
			// Counter-clockwise to the eye, as y runs down; float64 is good to 2^-15 nm
			// at 200 m, and rounding takes at most half a nanometre.
			x, y := float64(p.X)*cos+float64(p.Y)*sin, float64(p.Y)*cos-float64(p.X)*sin
			if math.Abs(x-float64(turned[i].X)) > 0.501 || math.Abs(y-float64(turned[i].Y)) > 0.501 {
				t.Errorf("%v turned is %v, want %f, %f", p, turned[i], x, y)
			}
			q, r := o.next(i), turned.next(i)
			was := math.Hypot(float64(q.X-p.X), float64(q.Y-p.Y))
			is := math.Hypot(float64(r.X-turned[i].X), float64(r.Y-turned[i].Y))
			if math.Abs(was-is) >= 2 {
				t.Errorf("(2) %f nm has become %f", was, is)
			}
		}
	})
}

func TestMirrorLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := anOutline(length.Inch).Draw(t, "o")
		m := o.Mirror()
		if !m.Simple() || m.shoelace() != o.shoelace() || !slices.Equal(m.Mirror(), o) || m[0] != (Point{-o[0].X, o[0].Y}) {
			t.Errorf("%v mirrored is %v", o, m)
		}
		// Mirrored and turned about is turned about and mirrored; a quarter turn
		// changes its sense.
		if !slices.Equal(m.Turn(QuarterTurn), o.Turn(-QuarterTurn).Mirror()) {
			t.Error("mirrored and turned")
		}
	})
}

func TestHullLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := anOutline(rapid.SampledFrom(grids).Draw(t, "grid")).Draw(t, "o")
		h := Hull(o)
		if !h.Convex() || !h.Simple() || h.TwiceArea().Less(o.TwiceArea()) {
			t.Errorf("hull of %v is %v", o, h)
		}
		for _, p := range o {
			for i := range h {
				if Orient(h[i], h.next(i), p) < 0 {
					t.Errorf("%v is outside the hull %v", p, h)
				}
			}
		}
		if o.Convex() != Same(h, o) {
			t.Errorf("convex %v, hull %v", o.Convex(), h)
		}
	})
}

func TestOrientLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.Int64Range(-int64(length.MaxLen), int64(length.MaxLen))
		draw := func(name string) Point {
			return Point{length.Len(c.Draw(t, name+".x")), length.Len(c.Draw(t, name+".y"))}
		}
		a, b, p := draw("a"), draw("b"), draw("p")
		want := ratCross(b.Sub(a), p.Sub(a)).Sign()
		if got := Orient(a, b, p); got != want || Orient(b, a, p) != -want || Orient(b, p, a) != want {
			t.Errorf("Orient(%v, %v, %v) = %d, want %d", a, b, p, got, want)
		}
		if got := dot(b.Sub(a), p.Sub(a)); got != ratDot(b.Sub(a), p.Sub(a)).Sign() {
			t.Errorf("dot = %d", got)
		}
	})
}

func TestSquareAtLeast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		area := rapid.Custom(func(t *rapid.T) length.Area {
			return length.Area{Hi: rapid.Uint64().Draw(t, "hi"), Lo: rapid.Uint64().Draw(t, "lo")}
		})
		a, b, c := area.Draw(t, "a"), area.Draw(t, "b"), area.Draw(t, "c")
		if rapid.Bool().Draw(t, "near") {
			b, c = a, a
			c.Lo ^= rapid.Uint64Range(0, 1).Draw(t, "bit")
		}
		wide := func(a length.Area) *big.Int {
			n := new(big.Int).SetUint64(a.Hi)
			return n.Lsh(n, 64).Add(n, new(big.Int).SetUint64(a.Lo))
		}
		square, product := wide(a), wide(b)
		square.Mul(square, square)
		product.Mul(product, wide(c))
		if got := squareAtLeast(a, b, c); got != (square.Cmp(product) >= 0) {
			t.Errorf("%v² ≥ %v·%v is %v", a, b, c, got)
		}
	})
}
