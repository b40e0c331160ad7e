package shape

import (
	"math"
	"math/big"
	"testing"

	"example.org/matside/plan/internal/real"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"pgregory.net/rapid"
)

// aSpec draws any shape but an own outline, at least an inch in all its numbers.
func aSpec(t *rapid.T) Spec {
	s := Spec{
		Kind:    Kind(rapid.IntRange(0, int(QuarterCircle)).Draw(t, "kind")),
		Measure: Measure(rapid.IntRange(0, 2).Draw(t, "measure")),
		Degrees: rapid.SampledFrom([]int{45, 60}).Draw(t, "degrees"),
		Left:    rapid.Bool().Draw(t, "left"),
		Seam:    length.Len(rapid.Int64Range(1, int64(length.Inch/2)).Draw(t, "seam")),
	}
	size := rapid.OneOf(
		rapid.Map(rapid.Int64Range(16, 96), func(n int64) length.Len { return length.Len(n) * length.Inch / 16 }),
		rapid.Map(rapid.Int64Range(int64(length.Inch), int64(6*length.Inch)), func(n int64) length.Len { return length.Len(n) }))
	for range families[s.Kind].numbers {
		s.Sizes = append(s.Sizes, size.Draw(t, "size"))
	}
	if s.Kind == Trapezoid {
		s.Sizes[0] += s.Sizes[1] // the long side
	}
	return s
}

func cut(t *rapid.T, s Spec) Cut {
	t.Helper()
	c, err := s.Cut()
	if err != nil {
		t.Fatalf("%+v: %v", s, err)
	}
	return c
}

// approx is a place as it is shown, in nanometres: good to a thousandth of one.
type approx struct{ x, y float64 }

func at(p place) approx {
	const k = 1024 // Nearest of 1024 times as much
	up := p.times(real.Int(k))
	return approx{float64(up.x.Nearest()) / k, float64(up.y.Nearest()) / k}
}

func (p approx) from(q approx) float64 { return math.Hypot(p.x-q.x, p.y-q.y) }

// beyond is how far p is outside the line from a to b.
func (p approx) beyond(a, b approx) float64 {
	return -((b.x-a.x)*(p.y-a.y) - (b.y-a.y)*(p.x-a.x)) / b.from(a)
}

// (1) Every side of a grown shape is a seam outside the finished one's.
func TestGrownSides(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := aSpec(t)
		f, err := s.figure(s.Sizes)
		if err != nil {
			t.Fatal(err)
		}
		g, err := f.grow(real.Len(s.Seam))
		if err != nil {
			t.Fatal(err)
		}
		seam := float64(s.Seam)
		for i := range f {
			p, q := at(f.corner(i)), at(f.corner(i+1))
			a, b := at(g.corner(i)), at(g.corner(i+1))
			if c := f[i].centre; c != nil {
				for _, end := range []approx{a, b} {
					if got := end.from(at(*c)) - p.from(at(*c)); math.Abs(got-seam) > 0.01 {
						t.Errorf("arc %d is %f outside, want %f", i, got, seam)
					}
				}
				continue
			}
			for _, end := range []approx{a, b} {
				if got := end.beyond(p, q); math.Abs(got-seam) > 0.01 {
					t.Errorf("side %d ends %f outside, want %f", i, got, seam)
				}
			}
		}
	})
}

func TestCutLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := aSpec(t)
		plain := cut(t, s)
		s.Finished = true
		grown := cut(t, s)
		s.Ruler = true
		ruled := cut(t, s)
		for name, c := range map[string]Cut{"plain": plain, "grown": grown, "ruled": ruled} {
			if !c.Outline.Simple() || !c.Outline.Convex() || c.Outline.Bounds().Min != (outline.Point{}) {
				t.Errorf("%s: %v", name, c.Outline)
			}
		}
		if !plain.Outline.Area().Less(grown.Outline.Area()) || ruled.Outline.Area().Less(grown.Outline.Area()) {
			t.Error("growing and rounding up must not lose area")
		}
		if families[s.Kind].measure == nil {
			if !outline.Same(ruled.Outline, grown.Outline) {
				t.Error("a shape without a SIZE of its own stays exact")
			}
			return
		}
		// (2) The ruler's numbers are eighths, none smaller than it must be.
		for i, n := range ruled.Sizes {
			if n%(length.Inch/8) != 0 || n < grown.Sizes[i] || n >= grown.Sizes[i]+length.Inch/8 {
				t.Errorf("number %d: %v, by ruler %v", i, grown.Sizes[i], n)
			}
		}
		// A grown shape is the shape of its SIZE.
		s.Finished, s.Ruler = false, false
		s.Sizes = ruled.Sizes
		if again := cut(t, s); !outline.Same(again.Outline, ruled.Outline) {
			t.Errorf("SIZE %v is %v, not %v", s.Sizes, again.Outline, ruled.Outline)
		}
		s.Sizes = grown.Sizes
		sameButFor(t, cut(t, s).Outline, grown.Outline, 4)
	})
}

// sameButFor says whether two outlines have the same corners to within some
// nanometres. SIZE is rounded, and at a sharp corner half a nanometre counts
// several times.
func sameButFor(t *rapid.T, a, b outline.Outline, within length.Len) {
	t.Helper()
	if len(a) != len(b) {
		t.Errorf("%d corners, not %d", len(a), len(b))
		return
	}
	for i := range a {
		if d := a[i].Sub(b[i]); max(d.X, -d.X, d.Y, -d.Y) > within {
			t.Errorf("corner %d is off by %v", i, d)
		}
	}
}

// No corner of a trimmed shape is sharper than 80 degrees, the cut is one seam
// beyond the finished corner, and it makes no difference whether the piece was
// grown or given as it is cut.
func TestTrimLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := aSpec(t)
		if s.Kind == Circle || s.Kind == QuarterCircle {
			s.Kind = HalfSquare
			s.Sizes = s.Sizes[:1]
		}
		s.Finished, s.Trimmed = true, true
		trimmed := cut(t, s)
		for i := range trimmed.Outline {
			if a := angleAt(trimmed.Outline, i); a < sharp-0.001 {
				t.Errorf("corner %d of %v has %f degrees", i, trimmed.Outline, a)
			}
		}
		if s.Trimmed = false; len(cut(t, s).Outline) > len(trimmed.Outline) {
			t.Error("trimming lost a corner")
		}
		if families[s.Kind].measure != nil {
			s.Finished, s.Trimmed, s.Sizes = false, true, trimmed.Sizes
			sameButFor(t, cut(t, s).Outline, trimmed.Outline, 8)
		}
	})
}

// angleAt is the angle of a corner in degrees.
func angleAt(o outline.Outline, i int) float64 {
	n := len(o)
	a, b := o[(i+n-1)%n].Sub(o[i]), o[(i+1)%n].Sub(o[i])
	return math.Abs(math.Atan2(float64(a.X)*float64(b.Y)-float64(a.Y)*float64(b.X),
		float64(a.X)*float64(b.X)+float64(a.Y)*float64(b.Y))) * 180 / math.Pi
}

// Trimmed edges are as long as those they are sewn to: a seam more at each end
// than finished.
func TestTrimmedEdges(t *testing.T) {
	side := func(o outline.Outline, i int) float64 {
		d := o[(i+1)%len(o)].Sub(o[i])
		return math.Hypot(float64(d.X), float64(d.Y)) / float64(length.Inch)
	}
	cases := []struct {
		name string
		spec Spec
		side int // of the trimmed outline
		want float64
	}{
		{"half-square triangle to a square of 3: bottom", Spec{Kind: HalfSquare, Sizes: ins(3)}, 3, 3.5},
		{"half-square triangle to a square of 3: left", Spec{Kind: HalfSquare, Sizes: ins(3)}, 4, 3.5},
		{"quarter-square triangle to a square of 4: long side", Spec{Kind: QuarterSquare, Sizes: ins(4)}, 2, 4.5},
		{"half-rectangle triangle to 2 x 4: bottom", Spec{Kind: HalfRectangle, Sizes: ins(2, 4), Left: true}, 3, 2.5},
		{"half-rectangle triangle to 2 x 4: left", Spec{Kind: HalfRectangle, Sizes: ins(2, 4), Left: true}, 4, 4.5},
	}
	for _, c := range cases {
		c.spec.Finished, c.spec.Trimmed, c.spec.Seam = true, true, quarter
		o := mustCut(t, c.spec).Outline
		if got := side(o, c.side); math.Abs(got-c.want) > 1e-6 {
			t.Errorf("%s: %f, want %f (%v)", c.name, got, c.want, o)
		}
	}
	// A 60 degree corner loses all that is more than a seam beyond the finished
	// corner along its middle: the triangle of height 3 is 3 + 2 seams high.
	o := mustCut(t, Spec{Kind: Equilateral, Sizes: ins(3), Finished: true, Trimmed: true, Seam: quarter}).Outline
	if h := o.Bounds().Height(); h != in(3.5) || len(o) != 6 {
		t.Errorf("equilateral triangle: %v high, %d corners", h, len(o))
	}
}

// (3) Corners of a circle are never inside it and at most 0.01 mm outside:
// exactly, in whole numbers.
func TestCirclesStayOutside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := length.Len(rapid.Int64Range(int64(length.Millimetre), int64(11*length.Inch)).Draw(t, "diameter"))
		o := cut(t, Spec{Kind: Circle, Sizes: []length.Len{d}}).Outline
		if b := o.Bounds(); b.Width() != d || b.Height() != d {
			t.Errorf("%v x %v", b.Width(), b.Height())
		}
		for i := range o {
			outsideCircle(t, o, i, outline.Point{X: d, Y: d}, d)
		}
		if !outline.Same(o.Turn(outline.QuarterTurn).Normalise(), o) && d%2 == 0 {
			t.Error("a quarter turn shows")
		}
	})
}

// outsideCircle checks side i against a circle; centre and radius are given
// twice as large as they are, so that they are whole.
func outsideCircle(t *rapid.T, o outline.Outline, i int, centre outline.Point, radius length.Len) {
	t.Helper()
	whole := func(l length.Len) *big.Int { return big.NewInt(int64(l)) }
	square := func(p outline.Point) *big.Int {
		x, y := whole(p.X), whole(p.Y)
		return x.Mul(x, x).Add(x, y.Mul(y, y))
	}
	p, q := o[i], o[(i+1)%len(o)]
	p, q = outline.Point{X: 2 * p.X, Y: 2 * p.Y}.Sub(centre), outline.Point{X: 2 * q.X, Y: 2 * q.Y}.Sub(centre)
	// |p × q| ≥ radius·|q − p|
	cross := new(big.Int).Mul(whole(p.X), whole(q.Y))
	cross.Sub(cross, new(big.Int).Mul(whole(p.Y), whole(q.X)))
	least := square(q.Sub(p))
	r := whole(radius)
	if least.Mul(least, r.Mul(r, r)); cross.Mul(cross, cross).Cmp(least) < 0 {
		t.Errorf("side %d comes inside the circle", i)
	}
	most := whole(radius + 2*length.Millimetre/100)
	if square(p).Cmp(most.Mul(most, most)) > 0 {
		t.Errorf("corner %d is more than 0.01 mm outside", i)
	}
}

// A quarter circle: its arc keeps its centre when it grows and ends on the
// grown straight sides.
func TestQuarterCircle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := length.Len(rapid.Int64Range(int64(length.Millimetre), int64(8*length.Inch)).Draw(t, "radius"))
		s := length.Len(rapid.Int64Range(1, int64(length.Inch)).Draw(t, "seam"))
		o := cut(t, Spec{Kind: QuarterCircle, Sizes: []length.Len{r}, Finished: true, Seam: s}).Outline
		centre := outline.Point{X: 2 * s, Y: 2 * (r + s)}
		corner := outline.Point{X: 0, Y: r + 2*s}
		straight, reach := 0, math.Sqrt(float64(r)*float64(r+2*s)) // √((r+s)² − s²)
		for i, p := range o {
			q := o[(i+1)%len(o)]
			switch {
			case p == corner:
				straight++
				if up := float64(r+s) - reach; q.X != 0 || math.Abs(float64(q.Y)-up) > 1.1 {
					t.Errorf("the left side ends at %v, want %f", q, up)
				}
			case q == corner:
				straight++
				if across := float64(s) + reach; p.Y != corner.Y || math.Abs(float64(p.X)-across) > 1.1 {
					t.Errorf("the bottom ends at %v, want %f", p, across)
				}
			default:
				outsideCircle(t, o, i, centre, 2*(r+s))
			}
		}
		if b := o.Bounds(); straight != 2 || b.Width() != r+2*s || b.Height() != r+2*s {
			t.Errorf("%d straight sides, %v", straight, b)
		}
	})
}

// Outlines of her own: an L with a corner on a side, drawn the other way round
// and anywhere, grown by a seam; the inward corner moves out as well.
func TestOwn(t *testing.T) {
	ell := points(5, 5, 5, 8, 6.5, 8, 8, 8, 8, 7, 6, 7, 6, 5)
	plain := mustCut(t, Spec{Kind: Own, Own: ell})
	if want := points(0, 0, 1, 0, 1, 2, 3, 2, 3, 3, 0, 3); !outline.Same(plain.Outline, want) {
		t.Errorf("%v", plain.Outline)
	}
	grown := mustCut(t, Spec{Kind: Own, Own: ell, Finished: true, Ruler: true, Seam: quarter})
	if want := points(0, 0, 1.5, 0, 1.5, 2, 3.5, 2, 3.5, 3.5, 0, 3.5); !outline.Same(grown.Outline, want) {
		t.Errorf("grown: %v", grown.Outline)
	}
	// A notch 1 in wide stays open with a seam of 1/4, and is full at 1/2.
	cup := points(0, 0, 1, 0, 1, 2, 2, 2, 2, 0, 3, 0, 3, 3, 0, 3)
	mustCut(t, Spec{Kind: Own, Own: cup, Finished: true, Seam: quarter})
	for _, seam := range []length.Len{length.Inch / 2, length.Inch} {
		if _, err := (Spec{Kind: Own, Own: cup, Finished: true, Seam: seam}).Cut(); err == nil {
			t.Errorf("a seam of %v fits a notch of 1 in", seam)
		}
	}
	// A notch behind a narrow mouth: its sides keep their way but run into each other.
	flask := points(0, 0, 1.8, 0, 1.8, 1, 1, 1, 1, 3, 3, 3, 3, 1, 2.2, 1, 2.2, 0, 4, 0, 4, 4, 0, 4)
	if _, err := (Spec{Kind: Own, Own: flask, Finished: true, Seam: quarter}).Cut(); err == nil {
		t.Error("a seam of 1/4 fits a mouth of 0.4 in")
	}
}
