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

// soundLayout says what is wrong with a layout, by package outline's verdicts
// alone, which share no code with the search's.
func soundLayout(w, h, gap length.Len, items []Item, ps []Placed) error {
	used := make([]int, len(items))
	regions := make([]outline.Region, len(ps))
	for i, p := range ps {
		used[p.Item]++
		regions[i] = outline.NewRegion(p.Outline)
		b := p.Outline.Bounds()
		if b.Min.X < 0 || b.Min.Y < 0 || b.Max.X > w || b.Max.Y > h {
			return fmt.Errorf("piece %d sticks out", i)
		}
		want := items[p.Item].Outline.Turn(p.Turn).Normalise().Move(b.Min.X, b.Min.Y)
		if !outline.Same(want, p.Outline) {
			return fmt.Errorf("piece %d is not item %d turned by %d", i, p.Item, p.Turn)
		}
		for j := range i {
			if !regions[i].Apart(regions[j], gap) {
				return fmt.Errorf("pieces %d and %d are nearer than the gap", i, j)
			}
		}
	}
	for i, n := range used {
		if n > items[i].Count && items[i].Count > 0 {
			return fmt.Errorf("item %d laid %d times of %d", i, n, items[i].Count)
		}
	}
	return nil
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

// (1) What Fill lays is a layout; (2) the same call gives the same one.
func TestFillLaws(t *testing.T) {
	check(t, 10, func(t *rapid.T) {
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
	})
}

// Pack lays every piece, each container a layout, or says that one fits nowhere.
func TestPackLaws(t *testing.T) {
	check(t, 10, func(t *rapid.T) {
		items, gap := anyItems(t), anyGap(t)
		w, h := in(rapid.Float64Range(4, 9).Draw(t, "w")), in(rapid.Float64Range(4, 9).Draw(t, "h"))
		bins, ok := Pack(w, h, gap, items, Options{Effort: rect.Quick})
		if !ok {
			return
		}
		used := make([]int, len(items))
		for _, ps := range bins {
			if err := soundLayout(w, h, gap, items, ps); err != nil {
				t.Fatal(err)
			}
			for _, p := range ps {
				used[p.Item]++
			}
		}
		for i, it := range items {
			if used[i] != it.Count {
				t.Fatalf("item %d: %d laid of %d", i, used[i], it.Count)
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
