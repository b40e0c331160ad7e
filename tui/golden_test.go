package tui

import (
	"crypto/sha256"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/muesli/termenv"

	"example.org/matside/session"
	"example.org/matside/tui/guide"
	"example.org/matside/tui/look"
	"example.org/matside/tui/settings"
)

var update = flag.Bool("update", false, "write the golden frames anew")

const frames = "../testdata/frames"

var sizes = [][2]int{{60, 20}, {80, 24}, {120, 40}, {200, 60}}

// golden are the frames kept: every screen, with the keys that lead to it and
// what happens after them.
var golden = []struct {
	name  string
	keys  string
	after func(*desk)
}{
	{"fabric", "", nil},
	{"press", "enter", nil},
	{"load", "enter enter", nil},
	{"cut", "enter enter enter", nil},
	{"cut-over", "enter enter enter", func(d *desk) { d.after(20 * time.Minute) }},
	{"peel", "enter enter enter enter", nil},
	{"peel-3-spoiled", "enter enter enter enter 3", nil},
	{"peel-picked", "enter enter enter enter right x right right x", nil},
	{"peel-noted", "enter enter enter enter f r", nil},
	{"fabric-two", "enter enter enter enter enter", nil},
	{"load-two", "enter enter enter enter enter enter enter", nil},
	{"load-cursor", "enter enter enter enter enter enter enter right down", nil},
	{"peel-which", "enter enter enter enter enter enter enter enter enter 3 enter 1", nil},
	{"washed", "enter enter enter enter enter w", nil},
	{"which-mat", "m n enter w", nil},
	{"wet", "enter enter enter enter enter w enter enter enter", nil},
	{"pause-due", "", func(d *desk) { d.f.use(settings.Settings{Pause: 20}); d.after(21 * time.Minute) }},
	{"pause", "p", nil},
	{"help", "?", nil},
	{"help-peel", "enter enter enter enter ?", nil},
	{"loads", "enter enter enter enter 2 enter o down", nil},
	{"mats", "enter enter enter enter enter m n down", nil},
	{"mats-lifted", "enter enter enter enter f r enter m", nil},
	{"days", "enter enter enter enter 2 enter d", nil},
	{"days-none", "d", nil},
	{"shelf", "s", func(d *desk) { d.second("Porch Swing") }},
	{"sure", "s x", nil},
	{"name", "s r P o r c h", nil},
	{"end", "enter enter enter enter enter enter enter enter enter enter", nil},
	{"working", "", func(d *desk) {
		d.f.screen = working{name: d.f.opening()}.told("packing the loads").told("fitting rough cuts to the fabric")
	}},
	{"not-saved", "", func(d *desk) { d.book.fail = 1; d.key("enter") }},
	{"saving", "", func(d *desk) { d.slow = true; d.key("enter") }},
	{"small-letters", "enter enter", func(d *desk) { d.f.use(settings.Settings{Letters: "small"}) }},
	{"centimetres", "enter enter", func(d *desk) { d.f.use(settings.Settings{Units: "cm"}) }},
}

// screens draws every screen in every look at every size.
func screens(t *testing.T, f func(name string, size [2]int, l *look.Look, d *desk)) {
	for _, size := range sizes {
		for _, l := range look.All {
			for _, g := range golden {
				d := newDesk(t, size[0], size[1])
				d.looks(l, termenv.ANSI256)
				d.key(strings.Fields(g.keys)...)
				if g.after != nil {
					g.after(d)
				}
				f(g.name, size, l, d)
			}
		}
	}
}

// Without colour the frames are kept at every size, in the coloured looks at
// 80 x 24; of the others a sum is kept, for they hold the same text. Every
// screen fits its window in every look, says nothing short, and says the same
// in all of them; a coloured look paints every row from its start.
func TestEveryScreen(t *testing.T) {
	var sums strings.Builder
	said := make(map[string]string)
	screens(t, func(name string, size [2]int, l *look.Look, d *desk) {
		fits(t, d)
		frame := d.f.View()
		name = fmt.Sprintf("%s-%dx%d", name, size[0], size[1])
		switch {
		case l == &look.Plain:
			compareText(t, name, frame+"\n")
		case size[0] == 80:
			compareText(t, filepath.Join(strings.ReplaceAll(l.Name, " ", "-"), name), frame+"\n")
		default:
			fmt.Fprintf(&sums, "%x  %s, %s\n", sha256.Sum256([]byte(frame)), name, l.Name)
		}
		whole(t, name, size, l, frame)
		text := strings.Join(strings.Fields(strings.ReplaceAll(ansi.Strip(frame), l.Name, "")), " ") // the help names the look
		if was, ok := said[name]; ok && was != text {
			t.Errorf("%s says something else in the look %s", name, l.Name)
		}
		said[name] = text
	})
	compareText(t, "sums", sums.String())
	compare(t, "small-50x12", newDesk(t, 50, 12))
}

// whole fails where a frame is cut short or has a row that is not filled.
func whole(t *testing.T, name string, size [2]int, l *look.Look, frame string) {
	t.Helper()
	plain := ansi.Strip(frame)
	ellipses := strings.NewReplacer("saving …", "", "last save …", "", "units …", "", "gespeichert …", "", "abgewartet …", "", "Maße …", "")
	if strings.Contains(ellipses.Replace(plain), "…") {
		t.Errorf("%s is cut short:\n%s", name, plain)
	}
	for y, row := range strings.Split(frame, "\n") {
		if w := ansi.StringWidth(row); w != size[0] {
			t.Errorf("%s: row %d is %d wide", name, y, w)
		}
		if l.Colour && !strings.HasPrefix(row, "\x1b[0;") {
			t.Errorf("%s, %s: row %d is not painted from its start", name, l.Name, y)
		}
	}
}

func compare(t *testing.T, name string, d *desk) {
	t.Helper()
	compareText(t, name, d.f.View()+"\n")
}

func compareText(t *testing.T, name, got string) {
	t.Helper()
	file := filepath.Join(frames, name+".txt")
	if *update {
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s changed (run with -update if it should)\n%s\nwas\n%s", name, got, want)
	}
}

// Every word of what a step says stands on the screen, in as many pages as it
// takes.
func TestNothingOfAStepIsCutOff(t *testing.T) {
	for _, size := range sizes {
		d := newDesk(t, size[0], size[1])
		for range 10 {
			f := d.f.view().facts()
			page := guide.Write(d.f.words, f)
			seen := ansi.Strip(d.f.View())
			for range 3 {
				d.key("n")
				seen += ansi.Strip(d.f.View())
			}
			words := make(map[string]bool)
			for _, w := range strings.Fields(seen) {
				words[w] = true
			}
			for _, says := range append(append([]string{page.Do, page.Caution}, page.Items...), page.More...) {
				for _, w := range strings.Fields(says) {
					if !words[w] {
						t.Errorf("%v, %v: %q of %q is nowhere\n%s", size, f.Step, w, says, seen)
					}
				}
			}
			d.key("enter")
			if d.q().Finished() {
				break
			}
		}
		if d.q().Step != session.Fabric && !d.q().Finished() {
			t.Fatalf("%v: at %v", size, d.q().Step)
		}
	}
}
