package cutlist

import (
	"fmt"
	"strings"
	"testing"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"pgregory.net/rapid"
)

// TestWritten: a cut list made at random, written down in one of the many ways
// there are, reads as what it was made of.
func TestWritten(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		unit := rapid.SampledFrom([]length.Unit{length.In, length.Cm, length.Mm}).Draw(t, "unit")
		fabrics := rapid.SliceOfNDistinct(anyName(), 1, 4, rapid.ID[string]).Draw(t, "fabrics")
		quilt := anyName().Draw(t, "quilt")
		text := []string{"Quilt " + written(t, quilt), "units " + unit.String()}
		var want []Line
		for i, name := range fabrics {
			text = append(text, "fabric "+written(t, name), "cut from "+written(t, name))
			for range rapid.IntRange(1, 4).Draw(t, "lines") {
				line, said := anyRectangle(t, unit)
				text = append(text, said)
				line.Number, line.Fabric = len(text), i
				want = append(want, line)
			}
		}
		joined := strings.Join(text, rapid.SampledFrom([]string{"\n", "\r\n", " # note \"\n", "\t\n"}).Draw(t, "ends"))
		l, err := Read("a.cutlist", []byte(joined), nil)
		if err != nil {
			t.Fatalf("%s\n%v", joined, err)
		}
		if l.Quilt != quilt || l.Unit != unit || fmt.Sprint(l.Lines) != fmt.Sprint(want) {
			t.Fatalf("%s\nreads as %q %+v\nwant %q %+v", joined, l.Quilt, l.Lines, quilt, want)
		}
		for i, name := range fabrics {
			if l.Fabrics[i].Name != name {
				t.Fatalf("fabric %q is called %q", name, l.Fabrics[i].Name)
			}
		}
	})
}

// anyName draws names that hold whatever a name may, with words of the contract
// among them.
func anyName() *rapid.Generator[string] {
	word := rapid.OneOf(
		rapid.StringMatching(`[A-Za-z0-9#:;.,/½é雨'-]{1,6}`),
		rapid.SampledFrom([]string{"for", "by", "from", "x", "2 1/2", "in", "left", "finished", "A"}))
	return rapid.Custom(func(t *rapid.T) string {
		return strings.Join(rapid.SliceOfN(word, 1, 3).Draw(t, "words"), " ")
	})
}

// written is a name in double quotes where it needs them, and sometimes where
// it does not.
func written(t *rapid.T, name string) string {
	words := strings.Fields(name)
	needs := strings.ContainsAny(name, ",#") || strings.ContainsAny(name[:1], ":=") || words[len(words)-1] == "finished"
	if needs || rapid.Bool().Draw(t, "quoted") {
		return `"` + name + `"`
	}
	return strings.Join(words, rapid.SampledFrom([]string{" ", "  ", "\t"}).Draw(t, "space"))
}

// anyRectangle draws a piece line of squares or rectangles and writes it down.
func anyRectangle(t *rapid.T, unit length.Unit) (Line, string) {
	side := func() length.Len { return length.Len(rapid.IntRange(1, 88*64).Draw(t, "64ths")) * length.Inch / 64 / 8 }
	say := func(l length.Len) string {
		u := rapid.SampledFrom([]length.Unit{unit, length.In, length.Mm}).Draw(t, "as")
		if u == unit && rapid.Bool().Draw(t, "bare") {
			return l.Format(unit)
		}
		return l.FormatUnit(u)
	}
	w, h := side(), side()
	count := rapid.IntRange(1, 99).Draw(t, "count")
	line := Line{Count: count, Shape: "rectangle", Size: w.Show(unit) + " x " + h.Show(unit), Outline: outline.Rect(0, 0, w, h)}
	text := fmt.Sprintf("%d rectangles %s %s %s", count, say(w), rapid.SampledFrom([]string{"x", "X", "×", "by"}).Draw(t, "times"), say(h))
	if rapid.Bool().Draw(t, "square") {
		line.Shape, line.Size, line.Outline = "square", w.Show(unit), outline.Rect(0, 0, w, w)
		text = fmt.Sprintf("%d Squares %s", count, say(w))
	}
	if rapid.Bool().Draw(t, "labelled") {
		line.Label = anyName().Draw(t, "label")
		text += rapid.SampledFrom([]string{" for ", ", for "}).Draw(t, "for") + written(t, line.Label)
	}
	if rapid.Bool().Draw(t, "lengthwise") {
		line.Grain = Lengthwise
		text += ", lengthwise"
	}
	return line, text
}
