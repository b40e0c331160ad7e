package form

import (
	"encoding/json"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.org/matside/plan/cutlist"
)

// do goes through a form: "type TEXT" fills the field anew, "choose WORD"
// puts the cursor on a choice, "mark WORD" marks one, "row TEXT" puts the
// cursor on the row that holds TEXT; the rest are the names of the methods.
func do(t failer, f Form, steps ...string) Form {
	t.Helper()
	for _, s := range steps {
		word, rest, _ := strings.Cut(s, " ")
		switch word {
		case "type":
			f = f.Edit(func(Field) Field { return Field{}.Type(rest) }).Answer()
		case "choose", "mark":
			f = onto(t, f, rest)
			if word == "mark" {
				f = f.Toggle()
			} else {
				f = f.Answer()
			}
		case "row":
			f = f.to(func(r Row) bool { return r.Kind == Statement && strings.Contains(r.Says, rest) })
		case "add":
			f = f.to(func(r Row) bool { return r.Kind == AddPiece && r.Fabric == rest }).Enter()
		case "fabric":
			f = f.to(func(r Row) bool { return r.Kind == AddFabric }).Enter()
		case "setting":
			f = f.to(func(r Row) bool { return r.Kind == AddSetting }).Enter()
		case "enter":
			f = f.Enter()
		case "answer":
			f = f.Answer()
		case "previous":
			f = f.Previous()
		case "leave":
			f = f.Leave()
		case "remove":
			f = f.Remove()
		case "undo":
			f, _ = f.Undo()
		default:
			t.Fatalf("no step %q", s)
		}
	}
	return f
}

type failer interface {
	Helper()
	Fatalf(string, ...any)
}

func onto(t failer, f Form, choice string) Form {
	t.Helper()
	for range f.Ask.Question().Options {
		if f.Ask.Question().Options[f.Ask.At] == choice {
			return f
		}
		f = f.Choose(1)
	}
	t.Fatalf("%q: no choice %q in %v", f.Ask.Question().Name, choice, f.Ask.Question().Options)
	return f
}

func TestAListFromNothing(t *testing.T) {
	f := do(t, New(),
		"type Harbour Lights, again",
		"type Ink", "choose yardage", "type 42 in x 2 yd", "answer",
		"add Ink", "choose square", "type 24", "type 2 1/2", "choose cut", "type A", "answer",
		"add Ink", "choose half-rectangle triangle", "type 8", "type 3 x 5", "choose finished", "choose right", "type ", "mark trimmed", "answer",
		"fabric", "type Sand", "choose fat quarters", "answer", "mark one-way", "mark cutter setting", "answer", "type woven, thick",
		"add Sand", "choose diamond 60", "type 6", "type 2 1/2", "choose cut", "type ", "answer",
		"add Sand", "choose binding", "type 2 1/2 around 44 x 52", "type ",
		"setting", "choose seam", "answer",
	)
	want := `quilt "Harbour Lights, again"
seam 1/4
fabric Ink, 42 in x 2 yd
fabric Sand, 4 of 18 x 21, one-way, cutter setting "woven, thick"

cut from Ink
24 squares 2 1/2 for A
8 half-rectangle triangles 3 x 5 finished, right, trimmed

cut from Sand
6 diamonds 60 2 1/2
binding 2 1/2 around 44 x 52
`
	if f.Text() != want {
		t.Errorf("\n%s\nwant\n%s", f.Text(), want)
	}
	if l := f.List(); l == nil || len(l.Lines) != 4 || f.Ask != nil {
		t.Errorf("%v", f.Mistakes())
	}
}

func TestAnOldListKeepsItsCommentsAndOrder(t *testing.T) {
	text := "# mine\r\nQuilt  Lamp # the lamp\r\nFABRIC Plum, 42 x 54 # shop\r\n\r\ncut from Plum\r\n\t12 Squares 2.5 for A   # twelve\r\n3 squares 4\r\n"
	f := Of("lamp.cutlist", text, nil)
	if !f.Saved() || f.Text() != text {
		t.Fatal("opening changes it")
	}
	same := do(t, f, "row 12 Squares", "enter", "answer", "answer", "answer", "answer", "answer", "answer")
	if got := same.Text(); got != strings.Replace(text, "12 Squares 2.5", "12 squares 2.5", 1) {
		t.Errorf("answered with what it was:\n%s", got)
	}
	f = do(t, f, "row 12 Squares", "enter", "answer", "type 14", "answer", "answer", "answer", "answer", "row FABRIC", "enter", "type Plum, dark", "answer", "answer")
	want := "# mine\r\nQuilt  Lamp # the lamp\r\nfabric \"Plum, dark\", 42 x 54 # shop\r\n\r\ncut from \"Plum, dark\"\r\n\t14 squares 2.5 for A   # twelve\r\n3 squares 4\r\n"
	if f.Text() != want || f.Saved() {
		t.Errorf("\n%q\nwant\n%q", f.Text(), want)
	}
	f = do(t, f, "undo", "undo")
	if f.Text() != text {
		t.Errorf("taken back:\n%s", f.Text())
	}
}

func TestMistakesAreTheReadersOwn(t *testing.T) {
	f := do(t, New(), "type Lamp", "type Plum", "choose yardage")
	f = do(t, f, "type 42 in x 2 yrd")
	m, wrong := f.Wrong()
	if !wrong || !strings.Contains(m.What.String()+m.Hint.String(), "yd") || f.Ask.Question().Name != "stock" {
		t.Errorf("%+v", m)
	}
	f = do(t, f, "type 42 in x 2 yd", "answer", "add Plum", "choose hexagon", "type many")
	if _, wrong := f.Wrong(); !wrong {
		t.Error("many hexagons are no count")
	}
	f = do(t, f, "type 3", "type 30")
	if m, _ := f.Wrong(); !strings.Contains(m.What.String(), "the mat has room for") {
		t.Errorf("a piece that does not fit: %+v", m)
	}
	f = do(t, f, "type 2 1/2", "answer", "answer", "answer", "fabric", "type Plum")
	if m, _ := f.Wrong(); !strings.Contains(m.What.String(), "has this name already") {
		t.Errorf("a second fabric of one name: %+v", m)
	}
}

// A border is no mistake: it is cut by hand, and marked so at once.
func TestLargeRectanglesAreCutByHand(t *testing.T) {
	f := do(t, New(), "type Lamp", "type Plum", "choose nothing yet", "answer", "add Plum", "choose rectangle", "type 2", "type 4 x 40")
	if f.Ask.Question().Name != "finished" || !slices.Contains(f.Ask.Marks, "by hand") {
		t.Fatalf("at %q, %v", f.Ask.Question().Name, f.Ask.Marks)
	}
	f = do(t, f, "choose cut", "type border", "answer")
	if f.Ask != nil || f.List() == nil || f.List().Lines[0].Kind != cutlist.ByHand {
		t.Errorf("%v\n%s", f.Mistakes(), f.Text())
	}
}

func TestNothingHalfAnsweredIsLost(t *testing.T) {
	f := do(t, New(), "type Lamp", "type Plum", "choose nothing yet", "answer", "add Plum", "choose hexagon", "type 7", "leave")
	if r := f.Row(); r.Kind != AddPiece || !f.Parked(r) || f.Saved() {
		t.Errorf("%+v", f.Park)
	}
	data, err := f.Keep()
	if err != nil {
		t.Fatal(err)
	}
	again, err := Restore(data)
	if err != nil || again.Text() != f.Text() {
		t.Fatalf("%v\n%s", err, again.Text())
	}
	again = do(t, again, "fabric", "type Oat", "choose nothing yet", "answer", "add Plum")
	if q := again.Ask.Question().Name; q != "size" || again.Ask.Parts.Count != "7" {
		t.Errorf("goes on at %q with %+v", q, again.Ask.Parts)
	}
	again = do(t, again, "type side 1 1/2", "answer", "answer", "answer")
	if !strings.Contains(again.Text(), "cut from Plum\n7 hexagons side 1 1/2\n") {
		t.Error(again.Text())
	}
}

// The numbers are those of the shape, and of the trade's charts: 3 finished
// is 3 7/8 by the book (karencombs.com and others, see plan/shape).
func TestTheOddOneIsExplained(t *testing.T) {
	f := do(t, New(), "type Lamp", "type Plum", "choose nothing yet", "answer", "add Plum", "choose half-square triangle", "type 4", "type 3")
	p, ok := f.Preview()
	if f = f.Choose(1); !ok || f.Ask.Question().Options[f.Ask.At] != "finished" {
		t.Fatalf("at %+v", f.Ask)
	}
	if p, ok = f.Preview(); !ok || p.Finished != "3" || p.Line.Size != "3.8536" || p.Book != "3 7/8" || p.Ruler {
		t.Errorf("%+v", p)
	}
	f = do(t, f, "answer", "leave", "setting", "choose allowance", "answer", "add Plum")
	if p, ok = f.Preview(); !ok || p.Line.Size != "3 7/8" || !p.Ruler {
		t.Errorf("by the book: %+v", p)
	}
}

func TestField(t *testing.T) {
	f := Field{}.Type("2½ yd 漢e\u0301")
	if f = f.Erase(); f.Text() != "2½ yd 漢" {
		t.Errorf("%q", f.Text())
	}
	f = f.Left().Left().Type("x").Home().Delete().Right().Type("!")
	if f.Text() != "½! ydx 漢" || f.Value() != "½! ydx 漢" || f.Before != "½!" {
		t.Errorf("%q, before the cursor %q", f.Text(), f.Before)
	}
	f = Field{}.Type(strings.Repeat("漢", 1000))
	if n := len(f.Text()); n > longest || n < longest-3 {
		t.Errorf("%d bytes", n)
	}
}

// However she goes through the form, whatever it writes on the list can be
// read where it stands, and it comes back from being kept as it was.
func TestRandomForms(t *testing.T) {
	demo, err := os.ReadFile("../../testdata/cutlists/first-nine-patch.cutlist")
	if err != nil {
		t.Fatal(err)
	}
	values := []string{"", "A", "Ink, dark", "2 1/2", "3", "24", "2 1/2 x 4 1/2", "42 in x 2 yd", "4 of 18 x 21", "side 2", "1 around 9 x 9", "#", `"`, "fussy", "漢", "seam 1/2", "units cm", "mat 24 x 24"}
	rapid.Check(t, func(t *rapid.T) {
		f := New()
		if rapid.Bool().Draw(t, "old") {
			f = Of("a.cutlist", string(demo), nil)
		}
		for range rapid.IntRange(1, 60).Draw(t, "steps") {
			switch rapid.IntRange(0, 12).Draw(t, "what") {
			case 0:
				f = f.Previous()
			case 1:
				f = f.Leave()
			case 2:
				f = f.Move(rapid.IntRange(-9, 9).Draw(t, "rows"))
			case 3:
				f = f.Enter()
			case 4:
				f = f.Toggle()
			case 5:
				f = f.Choose(rapid.IntRange(-3, 3).Draw(t, "by"))
			case 6:
				f = f.Remove()
			case 7:
				f, _ = f.Undo()
			case 8:
				f = f.Drop()
			case 9, 10:
				f = f.Edit(func(Field) Field { return Filled(rapid.SampledFrom(values).Draw(t, "value")) })
			default:
				f = f.Answer()
			}
			f.Preview()
			if f.Ask != nil {
				f.Ask.Says()
				f.Wrong()
			}
			for n := range f.Doc.Len() {
				if p := f.Doc.Parts(n); p.Says == cutlist.Unclear {
					t.Fatalf("a line nobody can read was written: %q", f.Doc.Line(n))
				}
			}
			data, err := f.Keep()
			if err != nil {
				t.Fatal(err)
			}
			again, err := Restore(data)
			if err != nil || again.Text() != f.Text() || again.At != f.Move(0).At || !alike(again.Ask, f.Ask) || !alike(again.Park, f.Park) {
				t.Fatalf("kept %s\nis %+v\nwas %+v (%v)", data, again, f, err)
			}
		}
	})
}

func alike(a, b any) bool {
	x, _ := json.Marshal(a)
	y, _ := json.Marshal(b)
	return reflect.DeepEqual(x, y) || string(x) == "[]" || string(y) == "null" || string(x) == "null" && string(y) == "[]"
}

// What only squares and rectangles can be is offered for no other shape, but
// where it is marked, so that she can unmark it.
func TestByHandIsOfferedWhereItCanBe(t *testing.T) {
	for _, shape := range cutlist.Shapes() {
		for _, marks := range [][]string{nil, {"by hand"}} {
			a := Asking{Parts: cutlist.Parts{Says: cutlist.SaysPiece, Shape: shape}, Marks: marks}
			all := a.Questions()
			got := slices.Contains(all[len(all)-1].Options, "by hand")
			if want := shape == "square" || shape == "rectangle" || marks != nil; got != want {
				t.Errorf("%s, %v marked: by hand offered is %v", shape, marks, got)
			}
		}
	}
}
