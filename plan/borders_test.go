package plan

import (
	"testing"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
)

// What is cut by hand comes out of the fabric with the rough cuts, borders
// from the long way first: no strip across and no binding has been cut off
// above a border, and a border that may lie either way lies along the grain,
// where that takes no more fabric. So much of it is needed, worked by hand.
func TestBordersFirst(t *testing.T) {
	for _, c := range []struct {
		why, fabric, lines string
		down               length.Len // as far as the fabric is cut into, at most
	}{
		{"to be bought", "", "binding 2 1/2 around 40 x 40\n3 strips 2 for sashing\n4 rectangles 4 x 40 for border, by hand, lengthwise",
			40*in + 5*5*in/2 + 3*2*in}, // 170 in of binding: five strips of 40 in
		{"from a panel", ", 42 in x 2 yd", "binding 2 1/2 around 40 x 40\n4 rectangles 4 x 40 for border, by hand, lengthwise", 40*in + 5*5*in/2},
		{"either way", ", 42 in x 2 yd", "2 strips 2\n10 rectangles 40 x 4 for border, by hand", 44 * in},
		{"with patches", ", 42 in x 3 yd", "binding 2 1/2 around 40 x 40\n20 squares 5\n4 rectangles 4 x 40 for border, by hand, lengthwise", 40*in + 5*5*in/2},
	} {
		q := Make(read(t, "quilt Test\nfabric Ink"+c.fabric+"\ncut from Ink\n"+c.lines), Options{})
		if len(q.Short) > 0 || len(q.Stock) != 1 {
			t.Fatalf("%s: %d panels, short of %v", c.why, len(q.Stock), q.Short)
		}
		if down := q.Stock[0].Reach(); down > c.down {
			t.Errorf("%s: cut %v down, %v would do", c.why, down, c.down)
		}
		for _, border := range q.Stock[0].ByHand {
			if q.List.Lines[border.Line].Kind != cutlist.ByHand {
				continue
			}
			if border.Height < border.Width {
				t.Errorf("%s: a border lies across the fabric", c.why)
			}
			for _, strip := range q.Stock[0].ByHand {
				if q.List.Lines[strip.Line].Kind != cutlist.ByHand && strip.Y < border.Y {
					t.Errorf("%s: a strip is cut across at %v, above a border at %v", c.why, strip.Y, border.Y)
				}
			}
		}
	}
}
