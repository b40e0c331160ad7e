package rect_test

import (
	"fmt"
	"testing"

	"example.org/matside/plan/bound"
	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
)

const mat, eighth = 23 * length.Inch / 2, length.Inch / 8

// quilt has n copies in all of five sizes, as quilts have: squares of 2 1/2,
// 3 7/8 and 4 1/2 in, rectangles 2 1/2 x 4 1/2, strips 1 1/2 x 8 in.
func quilt(n int) []rect.Size {
	return []rect.Size{
		{W: 20 * eighth, H: 20 * eighth, Turn: true, Count: n * 40 / 100},
		{W: 31 * eighth, H: 31 * eighth, Turn: true, Count: n * 20 / 100},
		{W: 36 * eighth, H: 36 * eighth, Turn: true, Count: n * 10 / 100},
		{W: 20 * eighth, H: 36 * eighth, Turn: true, Count: n * 20 / 100},
		{W: 12 * eighth, H: 64 * eighth, Turn: true, Count: n * 10 / 100},
	}
}

// TestQuilt packs a quilt's few sizes with many copies: within a bin of what is
// proved, and from a thousand pieces on in no more than that.
func TestQuilt(t *testing.T) {
	for _, n := range []int{100, 1000, 10_000} {
		sizes := quilt(n)
		lower := bound.Bins(mat, mat, sizes, bound.Options{})
		bins, err := rect.Pack(mat, mat, sizes, rect.Options{Lower: lower})
		if err != nil {
			t.Fatal(err)
		}
		check(t, mat, mat, sizes, bins, true)
		if len(bins) > lower+1 || n >= 1000 && len(bins) > lower {
			t.Errorf("%d pieces: %d bins, %d proved", n, len(bins), lower)
		}
	}
}

// TestOneSize packs copies of a single size into as many bins as they fill, and
// none that holds fewer than it could but the last.
func TestOneSize(t *testing.T) {
	for _, s := range quilt(1) {
		most := len(rect.Most(mat, mat, rect.Size{W: s.W, H: s.H, Turn: true, Count: 100}))
		s.Count = 300*most - 1
		bins, err := rect.Pack(mat, mat, []rect.Size{s}, rect.Options{})
		if err != nil {
			t.Fatal(err)
		}
		check(t, mat, mat, []rect.Size{s}, bins, true)
		if len(bins) != 300 || len(bins[299]) != most-1 {
			t.Errorf("%v x %v: %d bins, %d in the last of %d", s.W, s.H, len(bins), len(bins[299]), most)
		}
	}
}

// BenchmarkQuilt shows how the time grows with the pieces.
func BenchmarkQuilt(b *testing.B) {
	for _, n := range []int{100, 1000, 10_000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			sizes := quilt(n)
			for range b.N {
				if _, err := rect.Pack(mat, mat, sizes, rect.Options{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
