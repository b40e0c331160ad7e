package nest

import (
	"fmt"
	"math"
	"os"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/rect"
)

// soundLayout says what is wrong with a layout of items, by exact verdicts
// that share no code with the search's.
func soundLayout(w, h, gap length.Len, items []Item, ps []Placed) error {
	used := make([]int, len(items))
	for i, p := range ps {
		used[p.Item]++
		b := p.Outline.Bounds()
		want := items[p.Item].Outline.Turn(p.Turn).Normalise().Move(b.Min.X, b.Min.Y)
		if !outline.Same(want, p.Outline) {
			return fmt.Errorf("piece %d is not item %d turned by %d", i, p.Item, p.Turn)
		}
	}
	for i, n := range used {
		if n > items[i].Count && items[i].Count > 0 {
			return fmt.Errorf("item %d laid %d times of %d", i, n, items[i].Count)
		}
	}
	return exactLayout(w, h, gap, ps)
}

// anyOutline draws a simple outline: a star about a point, convex or not.
func anyOutline(t *rapid.T) outline.Outline {
	n := rapid.IntRange(3, 9).Draw(t, "corners")
	size := rapid.Float64Range(0.5, 3).Draw(t, "size")
	var o outline.Outline
	for i := range n {
		r := size * rapid.Float64Range(0.3, 1).Draw(t, "reach")
		s, c := math.Sincos(2 * math.Pi * (float64(i) + 0.2) / float64(n))
		o = append(o, outline.Point{X: in(r * c), Y: in(r * s)})
	}
	tidy, err := outline.Tidy(o)
	if err != nil {
		t.Skip(err)
	}
	return tidy
}

var someTurns = [][]int{nil, {0}, {0, 180_000_000}, quarters, {0, 30_000_000, 45_000_000}}

func anyItems(t *rapid.T) []Item {
	items := make([]Item, rapid.IntRange(1, 4).Draw(t, "items"))
	for i := range items {
		items[i] = Item{
			Outline: anyOutline(t),
			Turns:   rapid.SampledFrom(someTurns).Draw(t, "turns"),
			Count:   rapid.IntRange(1, 6).Draw(t, "count"),
		}
	}
	return items
}

func anyGap(t *rapid.T) length.Len {
	return rapid.SampledFrom([]length.Len{0, 0, 1, 123_457, inch / 16, inch / 4}).Draw(t, "gap")
}

// check is rapid.Check, cut short after n tries unless MATSIDE_LONG=1: laying
// takes its time.
func check(t *testing.T, n int, law func(t *rapid.T)) {
	tried := 0
	rapid.Check(t, func(t *rapid.T) {
		if tried++; tried <= n || os.Getenv("MATSIDE_LONG") != "" {
			law(t)
		}
	})
}

// A place is covered exactly where the two outlines share area, on the very
// nanometre; with a gap, wherever they come nearer.
func TestRegionLaws(t *testing.T) {
	check(t, 100, func(t *rapid.T) {
		gap := anyGap(t)
		m := newModel(newContainer(in(40), in(40), gap), []Item{{Outline: anyOutline(t), Count: 1}, {Outline: anyOutline(t), Count: 1}})
		r := m.region(0, 1)
		d := vec{rapid.Int64Range(r.lo.x-9, r.hi.x+9).Draw(t, "x"), rapid.Int64Range(r.lo.y-9, r.hi.y+9).Draw(t, "y")}
		if len(r.corners) > 0 && rapid.Bool().Draw(t, "corner") {
			d = rapid.SampledFrom(r.corners).Draw(t, "at")
			d = d.add(vec{rapid.Int64Range(-1, 1).Draw(t, "dx"), rapid.Int64Range(-1, 1).Draw(t, "dy")})
		}
		a, b := m.shapes[0].ring.outlineAt(vec{}), m.shapes[1].ring.outlineAt(d)
		overlap := shareArea(a, b)
		if gap == 0 && r.covers(d) != overlap {
			t.Fatalf("covers %v, overlap %v", !overlap, overlap)
		}
		if !r.covers(d) && (overlap || nearer(a, b, gap)) {
			t.Fatal("free, yet too near")
		}
		if (r.depth(d) > 0) != r.covers(d) {
			t.Fatal("depth and covers differ")
		}
	})
}

func fillLaw(t *rapid.T) {
	items, gap := anyItems(t), anyGap(t)
	w, h := in(rapid.Float64Range(2, 9).Draw(t, "w")), in(rapid.Float64Range(2, 9).Draw(t, "h"))
	opt := Options{Effort: rect.Quick}
	ps := Fill(w, h, gap, items, opt)
	if err := soundLayout(w, h, gap, items, ps); err != nil {
		t.Fatal(err)
	}
	if again := Fill(w, h, gap, items, opt); !reflect.DeepEqual(ps, again) {
		t.Fatal("another layout the second time")
	}
}

// (1) What Fill lays is a layout; (2) the same call gives the same one.
func TestFillLaws(t *testing.T) { check(t, 5, fillLaw) }

func FuzzFill(f *testing.F) { f.Fuzz(rapid.MakeFuzz(fillLaw)) }

// The same of Most.
func TestMostLaws(t *testing.T) {
	check(t, 10, func(t *rapid.T) {
		item, gap := anyItems(t)[0], anyGap(t)
		item.Count = rapid.IntRange(0, 20).Draw(t, "most")
		w, h := in(rapid.Float64Range(2, 6).Draw(t, "w")), in(rapid.Float64Range(2, 6).Draw(t, "h"))
		ps := Most(w, h, gap, item, Options{Effort: rect.Quick})
		if err := soundLayout(w, h, gap, []Item{item}, ps); err != nil {
			t.Fatal(err)
		}
	})
}

// A Sheet filled again lays what a fresh one does, whatever it was filled with
// before.
func TestSheetLaws(t *testing.T) {
	check(t, 3, func(t *rapid.T) {
		items, gap := anyItems(t), anyGap(t)
		w, h := in(rapid.Float64Range(3, 7).Draw(t, "w")), in(rapid.Float64Range(3, 7).Draw(t, "h"))
		opt := Options{Effort: rect.Quick}
		used := NewSheet(w, h, gap, items, opt)
		for range 3 {
			var count []int
			var value []int64
			for range items {
				count = append(count, rapid.IntRange(0, 5).Draw(t, "count"))
				value = append(value, rapid.Int64Range(1, 9).Draw(t, "value"))
			}
			if rapid.Bool().Draw(t, "by area") {
				value = nil
			}
			if a, b := used.Fill(count, value), NewSheet(w, h, gap, items, opt).Fill(count, value); !reflect.DeepEqual(a, b) {
				t.Fatal("another layout than on a fresh sheet")
			}
		}
	})
}

// Strip lays every piece within the length it names.
func TestStripLaws(t *testing.T) {
	check(t, 10, func(t *rapid.T) {
		items, gap := anyItems(t), anyGap(t)
		h := in(rapid.Float64Range(6, 9).Draw(t, "h"))
		opt := Options{Effort: rect.Quick, Stop: stopAfter(20)}
		ps, l := Strip(h, gap, items, opt)
		if err := soundLayout(l, h, gap, items, ps); err != nil {
			t.Fatal(err)
		}
		n := 0
		for _, it := range items {
			n += it.Count
		}
		if len(ps) != n {
			t.Fatalf("%d laid of %d", len(ps), n)
		}
	})
}

// stopAfter stops a search at the n-th question.
func stopAfter(n int) func() bool {
	return func() bool { n--; return n < 0 }
}
