package bound

import (
	"math/rand/v2"
	"testing"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// convexShapes are shapes for few.
func convexShapes(os ...outline.Outline) (out []shape) {
	for _, o := range os {
		out = append(out, shape{ways: waysOf(o), area: o.Area()})
	}
	return out
}

// How many 11 x 11 in holds, and that one more is proved impossible.
func TestFewKnown(t *testing.T) {
	for _, c := range []struct {
		name string
		o    outline.Outline
		most int
	}{
		{"half-square triangles, short sides 6.854", corner(174_086_000, 174_086_000), 3},
		{"half-square triangles, short sides 5.854", corner(148_686_000, 148_686_000), 4},
		{"quarter-square triangles 9 1/4", slope(37*in/4, 37*in/8), 4},
		{"squares 3 2/3", outline.Rect(0, 0, 94*length.Millimetre, 94*length.Millimetre), 4},
	} {
		f := newFew(11*in, 11*in, convexShapes(c.o), 100_000)
		if !f.may([]int{c.most}) {
			t.Errorf("%s: not even %d", c.name, c.most)
		}
		f.steps = 100_000
		if f.may([]int{c.most + 1}) {
			t.Errorf("%s: %d may be, it is said after %d steps", c.name, c.most+1, 100_000-f.steps)
		}
		t.Logf("%s: %d steps", c.name, 100_000-f.steps)
	}
}

// Pieces of a mat cut up are never impossible together.
func TestFewHoldsForMatsCutUp(t *testing.T) {
	tried := 0
	some(t, 60, func(t *testing.T, r *rand.Rand) {
		w, h := 11*in, upTo(r, 8*in, 16*in)
		c := &halves{}
		c.cut(r, outline.NewBox(0, 0, w, h), 2)
		if len(c.pieces) > mostFew {
			return
		}
		tried++
		count := make([]int, len(c.pieces))
		for i := range count {
			count[i] = 1
		}
		if !newFew(w, h, convexShapes(c.pieces...), 20_000).may(count) {
			t.Errorf("%v can't lie on %v x %v, it is said", c.pieces, w, h)
		}
	})
	if tried < 10 {
		t.Errorf("only %d tried", tried)
	}
}
