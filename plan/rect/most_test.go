package rect_test

import (
	"testing"

	"example.org/matside/plan/bound"
	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
	"pgregory.net/rapid"
)

// hardPallets are instances of the pallet-loading literature that block
// heuristics miss; from the literature about the L-approach (see doc.go), the
// numbers from memory. Each optimum equals the area bound, so it proves itself.
var hardPallets = []struct {
	w, h, a, b length.Len
	most       int
}{
	{43, 26, 7, 3, 53},
	{49, 28, 8, 3, 57},
	{57, 34, 7, 4, 69},
	{63, 44, 8, 5, 69},
	{61, 35, 10, 3, 71},
	{67, 37, 11, 3, 75},
	{67, 40, 11, 3, 81},
}

func TestMostIsOptimal(t *testing.T) {
	for _, c := range hardPallets {
		size := rect.Size{W: c.a, H: c.b, Turn: true, Count: 1000}
		bin := rect.Most(c.w, c.h, size)
		check(t, c.w, c.h, []rect.Size{size}, []rect.Bin{bin}, false)
		if len(bin) != c.most || len(bin) > bound.PerBin(c.w, c.h, size) {
			t.Errorf("%v: laid %d", c, len(bin))
		}
	}
}

// TestMostOnAMat lays single sizes of quilts on an 11 1/2 in mat. The figures
// are found by hand: rows and columns, and for 2 1/2 x 4 1/2 and
// 3 1/2 x 6 1/2 a pinwheel of four blocks.
func TestMostOnAMat(t *testing.T) {
	const eighth = length.Inch / 8
	for _, c := range []struct {
		a, b length.Len // in eighths
		most int
	}{{20, 20, 16}, {36, 36, 4}, {31, 31, 4}, {20, 36, 10}, {28, 52, 4}, {92, 92, 1}, {93, 10, 0}, {92, 20, 4}} {
		size := rect.Size{W: c.a * eighth, H: c.b * eighth, Turn: true, Count: 100}
		bin := rect.Most(92*eighth, 92*eighth, size)
		if len(bin) != c.most {
			t.Errorf("%v eighths: laid %d, want %d", c, len(bin), c.most)
		}
	}
}

// TestMostLaws holds random single sizes to: (1) a packing; (2) no fewer than
// rows one way or the other, as far as wanted; (3) no more than is proved
// possible; (4) no fewer on a larger bin than it took before, within the small
// bins whose search is exhaustive.
func TestMostLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, lo, hi int64) length.Len { return length.Len(rapid.Int64Range(lo, hi).Draw(t, name)) }
		w, h := draw("W", 1, 40), draw("H", 1, 40)
		s := rect.Size{W: draw("w", 4, 20), H: draw("h", 4, 20), Turn: rapid.Bool().Draw(t, "turn"), Count: rapid.IntRange(0, 60).Draw(t, "count")}
		bin := rect.Most(w, h, s)
		if len(bin) > 0 {
			check(t, w, h, []rect.Size{s}, []rect.Bin{bin}, false)
		}
		rows := int(w/s.W) * int(h/s.H)
		if s.Turn {
			rows = max(rows, int(w/s.H)*int(h/s.W))
		}
		if rows == 0 {
			if len(bin) > 0 {
				t.Fatalf("laid %d of a size that does not fit", len(bin))
			}
			return
		}
		if n := len(bin); n < min(rows, s.Count) || n > bound.PerBin(w, h, s) {
			t.Fatalf("laid %d: rows hold %d, proved at most %d", n, rows, bound.PerBin(w, h, s))
		}
		if wider := rect.Most(w+1, h, s); len(wider) < len(bin) {
			t.Fatalf("laid %d, on a wider bin %d", len(bin), len(wider))
		}
	})
}

func BenchmarkMost(b *testing.B) {
	for range b.N {
		for _, c := range hardPallets {
			rect.Most(c.w, c.h, rect.Size{W: c.a, H: c.b, Turn: true, Count: 1000})
		}
	}
}
