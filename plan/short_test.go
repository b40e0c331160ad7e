package plan

import (
	"slices"
	"testing"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
	"pgregory.net/rapid"
)

// What is said to be missing is just what has no place, line by line; and with
// so much more of a fabric as is said to do, all that was missing is planned.
func TestWouldDo(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := drawList(t)
		q := Make(l, Options{Effort: rect.Quick})
		missing := make([]int, len(l.Lines))
		for i := range l.Lines {
			missing[i] = l.Lines[i].Count
		}
		for _, load := range q.Loads {
			for _, p := range load.Pieces {
				missing[p.Line]--
			}
		}
		for _, u := range q.Stock {
			for _, h := range u.ByHand {
				missing[h.Line]--
			}
		}
		told := make([]int, len(l.Lines))
		for _, s := range q.Short {
			for i, n := range s.Missing {
				told[i] += n
			}
			if s.Length > 0 {
				checkWouldDo(t, l, s.Fabric, s.Missing, s.Length)
			}
		}
		for i := range l.Lines {
			if l.Lines[i].Kind != cutlist.Binding && told[i] != missing[i] {
				t.Errorf("line %d: %d are missing, %d told", i, missing[i], told[i])
			}
		}
	})
}

// checkWouldDo plans the missing pieces of a fabric out of one panel as long
// as was said, and as wide as its widest.
func checkWouldDo(t *rapid.T, l *cutlist.List, f int, missing []int, long length.Len) {
	more := *l
	more.Fabrics, more.Lines = slices.Clone(l.Fabrics), slices.Clone(l.Lines)
	panel := cutlist.Panel{Height: long}
	for _, p := range l.Fabrics[f].Stock {
		panel.Width = max(panel.Width, p.Width)
	}
	more.Fabrics[f].Stock = []cutlist.Panel{panel}
	want := make([][]int, len(l.Lines))
	for i, n := range missing {
		if l.Lines[i].Kind == cutlist.Binding && n > 0 {
			more.Lines[i].Length = length.Len(n-1)*panel.Width/2 + 1 // as many strips, or fewer where they shrink
		}
		for c := range n {
			want[i] = append(want[i], c+1)
		}
	}
	if q := Make(&more, Options{Effort: rect.Quick, Wanted: want}); len(q.Short) > 0 {
		t.Errorf("%v of fabric %d is said to do for %v, and leaves %v", long, f, missing, q.Short)
	}
}
