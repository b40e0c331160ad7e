package shape

import (
	"errors"
	"testing"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// in is x inches, to the nearest nanometre: for published decimals.
func in(x float64) length.Len {
	return length.Len(x*float64(length.Inch) + 0.5)
}

func ins(xs ...float64) (ls []length.Len) {
	for _, x := range xs {
		ls = append(ls, in(x))
	}
	return ls
}

const quarter = length.Inch / 4 // the seam of the trade

func mustCut(t *testing.T, s Spec) Cut {
	t.Helper()
	c, err := s.Cut()
	if err != nil {
		t.Fatalf("%+v: %v", s, err)
	}
	return c
}

// points is an outline through corners in inches.
func points(xy ...float64) (o outline.Outline) {
	for i := 0; i+1 < len(xy); i += 2 {
		o = append(o, outline.Point{X: in(xy[i]), Y: in(xy[i+1])})
	}
	return o
}

// How each shape lies (the cut list's table of shapes): y runs down, so "bottom" is the
// larger y. Corners that are no whole nanometre are given by their rounding.
func TestHowShapesLie(t *testing.T) {
	cases := []struct {
		name string
		spec Spec
		want outline.Outline
	}{
		{"square", Spec{Kind: Square, Sizes: ins(2)}, points(0, 0, 2, 0, 2, 2, 0, 2)},
		{"rectangle", Spec{Kind: Rectangle, Sizes: ins(2, 3)}, points(0, 0, 2, 0, 2, 3, 0, 3)},
		{"half-square: square corner bottom left", Spec{Kind: HalfSquare, Sizes: ins(2)}, points(0, 0, 2, 2, 0, 2)},
		{"quarter-square: long side at the bottom", Spec{Kind: QuarterSquare, Sizes: ins(4)}, points(2, 0, 4, 2, 0, 2)},
		{"half-rectangle left: square corner bottom left", Spec{Kind: HalfRectangle, Sizes: ins(2, 3), Left: true}, points(0, 0, 2, 3, 0, 3)},
		{"half-rectangle right", Spec{Kind: HalfRectangle, Sizes: ins(2, 3)}, points(2, 0, 2, 3, 0, 3)},
		{"equilateral: base at the bottom", Spec{Kind: Equilateral, Sizes: ins(4), Measure: Side}, points(2, 0, 4, 3.464101615, 0, 3.464101615)},
		{"hexagon: flats level", Spec{Kind: Hexagon, Sizes: ins(2)},
			points(1, 0, 3, 0, 4, 1.7320508076, 3, 3.4641016151, 1, 3.4641016151, 0, 1.7320508076)},
		{"half hexagon: long side at the bottom", Spec{Kind: HalfHexagon, Sizes: ins(2)}, points(1, 0, 3, 0, 4, 1.7320508076, 0, 1.7320508076)},
		{"octagon: flats level", Spec{Kind: Octagon, Sizes: ins(1), Measure: Side},
			points(0.7071067812, 0, 1.7071067812, 0, 2.4142135624, 0.7071067812, 2.4142135624, 1.7071067812,
				1.7071067812, 2.4142135624, 0.7071067812, 2.4142135624, 0, 1.7071067812, 0, 0.7071067812)},
		{"diamond 60 leans right", Spec{Kind: Diamond, Sizes: ins(2), Degrees: 60}, points(1, 0, 3, 0, 2, 1.7320508076, 0, 1.7320508076)},
		{"diamond 45 by height", Spec{Kind: Diamond, Sizes: ins(2), Degrees: 45, Measure: Height}, points(2, 0, 4.8284271247, 0, 2.8284271247, 2, 0, 2)},
		{"parallelogram right", Spec{Kind: Parallelogram, Sizes: ins(3, 2), Degrees: 45}, points(2, 0, 5, 0, 3, 2, 0, 2)},
		{"parallelogram left", Spec{Kind: Parallelogram, Sizes: ins(3, 2), Degrees: 45, Left: true}, points(0, 0, 3, 0, 5, 2, 2, 2)},
		{"trapezoid: long side at the bottom", Spec{Kind: Trapezoid, Sizes: ins(4, 2, 3)}, points(1, 0, 3, 0, 4, 3, 0, 3)},
	}
	for _, c := range cases {
		got := mustCut(t, c.spec).Outline
		if !outline.Same(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// What a finished size is cut as, in closed form; s is the seam, 1/4 in.
func TestGrownSizes(t *testing.T) {
	cases := []struct {
		name string
		spec Spec
		want []length.Len
	}{
		{"square +2s", Spec{Kind: Square, Sizes: ins(3)}, ins(3.5)},
		{"rectangle +2s", Spec{Kind: Rectangle, Sizes: ins(3, 1.5)}, ins(3.5, 2)},
		{"half-square +s(2+√2)", Spec{Kind: HalfSquare, Sizes: ins(3)}, ins(3.8535533906)},
		{"quarter-square +2s(1+√2)", Spec{Kind: QuarterSquare, Sizes: ins(3)}, ins(4.2071067812)},
		{"half-rectangle 1:2", Spec{Kind: HalfRectangle, Sizes: ins(1, 2)}, ins(1.6545084972, 3.3090169944)},
		{"half-rectangle 2:3", Spec{Kind: HalfRectangle, Sizes: ins(2, 3)}, ins(2.7171292730, 4.0756939095)},
		{"half-rectangle 1:3", Spec{Kind: HalfRectangle, Sizes: ins(1, 3)}, ins(1.5968564717, 4.7905694150)},
		{"equilateral height +3s", Spec{Kind: Equilateral, Sizes: ins(3)}, ins(3.75)},
		{"equilateral side +2√3·s", Spec{Kind: Equilateral, Sizes: ins(3), Measure: Side}, ins(3.8660254038)},
		{"hexagon side +2s/√3", Spec{Kind: Hexagon, Sizes: ins(2)}, ins(2.2886751346)},
		{"hexagon height +2s", Spec{Kind: Hexagon, Sizes: ins(2), Measure: Height}, ins(2.5)},
		{"octagon height +2s", Spec{Kind: Octagon, Sizes: ins(4)}, ins(4.5)},
		{"octagon side +2s(√2−1)", Spec{Kind: Octagon, Sizes: ins(4), Measure: Side}, ins(4.2071067812)},
		{"diamond 60 height +2s", Spec{Kind: Diamond, Sizes: ins(3), Degrees: 60, Measure: Height}, ins(3.5)},
		{"diamond 45 height +2s", Spec{Kind: Diamond, Sizes: ins(2), Degrees: 45, Measure: Height}, ins(2.5)},
		{"diamond 60 side +4s/√3", Spec{Kind: Diamond, Sizes: ins(3), Degrees: 60}, ins(3.5773502692)},
		{"diamond 45 side +2√2·s", Spec{Kind: Diamond, Sizes: ins(3), Degrees: 45}, ins(3.7071067812)},
		{"parallelogram 45", Spec{Kind: Parallelogram, Sizes: ins(3, 2), Degrees: 45}, ins(3.7071067812, 2.5)},
		{"circle +2s", Spec{Kind: Circle, Sizes: ins(3)}, ins(3.5)},
		{"trapezoid 6 x 0+ x 4: slope 3:4, c = 5", Spec{Kind: Trapezoid, Sizes: ins(7, 1, 4)}, ins(8, 1.25, 4.5)},
		{"half hexagon stays", Spec{Kind: HalfHexagon, Sizes: ins(2)}, ins(2)},
		{"quarter circle stays", Spec{Kind: QuarterCircle, Sizes: ins(2)}, ins(2)},
	}
	for _, c := range cases {
		c.spec.Finished, c.spec.Seam = true, quarter
		got := mustCut(t, c.spec).Sizes
		for i := range c.want {
			// The wanted decimals hold ten places: 2 nm.
			if d := got[i] - c.want[i]; len(got) != len(c.want) || d < -2 || d > 2 {
				t.Errorf("%s: %v, want %v", c.name, got, c.want)
			}
		}
	}
}

func TestMistakes(t *testing.T) {
	cases := []struct {
		name string
		spec Spec
		want error
	}{
		{"no length", Spec{Kind: Square, Sizes: ins(0)}, ErrNothing},
		{"short side first", Spec{Kind: Trapezoid, Sizes: ins(2, 3, 1)}, ErrLongSideFirst},
		{"two equal sides", Spec{Kind: Trapezoid, Sizes: ins(3, 3, 1)}, ErrLongSideFirst},
		{"angle", Spec{Kind: Diamond, Sizes: ins(2), Degrees: 50}, ErrDegrees},
		{"a nanometre", Spec{Kind: Octagon, Sizes: []length.Len{1}}, ErrTooSmall},
		{"trimmed to nothing", Spec{Kind: HalfSquare, Sizes: ins(0.5), Trimmed: true, Seam: quarter}, ErrTooSmallToTrim},
		{"as long as the street", Spec{Kind: HalfRectangle, Sizes: []length.Len{length.MaxLen, 1}, Finished: true, Seam: quarter}, ErrTooLong},
		{"two corners", Spec{Kind: Own, Own: points(0, 0, 1, 1)}, outline.ErrCorners},
		{"all in line", Spec{Kind: Own, Own: points(0, 0, 1, 1, 2, 2)}, outline.ErrDoublesBack},
		{"a bow", Spec{Kind: Own, Own: points(0, 0, 2, 2, 2, 0, 0, 2)}, outline.ErrCrosses},
		{"a notch narrower than two seams", Spec{Kind: Own, Finished: true, Seam: quarter,
			Own: points(0, 0, 1, 0, 1, 1, 1.375, 1, 1.375, 0, 3, 0, 3, 3, 0, 3)}, ErrCollapsed},
		{"a notch of just two seams", Spec{Kind: Own, Finished: true, Seam: quarter,
			Own: points(0, 0, 1, 0, 1, 1, 1.5, 1, 1.5, 0, 3, 0, 3, 3, 0, 3)}, ErrCollapsed},
	}
	for _, c := range cases {
		if _, err := c.spec.Cut(); !errors.Is(err, c.want) {
			t.Errorf("%s: error %v, want %v", c.name, err, c.want)
		}
	}
}
