package tui

import (
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"
	"pgregory.net/rapid"

	"example.org/matside/tui/look"
)

// written is a list of two fabrics, as keys from the first page on.
const (
	toShape   = "3 'Lamp_Room enter 'Ink enter enter enter enter enter"
	toSize    = toShape + " down down enter '12 enter"
	toList    = toSize + " '3 enter up enter 'A enter enter"
	toNaming  = toList + " p"
	toPlanned = toNaming + " enter"
)

// listFrames are the golden frames of the screens around cut lists.
var listFrames = []struct{ name, keys string }{
	{"first", ""},
	{"picker", "2"},
	{"picker-all", "2 a"},
	{"picker-mistakes", "2 up enter enter"},
	{"form-quilt", "3 'Lamp_R"},
	{"form-stock", "3 'Lamp enter 'Ink enter enter"},
	{"form-fabric-marks", "3 'Lamp enter 'Ink enter enter enter down space"},
	{"form-shape", toShape},
	{"form-size", toSize + " '3"},
	{"form-finished", toSize + " '3 enter up"},
	{"form-wrong", toSize + " '3_ft enter"},
	{"form-label", toSize + " '3 enter up enter 'star"},
	{"form-marks", toSize + " '3 enter up enter enter"},
	{"form-unfinished", toSize + " '3 esc esc esc esc"},
	{"sheet", toList},
	{"sheet-old", "2 c"},
	{"sheet-mistake", "2 up enter enter f up up"},
	{"naming", toNaming},
	{"planned", toPlanned},
	{"clash", ""},
	{"changed", ""},
	{"settings", "g down down"},
}

func TestGoldenListFrames(t *testing.T) {
	for _, g := range listFrames {
		for _, size := range sizes {
			d, _ := listDesk(t, "", g.name, g.keys, size[0], size[1])
			whole(t, g.name, size, &look.Plain, d.f.View())
			compare(t, fmt.Sprintf("%s-%dx%d", g.name, size[0], size[1]), d)
		}
		for _, l := range []*look.Look{&look.Dark, &look.Light, &look.High} {
			if g.name != "picker" && g.name != "form-finished" && g.name != "sheet" {
				continue
			}
			d, _ := listDesk(t, "", g.name, g.keys, 80, 24)
			d.looks(l, termenv.ANSI256)
			compare(t, filepath.Join(strings.ReplaceAll(l.Name, " ", "-"), g.name+"-80x24"), d)
		}
	}
}

func listDesk(t *testing.T, language, name, keys string, w, h int) (*desk, *table) {
	d, tab := atTable(t, w, h)
	d.speaks(language)
	if name == "changed" {
		// So large that one goes onto the mat at a time, whatever the planner.
		tab.Files["/home/ada/quilts/a.cutlist"] = "quilt Lamp Room\nfabric Ink\ncut from Ink\n3 squares 10\n2 hexagons 5 for star\n"
		d.does("2 enter")
		tab.edit("a.cutlist", "3 squares 10", "5 squares 10")
		tab.edit("a.cutlist", "2 hexagons 5 for", "2 hexagons 5 1/4 for")
		d.after(5 * time.Second)
		keys = "v"
	}
	if name == "clash" {
		d.does("2 c")
		tab.edit("first-nine-patch.cutlist", "12 squares", "99 squares")
		keys = "up x p"
	}
	d.does(keys)
	return d, tab
}

// What to write instead is told whole, however narrow the window; her own
// line stays in one piece, so that the mark stands under its place.
func TestALongHintIsNotCutShort(t *testing.T) {
	for _, language := range []string{"en", "de"} {
		d, tab := atTable(t, 60, 20)
		d.speaks(language)
		tab.Files["/home/ada/quilts/a.cutlist"] = "quilt Lamp Room\nfabric Ink, made of wool\ncut from Ink\n3 squares 10\n"
		d.does("2 enter")
		d.sees("fabric Ink, made of wool", "^^^^^", "NAME")
		whole(t, language, [2]int{60, 20}, &look.Plain, d.f.View())
	}
}

// speaks sets the language.
func (d *desk) speaks(language string) {
	s := d.f.settings
	s.Language = language
	d.f.use(s)
}

// edit changes a text as another program would.
func (t *table) edit(name, old, now string) {
	path := "/home/ada/quilts/" + name
	t.Files[path] = strings.Replace(t.Files[path], old, now, 1)
}

func TestAListWrittenHereAndCut(t *testing.T) {
	d, tab := atTable(t, 80, 24)
	d.does(toPlanned)
	d.sees("12 pieces in 1 load of the mat.", "Saved as /home/ada/quilts/lamp-room.cutlist.")
	want := "quilt Lamp Room\nfabric Ink, 42 in x 1 yd\n\ncut from Ink\n12 half-square triangles 3 finished for A\n"
	if got := tab.Files["/home/ada/quilts/lamp-room.cutlist"]; got != want {
		t.Errorf("saved\n%s\nwant\n%s", got, want)
	}
	if tab.Kept != nil {
		t.Errorf("a form that is saved is kept as unfinished: %s", tab.Kept)
	}
	d.does("enter")
	d.sees("Lamp Room", "load 1 of 1", "0 of 12 pieces")
	for range 5 {
		d.key("enter")
	}
	if q := d.q(); !q.Finished() || q.Pieces.Done != 12 {
		t.Errorf("%+v", q.Pieces)
	}
}

func TestAnUnfinishedFormIsThereAgain(t *testing.T) {
	for _, way := range []string{"ctrl+c", "esc esc esc backspace q"} {
		d, tab := atTable(t, 80, 24)
		d.does(toSize + " '3_1")
		d.does(way)
		if !d.quit {
			t.Fatalf("%q does not leave", way)
		}
		if err := d.f.keepForm(); err != nil {
			t.Fatal(err)
		}
		again, _ := atTable(t, 80, 24)
		again.f.desk = tab
		again.sees("Go on writing", "Lamp Room: as you left it.")
		again.does("3")
		if way == "ctrl+c" { // at the very letter
			again.sees("3 1")
			again.does("backspace backspace enter")
		} else {
			again.sees("(unfinished)")
			again.does("enter enter enter '3 enter")
		}
		again.does("enter 'A enter enter p")
		again.sees("Save it where?")
	}
}

func TestSavingNeverLosesAnything(t *testing.T) {
	d, tab := atTable(t, 80, 24)
	tab.Files["/home/ada/quilts/lamp-room.cutlist"] = "hers\n"
	d.does(toNaming)
	tab.Files["/home/ada/quilts/lamp-room-2.cutlist"] = "hers too\n" // as another program might, just now
	d.does("enter")
	d.sees("lamp-room-2.cutlist is there already.")
	d.does("enter enter")
	d.sees("Saved as /home/ada/quilts/lamp-room-2-2.cutlist.")
	if tab.Files["/home/ada/quilts/lamp-room.cutlist"] != "hers\n" || tab.Files["/home/ada/quilts/lamp-room-2.cutlist"] != "hers too\n" {
		t.Errorf("%v", tab.Files)
	}

	d, tab = atTable(t, 80, 24)
	d.does("2 c down down enter")
	tab.edit("first-nine-patch.cutlist", "12 squares", "99 squares")
	old := tab.Files["/home/ada/quilts/first-nine-patch.cutlist"]
	d.does("esc x p")
	d.sees("first-nine-patch.cutlist has changed since you opened it.")
	if tab.Files["/home/ada/quilts/first-nine-patch.cutlist"] != old {
		t.Error("written over a file that has changed")
	}
	d.does("o")
	if tab.Files["/home/ada/quilts/first-nine-patch.cutlist"] == old {
		t.Error("not written over when she said so")
	}

	d, tab = atTable(t, 80, 24)
	tab.Fail = errors.New("no space left on device")
	d.does(toPlanned)
	d.sees("NOT SAVED: no space left on device.")
	d.does("enter p enter")
	d.sees("12 pieces in 1 load of the mat.")
}

func TestAChangedListIsToldBeforeItIsTaken(t *testing.T) {
	d, tab := atTable(t, 80, 24)
	d.does("2 enter")
	d.after(10 * time.Second)
	d.sees("First Nine Patch", "load 1 of")
	before := d.q().Pieces.Asked
	tab.edit("first-nine-patch.cutlist", "12 squares 2 1/2 for A", "18 squares 2 1/2 for A")
	d.after(3 * time.Second)
	d.sees("The cut list has changed: v shows how.")
	d.does("v")
	d.sees("6 more squares 2 1/2 of Chalk.", "What is cut stays cut.")
	if d.q().Pieces.Asked != before {
		t.Fatal("taken before it was told")
	}
	d.does("backspace")
	d.after(10 * time.Second)
	d.sees("FABRIC")
	if _, ok := d.f.newsKey(d.f.view()); ok {
		t.Error("what was put off is told again")
	}
	tab.edit("first-nine-patch.cutlist", "18 squares", "16 squares")
	d.after(3 * time.Second)
	d.does("v enter")
	d.sees("The change is taken.")
	if got := d.q().Pieces.Asked; got != before+4 {
		t.Errorf("%d pieces asked for, want %d", got, before+4)
	}
	d.after(10 * time.Second)
	tab.edit("first-nine-patch.cutlist", "16 squares", "16 squaers")
	d.after(3 * time.Second)
	d.does("v")
	d.sees("There are mistakes in first-nine-patch.cutlist.", "all goes on as before", "squares")
}

func TestStillLooksAtNothing(t *testing.T) {
	d, tab := atTable(t, 80, 24)
	d.f.settings.Still = true
	d.does("2 enter")
	tab.edit("first-nine-patch.cutlist", "12 squares", "18 squares")
	d.after(time.Minute)
	if d.f.watch.news != "" {
		t.Error("a still screen looks at files")
	}
}

func TestMergedRunesAndPastesAreTyped(t *testing.T) {
	d, _ := atTable(t, 80, 24)
	d.does("3")
	d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("qLamp")})
	d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(" Room\r\n\x1b[2J漢 ½"), Paste: true})
	if s := d.f.screen.(sheet); s.form.Ask.Field.Text() != "qLamp Room [2J漢 ½" || d.quit {
		t.Errorf("%q", s.form.Ask.Field.Text())
	}
	fits(t, d)
}

// TestRandomLists: whatever keys, pastes, clicks and sizes come on the
// screens around cut lists, the frame fits, no file is lost and there is
// always a way out in two keys.
func TestRandomLists(t *testing.T) {
	keys := []string{"enter", "enter", "enter", "space", "backspace", "esc", "up", "down", "1", "2", "3", "a", "c", "p", "x", "u", "v", "?", "home", "n", "f", "o", "d"}
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.SampledFrom(append([][2]int{{61, 21}}, sizes...)).Draw(t, "size")
		d, tab := atTable(t, size[0], size[1])
		for range rapid.IntRange(1, 40).Draw(t, "length") {
			switch rapid.IntRange(0, 12).Draw(t, "kind") {
			case 0:
				d.send(tea.WindowSizeMsg{Width: rapid.IntRange(0, 220).Draw(t, "w"), Height: rapid.IntRange(0, 70).Draw(t, "h")})
			case 1:
				d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(rapid.String().Draw(t, "paste")), Paste: true})
			case 2:
				x, y := rapid.IntRange(-1, 220).Draw(t, "x"), rapid.IntRange(-1, 70).Draw(t, "y")
				d.send(tea.MouseMsg{X: x, Y: y, Action: tea.MouseActionPress, Button: tea.MouseButtonLeft})
				d.send(tea.MouseMsg{X: x, Y: y, Action: tea.MouseActionRelease})
			case 3:
				d.types(rapid.SampledFrom([]string{"3", "2 1/2", "42 in x 1 yd", "Ink", "漢字", "4 of 18 x 21", "#", "\""}).Draw(t, "text"))
			case 4:
				tab.edit("first-nine-patch.cutlist", "12 squares", rapid.SampledFrom([]string{"18 squares", "12 squaers"}).Draw(t, "edit"))
			default:
				d.send(keyMsg(rapid.SampledFrom(keys).Draw(t, "key")))
			}
			d.after(time.Duration(rapid.IntRange(0, 900).Draw(t, "gap")) * ms)
			fits(t, d)
			if d.quit {
				return
			}
		}
		if tab.Files["/home/ada/quilts/older/lamp.cutlist"] == "" || tab.Files["/home/ada/quilts/shopping.txt"] != "thread" {
			t.Fatalf("a file was lost: %v", tab.Files)
		}
		d.after(2 * time.Second)
		d.send(keyMsg("ctrl+c"))
		d.after(2 * time.Second)
		if !d.quit {
			d.send(keyMsg("ctrl+c"))
		}
		if !d.quit {
			t.Fatalf("no way out in two keys:\n%s", d.f.View())
		}
	})
}

// Every screen in German: it fits at every size, and some are kept.
func TestGermanFrames(t *testing.T) {
	kept := []string{"fabric", "peel-which", "mats", "days", "form-finished", "planned", "changed", "settings", "picker-mistakes", "form-wrong", "loads"}
	for _, size := range sizes {
		see := func(name string, d *desk) {
			d.speaks("de") // a setting of the frame's may have taken it away
			fits(t, d)
			whole(t, "de/"+name, size, &look.Plain, d.f.View())
			if slices.Contains(kept, name) && size[0] == 80 {
				compare(t, filepath.Join("de", name+"-80x24"), d)
			}
		}
		for _, g := range golden {
			d := newDesk(t, size[0], size[1])
			d.speaks("de")
			d.key(strings.Fields(g.keys)...)
			if g.after != nil {
				g.after(d)
			}
			see(g.name, d)
		}
		for _, g := range listFrames {
			d, _ := listDesk(t, "de", g.name, g.keys, size[0], size[1])
			see(g.name, d)
		}
	}
}

// What is not answered yet is called missing, without an example in the words
// of a cut list: the question says how to answer it.
func TestNoExampleOfAWholeLineBesideAnEmptyField(t *testing.T) {
	d, _ := listDesk(t, "", "empty field", toSize+" enter", 80, 24)
	if got := d.f.View(); !strings.Contains(got, "The size is missing.") || strings.Contains(got, "Write `") {
		t.Error(got)
	}
}
