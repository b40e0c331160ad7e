package edit

import (
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.org/matside/plan/cutlist"
)

// harbour is the cut list of the contract's first page.
const harbour = `quilt Harbour Lights            # a comment runs to the end of its line
units in                        # for every length written without a unit
seam 1/4
mat 12 x 12 usable 11 x 11

fabric Ink, 42 in x 2 yd
fabric Sand, 4 of 18 x 21       # four fat quarters
fabric Sailcloth, 42 in x 1 1/2 yd, one-way, sheds

cut from Ink
24 squares 2 1/2 for A
8 rectangles 2 1/2 x 4 1/2 for B

cut from Sand
12 half-square triangles 3 finished for C
8 quarter-square triangles 5 1/4

cut from Sailcloth
6 rectangles 3 x 6, lengthwise
2 rectangles 4 x 40 for border, by hand, lengthwise
binding 2 1/2 around 44 x 52
`

func texts(t testing.TB) []string {
	all := []string{"", "\n", "quilt A", "\ufeffquilt A\r\n# x\r\nfabric F", harbour, strings.ReplaceAll(harbour, "\n", "\r\n")}
	for _, pattern := range []string{"/*.cutlist", "/broken/*.cutlist"} {
		files, err := filepath.Glob("../../../testdata/cutlists" + pattern)
		if err != nil || len(files) == 0 {
			t.Fatalf("no cut lists: %v", err)
		}
		for _, f := range files {
			text, err := os.ReadFile(f)
			if err != nil {
				t.Fatal(err)
			}
			all = append(all, string(text))
		}
	}
	return all
}

func TestApartAndWritten(t *testing.T) {
	for _, c := range []struct {
		line string
		want cutlist.Parts
	}{
		{"24 squares 2 1/2 for A # two dozen", cutlist.Parts{Says: cutlist.SaysPiece, Count: "24", Shape: "square", Size: "2 1/2", Label: "A"}},
		{"1 Half Hexagon side 1-1/2 finished, fussy, any grain", cutlist.Parts{Says: cutlist.SaysPiece, Count: "1", Shape: "half hexagon", Size: "side 1-1/2", Finished: true, Attributes: []string{"any grain", "fussy"}}},
		{"6 diamonds 45 2½", cutlist.Parts{Says: cutlist.SaysPiece, Count: "6", Shape: "diamond", Degrees: 45, Size: "2½"}},
		{`4 outlines "Leaf for two" finished for "a, b"`, cutlist.Parts{Says: cutlist.SaysPiece, Count: "4", Shape: "outline", Name: "Leaf for two", Finished: true, Label: "a, b"}},
		{"3 strips 2 1/2 in for sashing", cutlist.Parts{Says: cutlist.SaysStrips, Count: "3", Shape: "strip", Size: "2 1/2 in", Label: "sashing"}},
		{"binding 2 1/2 around 44 x 52", cutlist.Parts{Says: cutlist.SaysBinding, Size: "2 1/2 around 44 x 52"}},
		{`fabric "Plum, dark", 42" x 2 yd, 4 of 18 x 21, sheds, shrinks 3% x 5%, cutter setting "a, b" # c`, cutlist.Parts{Says: cutlist.SaysFabric, Name: "Plum, dark",
			Stock: []string{`42" x 2 yd`, "4 of 18 x 21"}, Attributes: []string{"sheds", "shrinks 3% x 5%", `cutter setting "a, b"`}}},
		{"cut from Ink", cutlist.Parts{Says: cutlist.SaysCutFrom, Name: "Ink"}},
		{"mat 12 x 12 usable 11 x 11", cutlist.Parts{Says: cutlist.SaysSetting, Name: "mat", Rest: "12 x 12 usable 11 x 11"}},
		{"outline Leaf: 0,0 3,0 3,2 # y up", cutlist.Parts{Says: cutlist.SaysOutline, Name: "Leaf", Rest: ": 0,0 3,0 3,2"}},
		{`outline Leaf from "a#b.svg"`, cutlist.Parts{Says: cutlist.SaysOutline, Name: "Leaf", Rest: `from "a#b.svg"`}},
		{"units cm", cutlist.Parts{Says: cutlist.SaysUnits, Name: "units", Rest: "cm"}},
		{"   # nothing", cutlist.Parts{}},
	} {
		got := cutlist.Apart(c.line)
		if got.Wrong {
			t.Errorf("%q is taken for a mistake", c.line)
		}
		c.want.From, c.want.To = got.From, got.To
		if !reflect.DeepEqual(got, c.want) {
			t.Errorf("%q:\ngot  %+v\nwant %+v", c.line, got, c.want)
		}
		again := cutlist.Apart(Write(got))
		again.From, again.To = got.From, got.To
		if !reflect.DeepEqual(again, got) {
			t.Errorf("%q is written %q and reads as %+v", c.line, Write(got), again)
		}
	}
}

// (1), and every statement ends where its comment begins.
func TestUntouchedTextIsTheSame(t *testing.T) {
	for _, text := range texts(t) {
		d := Of(text)
		if d.String() != text {
			t.Errorf("%.40q comes back as %.40q", text, d.String())
		}
		for n := range d.Len() {
			p := d.Parts(n)
			if d.Set(n, d.Line(n)[p.From:p.To]).String() != text {
				t.Errorf("(3) %q set to itself changes the text", d.Line(n))
			}
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOf(rapid.RuneFrom([]rune("a #\"\r\n,4½\ufeff\x00"))).Draw(t, "text")
		if got := Of(text).String(); got != text {
			t.Fatalf("%q comes back as %q", text, got)
		}
	})
}

// What is written down reads back, in a whole cut list too.
func TestWriteAndRead(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fabric, piece := anyFabric(t), anyPiece(t)
		for _, want := range []cutlist.Parts{fabric, piece} {
			got := cutlist.Apart(Write(want) + rapid.SampledFrom([]string{"", " # x", "\t#\"", "#"}).Draw(t, "comment"))
			got.From, got.To = 0, 0
			if !reflect.DeepEqual(got, want) {
				t.Fatalf("%q\nreads as %+v\nwas      %+v", Write(want), got, want)
			}
		}
		d := Of("quilt Q\nmat 300 x 300\n")
		d, _ = d.AddFabric(Write(fabric))
		d, _ = d.AddPiece(fabric.Name, Write(piece))
		l, err := cutlist.Read("a.cutlist", []byte(d.String()), nil)
		if err != nil {
			t.Fatalf("%s\n%v", d, err)
		}
		if l.Fabrics[0].Name != fabric.Name || len(l.Fabrics[0].Stock) != len(fabric.Stock) || l.Lines[0].Label != piece.Label ||
			l.Lines[0].Shape != piece.Shape || l.Lines[0].Trimmed {
			t.Fatalf("%s\nreads as %+v", d, l)
		}
	})
}

var anyName = rapid.Custom(func(t *rapid.T) string {
	word := rapid.OneOf(rapid.StringMatching(`[A-Za-z0-9#:;.,/½é雨'-]{1,6}`), rapid.SampledFrom([]string{"for", "finished", "by", "hand", "from", "x", "=", "any", "grain"}))
	return strings.Join(rapid.SliceOfN(word, 1, 3).Draw(t, "words"), rapid.SampledFrom([]string{" ", "  "}).Draw(t, "space"))
})

func anyFabric(t *rapid.T) cutlist.Parts {
	p := cutlist.Parts{Says: cutlist.SaysFabric, Name: anyName.Draw(t, "name")}
	p.Stock = rapid.SliceOfN(rapid.SampledFrom([]string{"42 in x 2 yd", "42\" x 36\"", "18 by 21", "40 × 1 m"}), 0, 3).Draw(t, "stock")
	p.Attributes = rapid.SliceOfNDistinct(rapid.SampledFrom([]string{"one-way", "sheds", "face down", "shrinks 3% x 2.5%", "cutter setting \"a, b\""}), 0, 3, rapid.ID[string]).Draw(t, "attributes")
	return tidy(p)
}

func anyPiece(t *rapid.T) cutlist.Parts {
	p := cutlist.Parts{Says: cutlist.SaysPiece, Count: rapid.SampledFrom([]string{"1", "2", "24"}).Draw(t, "count")}
	p.Shape = rapid.SampledFrom([]string{"square", "hexagon", "half-square triangle", "diamond"}).Draw(t, "shape")
	p.Size = rapid.SampledFrom([]string{"2 1/2", "2.5 in", "3½", "65 mm"}).Draw(t, "size")
	if p.Shape == "hexagon" {
		p.Size = rapid.SampledFrom([]string{"", "side ", "height "}).Draw(t, "measure") + p.Size
	}
	if p.Shape == "diamond" {
		p.Degrees = rapid.SampledFrom([]int{45, 60}).Draw(t, "degrees")
	}
	p.Finished = rapid.Bool().Draw(t, "finished")
	if rapid.Bool().Draw(t, "labelled") {
		p.Label = anyName.Draw(t, "label")
	}
	p.Attributes = rapid.SampledFrom([][]string{nil, {"lengthwise"}, {"any grain", "fussy"}}).Draw(t, "attributes")
	return tidy(p)
}

func tidy(p cutlist.Parts) cutlist.Parts {
	if len(p.Stock) == 0 {
		p.Stock = nil
	}
	if len(p.Attributes) == 0 {
		p.Attributes = nil
	}
	return p
}

// (2) and (4): an edit of one line leaves the other bytes alone.
func TestAnEditLeavesTheRestAlone(t *testing.T) {
	all := texts(t)
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.SampledFrom(all).Draw(t, "text")
		d := Of(text)
		if d.Len() == 0 {
			return
		}
		n := rapid.IntRange(0, d.Len()-1).Draw(t, "line")
		before, after := lines(d, 0, n), lines(d, n+1, d.Len())
		comment, indent := d.Comment(n), d.Line(n)[:d.Parts(n).From]
		const says = "7 hexagons 1 1/2, fussy"
		set := d.Set(n, says)
		if got := set.String(); !strings.HasPrefix(got, before) || !strings.HasSuffix(got, after) || set.Len() != d.Len() {
			t.Fatalf("setting line %d changed others:\n%s", n, got)
		}
		if got := set.Line(n); !strings.HasPrefix(got, indent+says) || set.Comment(n) != comment {
			t.Fatalf("%q became %q", d.Line(n), got)
		}
		in := d.Insert(n, says)
		if got := lines(in, 0, n); got != before {
			t.Fatalf("inserting before line %d changed those above:\n%s", n, got)
		}
		if got := in.Remove(n).String(); got != text {
			t.Fatalf("inserted and removed is not the same:\n%s", got)
		}
		out := d.Remove(n).String()
		if !strings.HasPrefix(out, before) || !strings.HasSuffix(out, after) || !strings.Contains(out, comment) {
			t.Fatalf("removing line %d changed others:\n%s", n, out)
		}
		if d.String() != text {
			t.Fatal("an edit changed the Doc it was made of")
		}
	})
}

func lines(d Doc, from, to int) string {
	part := Doc{mark: d.mark, lines: d.lines[from:to]}
	if from > 0 {
		part.mark = ""
	}
	return part.String()
}

// TestComment: the comment starts where the reader says, also behind inch marks
// that might be quotation marks.
func TestComment(t *testing.T) {
	for line, want := range map[string]string{
		"4 squares 2 # four":                        "# four",
		"4 squares 2 \" for A # the \"small\" ones": "# the \"small\" ones",
		"cut from \"a # b\" # c":                    "# c",
		"squaers \"a # b\" # c":                     "# c",
		"4 squares 2":                               "",
	} {
		if got := Of(line).Comment(0); got != want {
			t.Errorf("%s: %q, want %q", line, got, want)
		}
	}
}

func TestPlacesOfNewLines(t *testing.T) {
	d := Of(harbour)
	d, n := d.AddFabric("fabric Foam")
	if n != 8 || d.Line(7) != "fabric Sailcloth, 42 in x 1 1/2 yd, one-way, sheds" {
		t.Errorf("the fabric stands in line %d:\n%s", n, d)
	}
	d, n = d.AddPiece("Ink", "4 squares 3")
	if d.Line(n-1) != "8 rectangles 2 1/2 x 4 1/2 for B" {
		t.Errorf("the piece stands in line %d:\n%s", n, d)
	}
	d, n = d.AddPiece("Foam", "5 hexagons 1")
	if d.Line(n-1) != "cut from Foam" || d.Line(n-2) != "" {
		t.Errorf("the piece of a new fabric stands in line %d:\n%s", n, d)
	}
	if l, err := cutlist.Read("a", []byte(d.String()), nil); err != nil || len(l.Lines) != 9 {
		t.Errorf("%v", err)
	}
	d = d.Rename("Sand", "Sand, pale")
	if l, err := cutlist.Read("a", []byte(d.String()), nil); err != nil || l.Fabrics[1].Name != "Sand, pale" {
		t.Errorf("renamed: %v\n%s", err, d)
	}
	if !strings.Contains(d.String(), "fabric \"Sand, pale\", 4 of 18 x 21       # four fat quarters\n") {
		t.Errorf("the comment behind the fabric moved:\n%s", d)
	}
}

func FuzzApart(f *testing.F) {
	for _, text := range texts(f) {
		for _, line := range strings.Split(text, "\n") {
			f.Add(line)
		}
	}
	f.Fuzz(func(t *testing.T, line string) {
		if strings.ContainsAny(line, "\n") || strings.HasPrefix(line, "\ufeff") {
			return
		}
		d := Of(line)
		if d.Len() == 0 {
			return
		}
		p := d.Parts(0)
		if p.From < 0 || p.From > p.To || p.To > len(d.Line(0)) {
			t.Fatalf("%q: words from %d to %d", line, p.From, p.To)
		}
		if d.Set(0, d.Line(0)[p.From:p.To]).String() != line {
			t.Fatalf("%q set to itself changes", line)
		}
	})
}
