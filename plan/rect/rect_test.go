package rect_test

import (
	"testing"

	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
	"pgregory.net/rapid"
)

// check says what is wrong with bins as a packing of some of sizes (all of
// them, if whole). It knows nothing of how they were packed.
func check(t rapid.TB, w, h length.Len, sizes []rect.Size, bins []rect.Bin, whole bool) {
	t.Helper()
	type box struct{ x0, y0, x1, y1 length.Len }
	used := make([]int, len(sizes))
	for n, bin := range bins {
		var boxes []box
		for _, p := range bin {
			s := sizes[p.Size]
			used[p.Size]++
			if p.Turned && !s.Turn {
				t.Fatalf("bin %d: size %d may not turn", n, p.Size)
			}
			b := box{p.X, p.Y, p.X + s.W, p.Y + s.H}
			if p.Turned {
				b.x1, b.y1 = p.X+s.H, p.Y+s.W
			}
			if b.x0 < 0 || b.y0 < 0 || b.x1 > w || b.y1 > h {
				t.Fatalf("bin %d: size %d sticks out: %v of %d x %d", n, p.Size, b, w, h)
			}
			for _, o := range boxes {
				if b.x0 < o.x1 && o.x0 < b.x1 && b.y0 < o.y1 && o.y0 < b.y1 {
					t.Fatalf("bin %d: %v and %v overlap", n, b, o)
				}
			}
			boxes = append(boxes, b)
		}
		if len(bin) == 0 {
			t.Fatalf("bin %d is empty", n)
		}
	}
	for i, s := range sizes {
		if used[i] > s.Count || whole && used[i] != s.Count {
			t.Fatalf("size %d packed %d times of %d", i, used[i], s.Count)
		}
	}
}

func drawSizes(t *rapid.T, w, h length.Len) []rect.Size {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) rect.Size {
		return rect.Size{
			W:     length.Len(rapid.Int64Range(1, int64(min(w, h))).Draw(t, "w")),
			H:     length.Len(rapid.Int64Range(1, int64(min(w, h))).Draw(t, "h")),
			Turn:  rapid.Bool().Draw(t, "turn"),
			Count: rapid.IntRange(0, 6).Draw(t, "count"),
		}
	}), 0, 8).Draw(t, "sizes")
}

func TestPackPacks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := length.Len(rapid.Int64Range(1, 40).Draw(t, "W"))
		h := length.Len(rapid.Int64Range(1, 40).Draw(t, "H"))
		sizes := drawSizes(t, w, h)
		bins, err := rect.Pack(w, h, sizes, rect.Options{Effort: rect.Quick})
		if err != nil {
			t.Fatal(err)
		}
		check(t, w, h, sizes, bins, true)
	})
}

func TestFillFills(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := length.Len(rapid.Int64Range(1, 40).Draw(t, "W"))
		h := length.Len(rapid.Int64Range(1, 40).Draw(t, "H"))
		sizes := drawSizes(t, w, h)
		if bin := rect.Fill(w, h, sizes, nil, rect.Options{Effort: rect.Quick}); len(bin) > 0 {
			check(t, w, h, sizes, []rect.Bin{bin}, false)
		}
	})
}
