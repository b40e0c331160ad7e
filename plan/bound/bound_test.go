package bound_test

import (
	"testing"

	"example.org/matside/plan/bound"
	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
	"pgregory.net/rapid"
)

const eighth = length.Inch / 8

func square(side length.Len, n int) rect.Size {
	return rect.Size{W: side, H: side, Turn: true, Count: n}
}

func TestBins(t *testing.T) {
	in := func(w, h, n int) rect.Size {
		return rect.Size{W: length.Len(w) * eighth, H: length.Len(h) * eighth, Turn: true, Count: n}
	}
	cases := []struct {
		name  string
		w, h  length.Len
		sizes []rect.Size
		want  int
	}{
		{"nothing", 11 * length.Inch, 11 * length.Inch, nil, 0},
		{"no copies", 11 * length.Inch, 11 * length.Inch, []rect.Size{in(8, 8, 0)}, 0},
		{"no bin", 0, 0, []rect.Size{in(8, 8, 1)}, 0},
		{"too big for any bin", 4 * length.Inch, 4 * length.Inch, []rect.Size{in(33, 8, 5), in(8, 8, 1)}, 1},
		{"64 squares of 2 3/4 on 11 x 11, 16 a mat", 11 * length.Inch, 11 * length.Inch, []rect.Size{in(22, 22, 64)}, 4},
		{"26 squares of 2 on 11 x 11, 25 a mat", 11 * length.Inch, 11 * length.Inch, []rect.Size{in(16, 16, 26)}, 2},
		{"5000 squares of 2 1/2 on 11 x 11, 16 a mat", 11 * length.Inch, 11 * length.Inch, []rect.Size{in(20, 20, 5000)}, 313},
		{"one over half both ways each", 11 * length.Inch, 11 * length.Inch, []rect.Size{in(45, 45, 3), in(60, 47, 4)}, 7},
		{"turned only", 10 * length.Inch, 5 * length.Inch, []rect.Size{in(40, 80, 3)}, 3},
		{"may not turn", 10 * length.Inch, 5 * length.Inch, []rect.Size{{W: 5 * length.Inch, H: 3 * length.Inch, Count: 4}}, 2},
		{"the largest lengths", length.MaxLen, length.MaxLen, []rect.Size{square(length.MaxLen-1, 3), square(1, 1)}, 3},
	}
	for _, c := range cases {
		if got := bound.Bins(c.w, c.h, c.sizes, bound.Options{}); got != c.want {
			t.Errorf("%s: %d bins proved, want %d", c.name, got, c.want)
		}
	}
}

// TestTrue checks law (1) of Bins: no bound is above what exhaustion finds.
func TestTrue(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := rapid.IntRange(1, 9).Draw(t, "w")
		h := rapid.IntRange(1, 9).Draw(t, "h")
		pieces := drawPieces(t, w, h)
		unit := length.Len(rapid.SampledFrom([]int64{1, 7, 396875}).Draw(t, "unit"))
		want := fewest(w, h, pieces)
		for _, e := range []rect.Effort{rect.Quick, rect.Usual, rect.Thorough} {
			// What the bin has beyond whole units is of no use to the pieces.
			more := length.Len(rapid.Int64Range(0, int64(unit)-1).Draw(t, "more"))
			got := bound.Bins(length.Len(w)*unit+more, length.Len(h)*unit, sizesOf(pieces, unit), bound.Options{Effort: e})
			if got > want {
				t.Fatalf("effort %v proves %d bins; %d do", e, got, want)
			}
		}
	})
}

// drawPieces draws up to six pieces that fit, some of them equal.
func drawPieces(t *rapid.T, w, h int) []piece {
	var out []piece
	for n := rapid.IntRange(1, 6).Draw(t, "pieces"); len(out) < n; {
		if len(out) > 0 && rapid.IntRange(0, 3).Draw(t, "again") == 0 {
			out = append(out, out[len(out)-1])
			continue
		}
		p := piece{rapid.IntRange(1, w).Draw(t, "pw"), rapid.IntRange(1, h).Draw(t, "ph"), rapid.Bool().Draw(t, "turn")}
		out = append(out, p)
	}
	return out
}
