package plain

import (
	"strings"
	"testing"

	"example.org/matside/session"
	"example.org/matside/tui/internal/fixture"
	"example.org/matside/tui/settings"
)

// Each test begins on the first page: 1 is the demo, 2 opens a cut list, 3
// writes one, 4 changes one.

// lamp are the answers that write six triangles of one fabric, up to the
// sheet: the quilt, the fabric, yardage, its usual size, nothing special;
// pieces from it, half-square triangles, 6, 3 finished, for star.
var lamp = []string{"3", "Lamp, again", "Ink", "1", "", "1", "4", "3", "six", "6", "3", "2", "star", "1"}

const lampWritten = "quilt \"Lamp, again\"\nfabric Ink, 42 in x 1 yd\n\ncut from Ink\n6 half-square triangles 3 finished for star\n"

func TestAListWrittenInPlainLinesAndCut(t *testing.T) {
	b, _, o, out := evening(t)
	desk := fixture.NewTable()
	o.Desk = desk
	run(t, b, 0, o, append(lamp, "1", "", "1", // save it, under that name; start cutting
		"1", "1", "1", "1", "1", "1")...) // the five steps
	if got := desk.Files[fixture.Home+"lamp-again.cutlist"]; got != lampWritten {
		t.Fatalf("saved %q\n%s", got, out)
	}
	has(t, out, "What are you making?", "What do you call the fabric?", "Which shape, from Ink?", "How many?",
		"3 finished: cut 3 7/8 by the book, 3.8536 exactly.", "Save it where?", "Saved as /home/ada/quilts/lamp-again.cutlist.",
		"6 pieces in 1 load of the mat.", "Fewer loads can't be done.", "Ink: there is enough.", "1 start cutting, 2 back to the form",
		"Load 1 of 1, fabric.", "Lamp, again is all cut.", "6 good pieces in 1 load.", "Now: 1 leave, 2 back, 3 mat washed,")
	if desk.Kept != nil {
		t.Errorf("a form that is saved is kept as unfinished: %s", desk.Kept)
	}
}

func TestWhatIsHalfWrittenIsThereAgain(t *testing.T) {
	b, _, o, out := evening(t)
	desk := fixture.NewTable()
	o.Desk = desk
	run(t, b, 0, o, lamp[:9]...) // to the count
	if desk.Kept == nil {
		t.Fatalf("nothing is kept\n%s", out)
	}
	out.Reset()
	run(t, b, 0, o, "3", "6", "3", "2", "star", "1", "1", "", "2") // goes on at the very question; saved; back to the form
	has(t, out, "Go on writing: Lamp, again: as you left it.", "3: Go on writing", "How many?", "Saved as")
	if desk.Kept != nil || desk.Files[fixture.Home+"lamp-again.cutlist"] != lampWritten {
		t.Errorf("kept %s, files %v", desk.Kept, desk.Files)
	}
}

// A file that is not what she opened is not written over unasked.
func TestAClashIsAskedAbout(t *testing.T) {
	const path, theirs = fixture.Home + "lamp-again.cutlist", "theirs\n"
	for _, c := range []struct {
		name    string
		answers []string
		hers    string // where hers is in the end, "" nowhere
		said    string
	}{
		{"another name", []string{"1", "1", ""}, fixture.Home + "lamp-again-2.cutlist", "Saved as /home/ada/quilts/lamp-again-2.cutlist."},
		{"back", []string{"1", "2", "6"}, "", "NEVER"},
		{"over it", []string{"1", "3"}, path, "Saved as " + path},
		{"take the file", []string{"1", "4"}, "", "theirs"},
	} {
		b, _, o, out := evening(t)
		desk := fixture.NewTable()
		o.Desk = desk
		o.In = strings.NewReader("")
		desk.Files[path] = lampWritten
		// Changed by hand between her opening it and her saving it.
		edited := &fixture.Late{Table: desk, Path: path, Text: theirs}
		o.Desk = edited
		run(t, b, 0, o, append([]string{"4", path, "5", "4", "7", "3", "2", "star", "1"}, c.answers...)...)
		if !strings.Contains(out.String(), "has changed since you opened it.") {
			t.Fatalf("%s: no clash\n%s", c.name, out)
		}
		if c.said != "NEVER" && !strings.Contains(out.String(), c.said) {
			t.Errorf("%s: it does not say %q\n%s", c.name, c.said, out)
		}
		for p, text := range desk.Files {
			if hers := strings.Contains(text, "\n7 "); hers != (p == c.hers) {
				t.Errorf("%s: %s holds %q", c.name, p, text)
			}
		}
	}
}

func TestWhatIsWrongIsToldInPlainLinesToo(t *testing.T) {
	b, _, o, out := evening(t)
	desk := fixture.NewTable()
	desk.Files[fixture.Home+"bad.cutlist"] = "quilt Bad\nfabric Ink\ncut from Ink\n4 squaers 3\n"
	o.Desk = desk
	run(t, b, 0, o, "2", "nowhere.cutlist", "2", "1", "2", "1", "8", "6")
	has(t, out, "In /home/ada/quilts:", "1: bad.cutlist", "2: first-nine-patch.cutlist", "That did not work.", "There are mistakes in bad.cutlist.",
		"bad.cutlist:4:3: there is no shape `squaers`", "did you mean `squares`?", "2 put it right here", "Put this right first: there is no shape `squaers`.")
}

func TestTheDemoFromTheFirstPage(t *testing.T) {
	b, _, o, out := evening(t)
	before := b.State()
	o.Desk = fixture.NewTable()
	run(t, b, 0, o, "1", "1", "1")
	has(t, out, "Try it: A made-up quilt. Nothing of it is kept.", "Getting the demo ready.", "Demo: nothing here is kept.", "Load 1 of", "press.", "Nothing of the demo is kept.")
	if after := b.State(); after.Seq != before.Seq {
		t.Error("the demo was written into her own notebook")
	}
}

// TestAChangedListIsToldBeforeItIsTaken: told in words, taken or put off, and
// what can't be read changes nothing.
func TestAChangedListIsToldBeforeItIsTaken(t *testing.T) {
	const path = fixture.Home + "lamp.cutlist"
	const old, more, bad = "quilt Lamp\nfabric Ink\ncut from Ink\n3 squares 10\n", "quilt Lamp\nfabric Ink\ncut from Ink\n5 squares 10\n", "quilt Lamp\nfabric Ink\ncut from Ink\n3 squaers 10\n"
	for _, c := range []struct {
		name, text string
		answers    []string
		asked      int
		says       []string
	}{
		{"taken", more, []string{"1", "7", "1"}, 5, []string{"2 more squares 10 of Ink.", "2 loads more.", "What is cut stays cut.", "1 take the change, 2 not now", "The change is taken.", "Load 1 of 5, press."}},
		{"put off", more, []string{"1", "7", "2", "1"}, 3, []string{"2 more squares 10 of Ink.", "Load 1 of 3, press.", "Load 1 of 3, load."}},
		{"with mistakes", bad, []string{"1", "7", "1"}, 3, []string{"There are mistakes in lamp.cutlist.", "Nothing of it is taken: all goes on as before.", "squaers", "Load 1 of 3, load."}},
	} {
		b, _, o, out := evening(t)
		desk := fixture.NewTable()
		desk.Files[path] = old
		o.Desk = &fixture.Late{Table: desk, Path: path, Text: c.text}
		id, err := desk.Take(t.Context(), b, path, nil)
		if err != nil {
			t.Fatal(err)
		}
		run(t, b, id, o, c.answers...)
		has(t, out, append([]string{"The cut list has changed.", "7 the list has changed"}, c.says...)...)
		st := b.State()
		if got := st.Quilt(id).Pieces.Asked; got != c.asked {
			t.Errorf("%s: %d pieces are to be cut, want %d\n%s", c.name, got, c.asked, out)
		}
		if n := strings.Count(out.String(), "The cut list has changed."); n != 1 {
			t.Errorf("%s: told %d times", c.name, n)
		}
	}
}

func TestBackFromQuestionToQuestion(t *testing.T) {
	b, _, o, out := evening(t)
	o.Desk = fixture.NewTable()
	run(t, b, 0, o, "3", "Lamp", "Ink", "5", "Plum", "1", "0", "5", "0", "0")
	has(t, out, "What are you making?", "0 goes back.", "What do you call the fabric?", "What do you have of Ink?", "5: back", "What do you call the fabric?", "Now: Ink.",
		"What do you have of Plum?", "How much of Plum is there?", "What do you have of Plum?", "What do you call the fabric?", "3: + a fabric (unfinished)")
}

func TestSpoiledPiecesByTheirPlace(t *testing.T) {
	b, id, o, out := evening(t)
	peel := []string{"1", "1", "1", "1", "1", "1", "1", "1", "1"} // the second load, to its peeling
	run(t, b, id, o, append(peel, "9", "9", "2 x", "2 5,8", "5", "")...)
	has(t, out, "9 say which ones, by their place", "Row 1, from the left: 4 squares 2 1/2 of Plum, line A, numbers 1 to 4.",
		"Row 2, from the left: 4 half-square triangles 2 7/8 of Oat, line B, numbers 5 to 8.", "Type a number, 0 to 8.", "Type a number, 0 to 8.",
		"Spoiled: row 1, piece 2, 1 square 2 1/2 of Plum, line A.", "Spoiled: row 2, piece 1,", "Spoiled: row 2, piece 4,", "Not spoiled: row 2, piece 1,",
		"2 pieces spoiled, to be cut again.")
	st := b.State()
	if got := st.Quilt(id).Loads[1].Spoiled; len(got) != 2 || got[0] != 1 {
		t.Errorf("spoiled %v", got)
	}
	for _, none := range []string{"0", ""} {
		b, id, o, _ := evening(t)
		run(t, b, id, o, append(peel, "9", none)...)
		if st := b.State(); st.Quilt(id).Step != session.Peel {
			t.Errorf("%q ends the step", none)
		}
	}
}

func TestStraightCutsAreTold(t *testing.T) {
	b, id, o, out := evening(t)
	run(t, b, id, o)
	has(t, out, "Cut Plum 10 1/2 x 5 1/2.", "Plum, panel 1, 42 x 54:", "Cut 1: across, 5 1/2 below the top edge.", "Cut 2: along, 10 1/2 from the left edge.")
}

func TestWhenAllIsCutSheCanStillGoBack(t *testing.T) {
	b, id, o, out := evening(t)
	run(t, b, id, o, append(make([]string, 10), "2", "6", "1", "1")...)
	has(t, out, "Lamp Room is all cut.", "One step back.", "How many are spoiled?", "1 piece spoiled")
	st := b.State()
	if p := st.Quilt(id).Pieces; p.Spoiled != 1 || p.Done != 15 {
		t.Errorf("%+v", p)
	}
}

func TestSettingsInPlainLines(t *testing.T) {
	b, id, o, out := evening(t)
	kept := o.Settings
	o.Keep = func(s settings.Settings) error { kept = s; return nil }
	run(t, b, id, o, "6", "7", "2", "2", "10", "10", "1") // inches, centimeters; English, German
	has(t, out, "2: Lengths in: as the cut list says", "2: Lengths in: inches", "2: Lengths in: centimeters", "2: Längen in: Zentimeter", "Plum zuschneiden: 26,67 x 13,97")
	if kept.Units != "cm" || kept.Language != "de" {
		t.Errorf("kept %+v", kept)
	}
}
