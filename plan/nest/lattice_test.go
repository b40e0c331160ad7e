package nest

import (
	"math"
	"testing"

	"example.org/matside/plan/outline"
	"example.org/matside/plan/rect"
)

// The tightest lattice found covers what is known to be the most: all of the
// plane with triangles (two a step), four-sided outlines and hexagons; π/√12 with
// circles (Thue 1910; Fejes Tóth 1940).
func TestLatticeDensity(t *testing.T) {
	half := []int{0, 180_000_000}
	for _, c := range []struct {
		name  string
		o     outline.Outline
		turns []int
		most  float64
	}{
		{"triangle", poly(0, 1, 3.1, 0, 2.3, 2.6), half, 1},
		{"slanted diamond", poly(0, 1, 1.8, 0, 2.5, 1.6, 0.7, 2.6), half[:1], 1},
		{"kite", poly(1, 0, 2, 1, 1, 3, 0, 1), half, 1},
		{"hexagon", hexagon(1.2887), half[:1], 1},
		{"hexagon at a slant", hexagon(1.2887).Turn(17_000_000), half[:1], 1},
		{"circle", circle(2, 128), half[:1], math.Pi / math.Sqrt(12)},
	} {
		m := newModel(newContainer(in(11.5), in(11.5), 0), []Item{{Outline: c.o, Turns: c.turns, Count: 100}})
		best := 0.0
		for _, motif := range m.touching(0) {
			for _, l := range m.lattices(motif) {
				best = max(best, float64(len(motif))*m.area[0]/l.cell)
			}
		}
		if best < c.most*0.998 || best > c.most*1.001 {
			t.Errorf("%s: %.4f of the plane, want %.4f", c.name, best, c.most)
		}
	}
}

// Circles in a square: the side of the least square that holds n circles of
// radius 1 is proved for these n (Peikert and others, "Packing circles in a
// square: a review and new results", 1992; the figures from memory). We come
// within one of n, and never beyond it.
func TestCirclesInSquare(t *testing.T) {
	for _, c := range []struct {
		n    int
		side float64
	}{{5, 4.8285}, {7, 5.7321}, {9, 6}, {13, 7.4632}, {16, 8}, {18, 8.6565}, {20, 8.9781}} {
		const radius = 1.2
		side := in(c.side * radius * 1.002)
		ps := Most(side, side, 0, Item{Outline: circle(2*radius, 64)}, Options{Effort: rect.Quick})
		checkLayout(t, side, side, ps)
		if len(ps) > c.n || len(ps) < c.n-1 {
			t.Errorf("%d circles, want %d or one fewer", len(ps), c.n)
		}
		t.Logf("%d of %d", len(ps), c.n)
	}
}
