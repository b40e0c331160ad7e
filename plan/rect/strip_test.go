package rect_test

import (
	"testing"

	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
	"pgregory.net/rapid"
)

// moron is the squared rectangle 33 x 32 of Z. Moroń (1925): nine unequal
// squares without a gap.
var moron = []length.Len{18, 15, 14, 10, 9, 8, 7, 4, 1}

// TestStripKnown packs strips whose least height is known: by area, because
// pieces are too wide to lie side by side, or from the table of single sizes.
func TestStripKnown(t *testing.T) {
	squares := make([]rect.Size, len(moron))
	for i, s := range moron {
		squares[i] = rect.Size{W: s, H: s, Count: 1}
	}
	for _, c := range []struct {
		name   string
		w      length.Len
		sizes  []rect.Size
		height length.Len
	}{
		{"a squared rectangle upright", 32, squares, 33},
		{"a squared rectangle on its side", 33, squares, 32},
		{"wide ones stacked", 10, []rect.Size{{W: 6, H: 3, Count: 4}, {W: 4, H: 3, Count: 4}}, 12},
		{"a pinwheel", 5, []rect.Size{{W: 3, H: 2, Turn: true, Count: 4}, {W: 1, H: 1, Count: 1}}, 5},
		{"turned to lie low", 12, []rect.Size{{W: 2, H: 6, Turn: true, Count: 2}}, 2},
		{"may not turn", 12, []rect.Size{{W: 2, H: 6, Count: 2}}, 6},
		{"one size", 43, []rect.Size{{W: 7, H: 3, Turn: true, Count: 53}}, 26},
		{"nothing", 10, nil, 0},
	} {
		for _, unit := range []length.Len{1, length.Inch / 8} {
			sizes := make([]rect.Size, len(c.sizes))
			for i, s := range c.sizes {
				sizes[i] = rect.Size{W: s.W * unit, H: s.H * unit, Turn: s.Turn, Count: s.Count}
			}
			bin, height, ok := rect.Strip(c.w*unit, 100*unit+unit/2, sizes, rect.Options{})
			if !ok || height != c.height*unit {
				t.Errorf("%s: height %d, want %d (%v)", c.name, height/unit, c.height, ok)
			}
			if len(bin) > 0 {
				check(t, c.w*unit, height, sizes, []rect.Bin{bin}, true)
			}
		}
	}
	// a beam that has turned one of the six finds no way
	hard := []rect.Size{{W: 1, H: 1, Count: 1}, {W: 27, H: 6, Turn: true, Count: 6}}
	if bin, height, ok := rect.Strip(28, 38, hard, rect.Options{Effort: rect.Quick}); !ok || height > 38 {
		t.Errorf("height %d, want 38 at the most (%v)", height, ok)
	} else {
		check(t, 28, height, hard, []rect.Bin{bin}, true)
	}
	if _, _, ok := rect.Strip(10, 11, []rect.Size{{W: 6, H: 3, Count: 4}}, rect.Options{}); ok {
		t.Error("12 high within 11")
	}
}

// TestStripLaws holds a strip to: (1) everything within the height it reports;
// (2) a way found whenever everything fits stacked; (3) no higher with more
// effort.
func TestStripLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := length.Len(rapid.Int64Range(1, 40).Draw(t, "W"))
		sizes := drawSizes(t, w, w)
		stacked := length.Len(1)
		for _, s := range sizes {
			stacked += s.H * length.Len(s.Count)
		}
		bin, height, ok := rect.Strip(w, stacked, sizes, rect.Options{Effort: rect.Quick})
		if !ok {
			t.Fatalf("no way within %d, all stacked", stacked)
		}
		if len(bin) > 0 {
			check(t, w, height, sizes, []rect.Bin{bin}, true)
		}
		_, usual, ok := rect.Strip(w, stacked, sizes, rect.Options{})
		if !ok || usual > height {
			t.Fatalf("%d high, with more effort %d", height, usual)
		}
	})
}
