package plan

import (
	"testing"

	"example.org/matside/plan/length"
)

// What shrinkage asks for: the length to buy is need/(1 - shrinkage); a width
// of 44 in that shrinks by 6 1/4 % is 41 1/4. And a strip of 20 that is 17
// after its wash has shrunk by 15 % (kembrel.com).
func TestShrinkage(t *testing.T) {
	nm := length.Len(1)
	for _, c := range []struct {
		need length.Len
		ppm  int64
		buy  length.Len // to the nearest thousandth of an inch, upwards
	}{{36 * in, 30_000, 37_114 * in / 1000}, {36 * in, 60_000, 38_298 * in / 1000}} {
		got := toBuy(c.need, nm, c.ppm)
		if got > c.buy || got < c.buy-in/1000 {
			t.Errorf("%v at %d: buy %v, want %v", c.need, c.ppm, got, c.buy)
		}
		if shrunk(got, c.ppm) < c.need || shrunk(got-1, c.ppm) >= c.need {
			t.Errorf("%v at %d: %v is not the least", c.need, c.ppm, got)
		}
	}
	if got := shrunk(44*in, 62_500); got != eighths(330) {
		t.Errorf("44 in at 6 1/4 %%: %v", got)
	}
	if got := shrunk(20*in, 150_000); got != 17*in {
		t.Errorf("20 in at 15 %%: %v", got)
	}
}

// Yardage from cut list to what is bought: pieces cut by hand, as quilters cut
// them, from 40 in; eighths of a yard.
func TestYardage(t *testing.T) {
	for _, c := range []struct {
		source, lines string
		eighths       length.Len // at most
	}{
		// quiltingboard.com t46327: the post offers 1 1/2, 2 and 2 yd.
		{"60 of 5", "60 squares 5, by hand", 9},
		{"15 of 12 1/2", "15 squares 12 1/2, by hand", 14},
		{"60 of 6 1/2", "60 squares 6 1/2, by hand", 15},
		// bobbininquilts.com: 1 1/2 yd published; 1 3/8 as written, 1 1/4 when turned.
		{"300 of 3 x 2", "300 rectangles 3 x 2, by hand", 10},
		{"300 of 3 x 2, lengthwise", "300 rectangles 3 x 2, lengthwise, by hand", 11},
		// 60 x 72 with 10 in to spare: 7 strips, 1/2 yd (stockingisthenewplanking.com).
		{"binding", "binding 2 1/2 around 60 x 72", 4},
		// 80 x 56: two of 56 in (quiltingboard.com t290638).
		{"backing", "2 rectangles 40 x 56, lengthwise, by hand", 25},
	} {
		q := Make(read(t, "quilt Test\nfabric Ink\ncut from Ink\n"+c.lines), Options{})
		if len(q.Buy) != 1 || len(q.Short) > 0 || q.Buy[0].Length > c.eighths*length.Yard/8 {
			t.Errorf("%s: buy %v, short %v; want %d eighths at most", c.source, q.Buy, q.Short, c.eighths)
		}
	}
}
