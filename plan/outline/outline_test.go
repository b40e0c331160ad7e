package outline

import (
	"testing"

	"example.org/matside/plan/length"
)

// poly is an outline in inches, for tables.
func poly(xy ...length.Len) (o Outline) {
	for i := 0; i+1 < len(xy); i += 2 {
		o = append(o, Point{xy[i] * length.Inch, xy[i+1] * length.Inch})
	}
	return o
}

var (
	square  = poly(0, 0, 2, 0, 2, 2, 0, 2)
	ell     = poly(0, 0, 1, 0, 1, 2, 3, 2, 3, 3, 0, 3)             // an L
	cup     = poly(0, 0, 1, 0, 1, 2, 2, 2, 2, 0, 3, 0, 3, 3, 0, 3) // a U, 1 in wide inside
	diamond = poly(2, 0, 4, 2, 2, 4, 0, 2)
	half    = poly(0, 0, 2, 2, 0, 2) // half-square triangle, square corner bottom left
)

func TestOverlaps(t *testing.T) {
	cases := []struct {
		name string
		a, b Outline
		want bool
	}{
		{"itself", square, square, true},
		{"itself, an L", ell, ell, true},
		{"side by side", square, poly(2, 0, 4, 0, 4, 2, 2, 2), false},
		{"corner to corner", square, poly(2, 2, 4, 2, 4, 4, 2, 4), false},
		{"contained", poly(0, 0, 9, 0, 9, 9, 0, 9), poly(3, 3, 4, 3, 4, 4, 3, 4), true},
		{"contained and sharing a corner's edges", poly(0, 0, 9, 0, 9, 9, 0, 9), poly(0, 0, 1, 0, 1, 1, 0, 1), true},
		{"a cross: no corner in the other", poly(0, 1, 3, 1, 3, 2, 0, 2), poly(1, 0, 2, 0, 2, 3, 1, 3), true},
		{"triangles back to back", half, poly(0, 0, 2, 0, 2, 2), false},
		{"fills the notch of an L", ell, poly(1, 0, 3, 0, 3, 2, 1, 2), false},
		{"fills a cup", cup, poly(1, 0, 2, 0, 2, 2, 1, 2), false},
		{"too wide for the cup by what it covers", cup, poly(1, 1, 3, 1, 3, 2, 1, 2), true},
		{"L and its half turn about", ell, ell.Turn(2*QuarterTurn).Move(4*length.Inch, 4*length.Inch), false},
		{"diamond touches a square's side", diamond, poly(4, 0, 6, 0, 6, 4, 4, 4), false},
		{"diamond's tip in a square by its edge", diamond, poly(3, 0, 6, 0, 6, 4, 3, 4), true},
	}
	for _, c := range cases {
		if !c.a.Simple() || !c.b.Simple() {
			t.Errorf("%s: not simple", c.name)
		}
		if got := overlaps(c.a, c.b); got != c.want {
			t.Errorf("%s: Overlaps = %v, want %v", c.name, got, c.want)
		}
		if got := overlaps(c.b, c.a); got != c.want {
			t.Errorf("%s, the other way: Overlaps = %v, want %v", c.name, got, c.want)
		}
	}
}

func TestSimple(t *testing.T) {
	cases := []struct {
		name    string
		corners Outline
		simple  bool
		tidy    error
		want    int // corners of the tidy outline
	}{
		{"square", square, true, nil, 4},
		{"the other way round", poly(0, 0, 0, 2, 2, 2, 2, 0), true, nil, 4},
		{"a corner on a side", poly(0, 0, 1, 0, 2, 0, 2, 2, 0, 2), true, nil, 4},
		{"closed by its first corner", poly(0, 0, 2, 0, 2, 2, 0, 2, 0, 0), false, nil, 4},
		{"a corner twice", poly(0, 0, 2, 0, 2, 0, 2, 2, 0, 2), false, nil, 4},
		{"nothing", nil, false, ErrCorners, 0},
		{"one corner, often", poly(1, 1, 1, 1, 1, 1), false, ErrCorners, 0},
		{"two corners", poly(0, 0, 1, 1), false, ErrCorners, 0},
		{"a line", poly(0, 0, 1, 1, 2, 2), false, ErrDoublesBack, 0},
		{"a spike", poly(0, 0, 4, 0, 2, 0, 2, 2, 0, 2), false, ErrDoublesBack, 0},
		{"a bow", poly(0, 0, 2, 2, 2, 0, 0, 2), false, ErrCrosses, 0},
		{"touches itself at a corner", poly(0, 0, 2, 0, 2, 2, 1, 0, 0, 2), false, ErrCrosses, 0},
		{"two squares at a corner", poly(0, 0, 1, 0, 1, 1, 2, 1, 2, 2, 1, 2, 1, 1, 0, 1), false, ErrCrosses, 0},
		{"goes along itself", poly(0, 0, 3, 0, 3, 3, 2, 3, 2, 0, 1, 0, 1, 3, 0, 3), false, ErrCrosses, 0},
	}
	for _, c := range cases {
		if got := c.corners.Simple(); got != c.simple {
			t.Errorf("%s: Simple = %v", c.name, got)
		}
		o, err := Tidy(c.corners)
		if err != c.tidy || len(o) != c.want {
			t.Errorf("%s: Tidy = %v, %v", c.name, o, err)
		}
		if err == nil && (!o.Simple() || o.shoelace().Sign() <= 0) {
			t.Errorf("%s: Tidy = %v", c.name, o)
		}
	}
}

func TestBoxes(t *testing.T) {
	b := NewBox(1, 2, 10, 20)
	if b != Rect(1, 2, 10, 20).Bounds() || b.Width() != 10 || b.Height() != 20 || b.Grow(-1) != NewBox(2, 3, 8, 18) {
		t.Errorf("%v", b)
	}
	if !b.Contains(b) || b.Contains(NewBox(1, 2, 11, 20)) || b.Contains(NewBox(0, 2, 5, 5)) {
		t.Error("Contains")
	}
	if b.Overlaps(NewBox(11, 2, 5, 5)) || b.Overlaps(NewBox(11, 22, 5, 5)) || !b.Overlaps(NewBox(10, 21, 5, 5)) {
		t.Error("Overlaps")
	}
	for o, want := range map[string]bool{"square": square.IsRect(), "turned": square.Turn(QuarterTurn).IsRect(),
		"diamond": !diamond.IsRect(), "L": !ell.IsRect(), "bow": !poly(0, 0, 1, 1, 1, 0, 0, 1).IsRect()} {
		if !want {
			t.Errorf("IsRect of a %s", o)
		}
	}
}

func TestSame(t *testing.T) {
	if !Same(square, append(square[2:4:4], square[:2]...)) || !Same(nil, nil) {
		t.Error("not the same from another corner")
	}
	if Same(square, diamond) || Same(square, square.Mirror()) || Same(square, half) || Same(ell, ell.Move(0, 1)) {
		t.Error("the same though it is not")
	}
}

// Two circles of 264 corners that nearly touch: what the check of a plan does
// with the worst of its neighbours.
func BenchmarkApartCircles(b *testing.B) {
	var o Outline
	for i := range 264 {
		o = append(o, Outline{{X: 5 * length.Inch}}.Turn(-FullTurn/264*i)...)
	}
	r := NewRegion(o)
	s := r.Move(7*length.Inch, 7*length.Inch+length.Inch/7)
	for b.Loop() {
		if !r.Apart(s, length.Millimetre/100) {
			b.Fatal("too close")
		}
	}
}
