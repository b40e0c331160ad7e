package plan

import (
	"testing"

	"example.org/matside/plan/check"
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/rect"
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
	for n := range rapid.IntRange(1, 8).Draw(t, "lines") {
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

// Every plan keeps the rules, whatever the list.
func TestPlansAreWithoutFault(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := drawList(t)
		q := Make(l, Options{Effort: rect.Quick})
		for _, f := range check.Check(q) {
			t.Error(f)
		}
	})
}
