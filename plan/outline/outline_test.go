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
		{"L and its half turn about", ell, ell.Turn(2 * QuarterTurn).Move(4*length.Inch, 4*length.Inch), false},
		{"diamond touches a square's side", diamond, poly(4, 0, 6, 0, 6, 4, 4, 4), false},
		{"diamond's tip in a square by its edge", diamond, poly(3, 0, 6, 0, 6, 4, 3, 4), true},
	}
	for _, c := range cases {
		if !c.a.Simple() || !c.b.Simple() {
			t.Errorf("%s: not simple", c.name)
		}
		if got := Overlaps(c.a, c.b); got != c.want {
			t.Errorf("%s: Overlaps = %v, want %v", c.name, got, c.want)
		}
		if got := Overlaps(c.b, c.a); got != c.want {
			t.Errorf("%s, the other way: Overlaps = %v, want %v", c.name, got, c.want)
		}
	}
}
