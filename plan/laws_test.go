package plan

import (
	"bytes"
	"os"
	"runtime"
	"slices"
	"testing"

	"example.org/matside/plan/check"
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
	"example.org/matside/plan/rect"
	"example.org/matside/plan/report"
	"pgregory.net/rapid"
)

// drawList makes up a cut list: few fabrics, stock of all kinds or none.
func drawList(t *rapid.T) *cutlist.List {
	var fabrics []cutlist.Fabric
	for range rapid.IntRange(1, 4).Draw(t, "fabrics") {
		f := cutlist.Fabric{Name: "Cloth", OneWay: rapid.Bool().Draw(t, "one-way"), Sheds: rapid.Bool().Draw(t, "sheds"),
			FaceDown: rapid.Bool().Draw(t, "face down")}
		for range rapid.IntRange(0, 3).Draw(t, "panels") {
			f.Stock = append(f.Stock, rapid.SampledFrom([]cutlist.Panel{
				{Width: 18 * in, Height: 21 * in}, {Width: 42 * in, Height: 18 * in}, {Width: 42 * in, Height: 36 * in}, {Width: 10 * in, Height: 10 * in},
			}).Draw(t, "panel"))
		}
		if rapid.IntRange(0, 3).Draw(t, "washed") == 0 {
			f.ShrinkAcross, f.ShrinkAlong = 35_000, 62_500
		}
		fabrics = append(fabrics, f)
	}
	l := sheet(fabrics)
	l.Gap = rapid.SampledFrom([]length.Len{0, 0, in / 8, 1_234_567}).Draw(t, "gap")
	l.Margin = rapid.SampledFrom([]length.Len{in / 4, 0, in / 2, in}).Draw(t, "margin")
	for n := range rapid.IntRange(1, 6).Draw(t, "lines") {
		l.Lines = append(l.Lines, drawLine(t, len(fabrics), 10+n))
	}
	return l
}

func drawLine(t *rapid.T, fabrics, number int) cutlist.Line {
	side := func() length.Len {
		return rapid.SampledFrom([]length.Len{eighths(rapid.IntRange(4, 60).Draw(t, "side")), 72_482_013, 91_111_111}).Draw(t, "size")
	}
	line := cutlist.Line{Number: number, Fabric: rapid.IntRange(0, fabrics-1).Draw(t, "fabric"), Count: rapid.IntRange(1, 40).Draw(t, "count"),
		Grain: cutlist.Grain(rapid.IntRange(0, 3).Draw(t, "grain")), Fussy: rapid.IntRange(0, 6).Draw(t, "fussy") == 0}
	a, b := side(), side()
	switch rapid.IntRange(0, 7).Draw(t, "shape") {
	case 0:
		line.Outline = rectangle(a, a)
	case 1, 2:
		line.Outline = rectangle(a, b)
	case 3:
		line.Outline = halfSquare(a)
	case 4:
		line.Outline = quarterSquare(a)
	case 5:
		line.Outline = outline.Outline{{X: 0, Y: 0}, {X: a, Y: 0}, {X: 0, Y: b}}
	case 6:
		line.Kind, line.Count, line.Outline = cutlist.ByHand, min(line.Count, 3), rectangle(4*a, b)
	case 7:
		line.StripWidth = min(a, 3*in)
		line.Kind, line.Count = cutlist.Strips, min(line.Count, 4)
		if rapid.Bool().Draw(t, "binding") {
			line.Kind, line.Length = cutlist.Binding, 10*b
		}
	}
	return line
}

// drawEffort is quick; in the long form all of them.
func drawEffort(t *rapid.T) rect.Effort {
	efforts := []rect.Effort{rect.Quick}
	if os.Getenv("MATSIDE_LONG") == "1" {
		efforts = []rect.Effort{rect.Quick, rect.Usual, rect.Thorough}
	}
	return rapid.SampledFrom(efforts).Draw(t, "effort")
}

// Every plan keeps the rules, whatever the list and the effort, and wherever
// it is interrupted.
func TestPlansAreWithoutFault(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := drawList(t)
		opt := Options{Effort: drawEffort(t)}
		if rapid.Bool().Draw(t, "interrupted") {
			after, asked := rapid.IntRange(0, 200).Draw(t, "after"), 0
			opt.Stop = func() bool { asked++; return asked > after }
		}
		make := Make
		if rapid.IntRange(0, 4).Draw(t, "trade") == 0 {
			make = func(l *cutlist.List, opt Options) *queue.Queue {
				front := Trade(l, opt)
				return front[len(front)-1]
			}
		}
		q := make(l, opt)
		for _, f := range check.Check(q) {
			t.Error(f)
		}
		for _, s := range q.Short { // interrupted or not, there is a plan of all that the fabric gives
			if len(l.Fabrics[s.Fabric].Stock) == 0 && s.Length > 0 {
				t.Errorf("%d: short of what is still to be bought", s.Fabric)
			}
		}
	})
}

// The same list gives the same bytes, on one processor and on two.
func TestSameBytes(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(0))
	bytesOf := func(l *cutlist.List, opt Options, processors int) string {
		runtime.GOMAXPROCS(processors)
		var b bytes.Buffer
		if err := report.JSON(&b, Make(l, opt)); err != nil {
			t.Fatal(err)
		}
		return b.String()
	}
	rapid.Check(t, func(t *rapid.T) {
		l, opt := drawList(t), Options{Effort: drawEffort(t), First: "A"}
		l.Lines[0].Label = "A"
		if bytesOf(l, opt, 1) != bytesOf(l, opt, 2) {
			t.Error("another plan on two processors")
		}
	})
}

// What is less can't need more: of a list with fewer pieces, on a larger mat
// or with a smaller gap, no more loads can be proved to be needed than the
// plan of the whole list takes. (That its plan takes no more is not promised:
// the search may find less there.)
func TestLessNeedsNoMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := drawList(t)
		whole := Make(l, Options{Effort: rect.Quick})
		if len(whole.Short) > 0 {
			t.Skip("not all of it is planned")
		}
		less := *l
		less.Lines = slices.Clone(l.Lines)
		switch rapid.IntRange(0, 2).Draw(t, "less") {
		case 0:
			i := rapid.IntRange(0, len(l.Lines)-1).Draw(t, "line")
			less.Lines[i].Count = rapid.IntRange(min(1, l.Lines[i].Count), l.Lines[i].Count).Draw(t, "count")
		case 1:
			less.Gap /= 2
		case 2:
			more := eighths(rapid.IntRange(1, 40).Draw(t, "more"))
			less.Mat = cutlist.Mat{Width: l.Mat.Width + more, Height: l.Mat.Height + more,
				UsableWidth: l.Mat.UsableWidth + more, UsableHeight: l.Mat.UsableHeight + more}
		}
		if q := Make(&less, Options{Effort: drawEffort(t)}); q.Fewest.Loads > len(whole.Loads) {
			t.Errorf("%d loads are said to be the fewest for less than %d loads hold", q.Fewest.Loads, len(whole.Loads))
		}
	})
}
