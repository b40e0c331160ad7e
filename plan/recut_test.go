package plan

import (
	"testing"

	"example.org/matside/plan/check"
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/rect"
	"pgregory.net/rapid"
)

// A recut keeps clear of all that has come out of the panels, reserves
// nothing by hand a second time, and plans just the copies wanted.
func TestRecuts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := drawList(t)
		first := Make(l, Options{Effort: rect.Quick})
		want := make([][]int, len(l.Lines))
		for i := range l.Lines {
			if l.Lines[i].Kind == cutlist.OnMat {
				for c := 1; c <= l.Lines[i].Count; c += rapid.IntRange(1, 20).Draw(t, "step") {
					want[i] = append(want[i], c)
				}
			}
		}
		opt := Options{Effort: rect.Quick, Wanted: want, SkipHand: true, Used: first.Stock}
		again := Make(l, opt)
		for _, f := range check.Against(again, check.Asked{Wanted: want, Used: first.Stock}) {
			t.Error(f)
		}
	})
}

// Pieces with the First label come in the earliest loads, and no plan gets
// fewer or other pieces for it.
func TestFirst(t *testing.T) {
	l := typical(250)
	for i := range l.Lines {
		l.Lines[i].Label = string(rune('A' + i))
	}
	q := Make(l, Options{Effort: rect.Quick, First: "E"})
	last := 0
	for _, load := range q.Loads {
		for _, p := range load.Pieces {
			if l.Lines[p.Line].Label != "E" {
				continue
			}
			if load.Number > last+1 {
				t.Errorf("a piece of E in load %d, the ones before it up to %d", load.Number, last)
			}
			last = load.Number
		}
	}
	if last == 0 || last == len(q.Loads) {
		t.Errorf("E up to load %d of %d", last, len(q.Loads))
	}
	for _, f := range check.Check(q) {
		t.Error(f)
	}
}

// An interrupted search still gives a whole plan.
func TestStopped(t *testing.T) {
	n := 0
	q := Make(typical(250), Options{Stop: func() bool { n++; return n > 3 }})
	for _, f := range check.Check(q) {
		t.Error(f)
	}
}
