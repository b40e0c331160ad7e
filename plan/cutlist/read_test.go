package cutlist

import (
	"errors"
	"fmt"
	"os"
	"reflect"
	"strings"
	"testing"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// read reads a cut list that must be without a mistake.
func read(t *testing.T, text string) *List {
	t.Helper()
	l, err := Read("test.cutlist", []byte(text), nil)
	if err != nil {
		t.Fatalf("%s\n%v", text, err)
	}
	return l
}

const in = length.Inch

// TestContract reads the example of the contract, every value of it.
func TestContract(t *testing.T) {
	l := read(t, `quilt Harbour Lights            # a comment runs to the end of its line
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
`)
	quarter := Panel{18 * in, 21 * in}
	want := &List{
		Quilt: "Harbour Lights", Seam: in / 4, Margin: in / 4, Mat: Mat{12 * in, 12 * in, 11 * in, 11 * in},
		Fabrics: []Fabric{
			{Name: "Ink", Line: 6, Stock: []Panel{{42 * in, 72 * in}}},
			{Name: "Sand", Line: 7, Stock: []Panel{quarter, quarter, quarter, quarter}},
			{Name: "Sailcloth", Line: 8, Stock: []Panel{{42 * in, 54 * in}}, OneWay: true, Sheds: true},
		},
		Lines: []Line{
			{Number: 11, Count: 24, Shape: "square", Size: "2 1/2", Label: "A", Outline: outline.Rect(0, 0, in*5/2, in*5/2)},
			{Number: 12, Count: 8, Shape: "rectangle", Size: "2 1/2 x 4 1/2", Label: "B", Outline: outline.Rect(0, 0, in*5/2, in*9/2)},
			{Number: 15, Fabric: 1, Count: 12, Shape: "half-square triangle", Label: "C", Size: "3.8536"},
			{Number: 16, Fabric: 1, Count: 8, Shape: "quarter-square triangle", Size: "5 1/4"},
			{Number: 19, Fabric: 2, Count: 6, Shape: "rectangle", Size: "3 x 6", Grain: Lengthwise, Outline: outline.Rect(0, 0, 3*in, 6*in)},
			{Number: 20, Fabric: 2, Kind: ByHand, Count: 2, Shape: "rectangle", Size: "4 x 40", Label: "border", Grain: Lengthwise, Outline: outline.Rect(0, 0, 4*in, 40*in)},
			{Number: 21, Fabric: 2, Kind: Binding, Shape: "binding", Size: "2 1/2 around 44 x 52", StripWidth: in * 5 / 2, Length: 202 * in},
		},
	}
	// The triangles' corners are plan/shape's business: here their boxes count.
	for i, box := range map[int]outline.Point{2: {X: 97_880_256, Y: 97_880_256}, 3: {X: in * 21 / 4, Y: in * 21 / 8}} {
		b := l.Lines[i].Outline.Bounds()
		if b.Min != (outline.Point{}) || b.Max != box {
			t.Errorf("line %d is %v", l.Lines[i].Number, b)
		}
		want.Lines[i].Outline = l.Lines[i].Outline
	}
	if !reflect.DeepEqual(l, want) {
		t.Errorf("read\n%+v\nwant\n%+v", l, want)
	}
}

// TestLeftOut: what a list is when it says as little as can be.
func TestLeftOut(t *testing.T) {
	l := read(t, "quilt Q\nfabric F\ncut from F\n1 square 2")
	want := &List{Quilt: "Q", Seam: in / 4, Margin: in / 4, Mat: Mat{12 * in, 12 * in, 11 * in, 11 * in},
		Fabrics: []Fabric{{Name: "F", Line: 2}},
		Lines:   []Line{{Number: 4, Count: 1, Shape: "square", Size: "2", Outline: outline.Rect(0, 0, 2*in, 2*in)}}}
	if !reflect.DeepEqual(l, want) {
		t.Errorf("read %+v", l)
	}
}

// TestSettings: settings hold wherever they stand, units below them only.
func TestSettings(t *testing.T) {
	l := read(t, "\ufeffQUILT \"Night, and Day\" # \"\r\n"+
		"Cut FROM F\r\n1 Square 1\r\nUnits CM\r\n2 squares 2.54\r\nunits mm\r\n3 squares 25.4 FINISHED\r\nunit inches\r\n4 squares 1\r\n"+
		"fabric F\r\nseams ½\r\ngap 1/8\r\nmargins 10 mm\r\nallowance ruler\r\nmat 12 BY 24\r\n")
	if l.Quilt != "Night, and Day" || l.Unit != length.Cm || l.Seam != in/2 || l.Gap != in/8 || l.Margin != length.Centimetre || !l.Ruler {
		t.Errorf("settings are %+v", l)
	}
	if l.Mat != (Mat{12 * in, 24 * in, 11 * in, 23 * in}) {
		t.Errorf("mat is %+v", l.Mat)
	}
	for i, want := range []string{"1 square 2.54", "2 squares 2.54", "3 squares 5.08", "4 squares 2.54"} {
		if got := l.Lines[i].Say(); got != want {
			t.Errorf("line %d says %q; want %q", i, got, want)
		}
	}
}

// TestFabrics: names, stock and attributes of fabrics.
func TestFabrics(t *testing.T) {
	for text, want := range map[string]Fabric{
		`Sea`:                               {Name: "Sea"},
		`"Sea, deep # 2"  # comment`:        {Name: "Sea, deep # 2"},
		"Sea \t  deep":                      {Name: "Sea deep"},
		`12" Sea, 42" x 2yd`:                {Name: `12" Sea`, Stock: []Panel{{42 * in, 72 * in}}},
		`雨, 1/2 yd by 18″`:                  {Name: "雨", Stock: []Panel{{18 * in, 18 * in}}},
		`Sea, 2 of 18x21, 42 x 1 1/8 yd`:    {Name: "Sea", Stock: []Panel{{18 * in, 21 * in}, {18 * in, 21 * in}, {42 * in, in * 81 / 2}}},
		`Sea, One Way, shed, face-down`:     {Name: "Sea", OneWay: true, Sheds: true, FaceDown: true},
		`Sea, shrinks 3% x 5 1/2 %`:         {Name: "Sea", ShrinkAcross: 30_000, ShrinkAlong: 55_000},
		`Sea, shrink 0.5% x 0%, 18 x 21`:    {Name: "Sea", ShrinkAcross: 5_000, Stock: []Panel{{18 * in, 21 * in}}},
		`Sea, cutter setting felt 3, sheds`: {Name: "Sea", Setting: "felt 3", Sheds: true},
		`Sea, cutter setting "a, b"`:        {Name: "Sea", Setting: "a, b"},
	} {
		from := want.Name
		if strings.ContainsAny(from, ",#") {
			from = `"` + from + `"`
		}
		l := read(t, "quilt Q\nfabric "+text+"\ncut from "+from+"\n1 square 2")
		want.Line = 2
		if !reflect.DeepEqual(l.Fabrics, []Fabric{want}) {
			t.Errorf("%s is\n%+v; want\n%+v", text, l.Fabrics[0], want)
		}
	}
}

// TestPieces: everything a piece line can say, and how it is said again.
func TestPieces(t *testing.T) {
	for _, c := range []struct {
		text, say string
		want      Line // Count, Shape, Size, Number and Outline are not compared
	}{
		{"24 squares 2 1/2", "24 squares 2 1/2", Line{}},
		{"1 SQUARE 2½\"", "1 square 2 1/2", Line{}},
		{"24x squares 2-1/2in", "24 squares 2 1/2", Line{}},
		{"3 squares 2 finished for A", "3 squares 2 1/2", Line{Label: "A"}},
		{"3 squares 2, for A, finished", "3 squares 2 1/2", Line{Label: "A"}},
		{`3 squares 2 for "A, finished" , fussy`, "3 squares 2", Line{Label: "A, finished", Fussy: true}},
		{"3 squares 2 for sky left", "3 squares 2", Line{Label: "sky left"}},
		{"3 squares 2 for lengthwise", "3 squares 2", Line{Label: "lengthwise"}},
		{"3 squares 2 for A for B", "3 squares 2", Line{Label: "A for B"}},
		{"3 squares 2 for 42\" # x", "3 squares 2", Line{Label: `42"`}},
		{"3 squares 2, lengthwise", "3 squares 2", Line{Grain: Lengthwise}},
		{"3 squares 2, Any-Grain", "3 squares 2", Line{Grain: AnyGrain}},
		{"3 squares 20, by hand", "3 squares 20", Line{Kind: ByHand}},
		{"1 rectangle 2x4", "1 rectangle 2 x 4", Line{}},
		{"1 rectangle 2 x 4, crosswise", "1 rectangle 2 x 4", Line{Grain: Crosswise}},
		{"2 rectangles 5.08 cm × 4", "2 rectangles 2 x 4", Line{}},
		{"2 rectangles 4 by 40 finished for border, by hand", "2 rectangles 4 1/2 x 40 1/2", Line{Kind: ByHand, Label: "border"}},
		{"8 half square triangles 3", "8 half-square triangles 3", Line{}},
		{"8 half-square triangles 3, trimmed", "8 half-square triangles 3", Line{Trimmed: true}},
		{"8 quarter-square-triangles 5 1/4", "8 quarter-square triangles 5 1/4", Line{}},
		{"8 half-rectangle triangles 3 x 5, left", "8 half-rectangle triangles 3 x 5, left", Line{}},
		{"8 equilateral triangles 3", "8 equilateral triangles 3", Line{}},
		{"8 equilateral triangles side 3", "8 equilateral triangles side 3", Line{}},
		{"8 hexagons 1 1/2", "8 hexagons 1 1/2", Line{}},
		{"8 hexagons height 3, any grain", "8 hexagons height 3", Line{Grain: AnyGrain}},
		{"8 half hexagons 2", "8 half hexagons 2", Line{}},
		{"8 half-hexagons height 2", "8 half hexagons height 2", Line{}},
		{"1 octagon 4 1/2", "1 octagon 4 1/2", Line{}},
		{"8 diamonds 60 2 1/2", "8 diamonds 60° 2 1/2", Line{}},
		{"8 diamonds 45° height 2", "8 diamonds 45° height 2", Line{}},
		{"8 diamonds 60 1/2", "8 diamonds 60° 1/2", Line{}},
		{"8 parallelograms 45 3 x 2, right", "8 parallelograms 45° 3 x 2, right", Line{}},
		{"8 trapezoids 4 x 2 x 3", "8 trapezoids 4 x 2 x 3", Line{}},
		{"8 tumblers 4 x 2 x 3, lengthwise", "8 tumblers 4 x 2 x 3", Line{Grain: Lengthwise}},
		{"1 wedge 4 x 2 x 3", "1 wedge 4 x 2 x 3", Line{}},
		{"8 circles 3", "8 circles 3", Line{}},
		{"8 quarter-circles 3", "8 quarter circles 3", Line{}},
		{"8 outlines Leaf", "8 Leaf", Line{}},
		{"8 outlines Leaf finished for A", "8 Leaf", Line{Label: "A"}},
		{"8 outlines Leaf for vase for A", "8 Leaf for vase", Line{Label: "A"}},
		{"8 outlines Leaf for vases", "8 Leaf", Line{Label: "vases"}},
		{`1 outline "Leaf" for vase`, "1 Leaf", Line{Label: "vase"}},
		{"3 strips 2 1/2 for C", "3 strips 2 1/2", Line{Kind: Strips, Label: "C", StripWidth: in * 5 / 2}},
		{"1 strip 3, for C", "1 strip 3", Line{Kind: Strips, Label: "C", StripWidth: 3 * in}},
		{"bindings 2 around 30 x 40 for edge", "binding 2 around 30 x 40", Line{Kind: Binding, Label: "edge", StripWidth: 2 * in, Length: 150 * in}},
	} {
		l := read(t, "quilt Q\noutline Leaf: 0,0 3,0 3,2\noutline Leaf for vase: 0,0 3,0 3,3\nfabric F\ncut from F\n"+c.text)
		got := l.Lines[0]
		if got.Say() != c.say {
			t.Errorf("%s says %q; want %q", c.text, got.Say(), c.say)
		}
		if onMat := got.Kind == OnMat || got.Kind == ByHand; onMat != (got.Outline != nil) || onMat && got.Outline.Bounds().Min != (outline.Point{}) {
			t.Errorf("%s has the outline %v", c.text, got.Outline)
		}
		got.Count, got.Shape, got.Size, got.Number, got.Outline = 0, "", "", 0, nil
		if !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s is %+v; want %+v", c.text, got, c.want)
		}
	}
}

// TestCrosswise: the first number lies along the lengthwise grain, and the
// square corner goes with the quarter turn to the left.
func TestCrosswise(t *testing.T) {
	l := read(t, "quilt Q\nfabric F\ncut from F\n1 rectangle 2 x 5, crosswise\n1 outline L, crosswise\noutline L: 0,0 4,0 0,1")
	if b := l.Lines[0].Outline.Bounds(); b.Max != (outline.Point{X: 5 * in, Y: 2 * in}) {
		t.Errorf("a rectangle 2 x 5 crosswise is %v", b)
	}
	// 0,0 4,0 0,1 with y up, a quarter turn counter-clockwise: 0,0 0,4 -1,0.
	if want := (outline.Outline{{X: in, Y: 4 * in}, {X: 0, Y: 4 * in}, {X: in, Y: 0}}); !outline.Same(l.Lines[1].Outline, want) {
		t.Errorf("an outline crosswise is %v; want %v", l.Lines[1].Outline, want)
	}
}

// TestOutlines: corners in every way of writing, y up, either way round.
func TestOutlines(t *testing.T) {
	want := outline.Outline{{X: 0, Y: in * 5 / 2}, {X: in * 7 / 2, Y: 0}, {X: in * 7 / 2, Y: in * 5 / 2}}
	for _, corners := range []string{
		"0,0 3 1/2,0 3 1/2,2 1/2", "3½,2½ 3½,0 0,0", "3.5,2.5 0,0 3.5,0", "0 , 0 3-1/2 , 0 7/2 , 5/2 # comment, with commas",
		"0,0 3.5 in,0 88.9 mm,6.35cm", "-3 1/2,-2 1/2 0,-2 1/2 0,0", "−3½,0 0,0 0 in,2½", "0,0 1 3/4,0 3 1/2,0 3 1/2,0 3 1/2,2 1/2",
		`0,0 3½",0" 3½",2½"`, "10 1/2,1 1/2 14,1 1/2 14,4",
	} {
		l := read(t, "quilt Q\nfabric F\ncut from F\n1 outline Leaf\noutline Leaf: "+corners)
		if got := l.Lines[0].Outline; !outline.Same(got, want) {
			t.Errorf("%s is %v; want %v", corners, got, want)
		}
	}
}

// TestSVG: an outline out of a file is the same as one from its corners, and the
// file is asked for by the name in the list.
func TestSVG(t *testing.T) {
	text := "quilt Q\nfabric F\ncut from F\n1 outline Leaf finished\noutline Leaf"
	got, err := Read("test.cutlist", []byte(text+` from "leaf.svg" # drawn`), beside)
	if err != nil {
		t.Fatal(err)
	}
	want := read(t, text+": 0,0 3,0 3,2")
	if !outline.Same(got.Lines[0].Outline, want.Lines[0].Outline) {
		t.Errorf("drawn it is %v, and by corners %v", got.Lines[0].Outline, want.Lines[0].Outline)
	}
}

// TestLimits: a list at its limits reads, one over them does not.
func TestLimits(t *testing.T) {
	const head = "quilt Q\nfabric F\ncut from F\n"
	one := "1 square 2\n"
	fits := head + strings.Repeat(one, MaxStatements-3)
	fits += strings.Repeat("#", MaxBytes-len(fits))
	if l := read(t, fits); len(l.Lines) != MaxStatements-3 {
		t.Errorf("%d lines", len(l.Lines))
	}
	read(t, head+"99999 squares 2\n1 square 100 m, by hand")
	for text, want := range map[string]string{
		fits + " ": "test.cutlist:1:1: a cut list is at most 1 MiB",
		head + strings.Repeat(one, MaxStatements-2):                                "test.cutlist:10001:1: a cut list has at most 10000 statements",
		head + "100000 squares 2\n1 square 2":                                      "test.cutlist:5:1: a cut list has at most 100000 pieces",
		head + "1 square 100.0001 m, by hand":                                      "test.cutlist:4:10: a length is at most 100 m",
		head + one + "fabric G, 6000 of 18 x 21\nfabric H, 1 x 1, 4000 of 18 x 21": "test.cutlist:6:18: a cut list has at most 10000 panels",
		head + "1 outline O\noutline O: 0,0" + strings.Repeat(" 1,0", 500):         "test.cutlist:5:12: an outline has at most 500 corners",
	} {
		l, err := Read("test.cutlist", []byte(text), nil)
		var mistakes Mistakes
		if l != nil || !errors.As(err, &mistakes) || !strings.HasPrefix(err.Error(), want) {
			t.Errorf("%.60s…: %.200v; want %s", text, err, want)
		}
	}
}

// TestMany: a hundred mistakes are told, and the number of the others.
func TestMany(t *testing.T) {
	_, err := Read("test.cutlist", []byte("quilt Q\n"+strings.Repeat("squaers\n", 150)), nil)
	var mistakes Mistakes
	if !errors.As(err, &mistakes) || len(mistakes) != 150 || strings.Count(err.Error(), "test.cutlist:") != 100 || !strings.HasSuffix(err.Error(), "\nand 50 mistakes more") {
		t.Errorf("%d mistakes, told as %s", len(mistakes), err)
	}
	_, err = Read("test.cutlist", []byte("quilt Q\nfabric F\ncut from F\n1 square 2"+strings.Repeat(", big", 50)), nil)
	if !errors.As(err, &mistakes) || len(mistakes) != mistakesOnALine {
		t.Errorf("%d mistakes of one line", len(mistakes))
	}
}

// TestTestdata: every cut list that is not broken reads without a mistake.
func TestTestdata(t *testing.T) {
	entries, err := os.ReadDir(testdata)
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, e := range entries {
		if !strings.HasSuffix(e.Name(), ".cutlist") {
			continue
		}
		n++
		text, err := os.ReadFile(testdata + "/" + e.Name())
		if err != nil {
			t.Fatal(err)
		}
		if _, err := Read(e.Name(), text, nil); err != nil {
			t.Error(err)
		}
	}
	if n == 0 {
		t.Error("no cut lists")
	}
}

func ExampleMistakes() {
	_, err := Read("star.cutlist", []byte("quilt Evening Star\nfabric Ink\ncut from Ink\n24 squaers 2 1/2 for A"), nil)
	fmt.Println(err)
	// Output:
	// star.cutlist:4:4: there is no shape `squaers`
	//     24 squaers 2 1/2 for A
	//        ^^^^^^^
	//     did you mean `squares`?
}
