package tui

import (
	"bytes"
	"context"
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/matside/session"
	"example.org/matside/tui/internal/fixture"
	"example.org/matside/tui/plain"
	"example.org/matside/tui/words"
)

// asks records what an action of the screen would write down.
func asks(a action, into map[string]bool) {
	switch a := a.(type) {
	case save:
		into[fmt.Sprintf("%T", a.action)] = true
	case saveFor:
		into[fmt.Sprintf("%T", a.action)] = true
	case take:
		into["session.Leave"], into["session.SitDown"] = true, true
	case both:
		asks(a.one, into)
		asks(a.other, into)
	case show:
		if s, ok := a.screen.(sure); ok {
			asks(s.yes, into)
		}
		if s, ok := a.screen.(naming); ok {
			asks(s.do("Another"), into)
		}
	}
}

// everyBinding goes to every screen that has a golden frame and calls f with
// each binding of it.
func everyBinding(t *testing.T, f func(d *desk, b binding)) {
	see := func(d *desk) {
		for _, b := range d.f.bindings() {
			f(d, b)
		}
	}
	for _, g := range golden {
		d := newDesk(t, 120, 40)
		d.key(strings.Fields(g.keys)...)
		if g.after != nil {
			g.after(d)
		}
		see(d)
	}
	for _, g := range listFrames {
		d, _ := listDesk(t, "", g.name, g.keys, 120, 40)
		see(d)
	}
}

// plainly are evenings in plain lines that come to every question there is:
// from the step of the fixture's quilt, or from the first page. _ is a line
// with nothing on it.
var plainly = []struct {
	first   bool
	fail    int // how many writes fail
	answers string
}{
	{false, 0, "1 1 1 1 6 2 6 2 2 6"},                                                                   // two spoiled, planned together
	{false, 0, "4 6 2 1 2 6 2 2 3 6 2 2 4 6 2 2 5 6 2 2 6"},                                             // the loads
	{false, 0, "3 6 3 2 2 6 3 2 3 6 3 2 4 6 3 2 5 6 3 2 6 6 3 2 7 6 3 3 6 3 3 8 6 3 2 9 Old 6 3 5 2 3"}, // the mats
	{false, 0, "6 3 3 6 3 3 8 6 3 2 10 2 6 3 4 2 3"},                                                    // one thrown away, a new blade
	{false, 0, "6 4 3 1 6 5 6 7 2 1"},                                                                   // a pause, the days, the settings
	{false, 0, "6 6 2 3 1 6 6 2 4 Hall 6 6 2 5 2"},                                                      // the shelf: aside and taken up, a name, finished
	{false, 0, "6 6 2 6 2 5 2"},                                                                         // taken off the shelf, back on the first page
	{false, 0, "6 3 3 3 2 6 3 2 2"},                                                                     // two mats: which was washed
	{false, 0, "1 1 1 1 1 3 1 1 1"},                                                                     // a wet mat
	{false, 1, "1 1"},                                                                                   // not saved
	{false, 0, "1 1 1 1 7 8 9 1 _ 9 2 x 1 0 6 2 1 1 1 1 1 9 1 _ 2 1 4 1"},                               // peeled, and back from the end
	{true, 0, "1"},                          // the demo
	{true, 0, "2 first-nine-patch.cutlist"}, // by a name that is not there
	{true, 0, "2 /home/ada/quilts/first-nine-patch.cutlist 1 7 1 6 6 2 2"}, // cut, changed by others, taken
	{true, 0, "3 Lamp Ink 0 Ink 1 _ 1 4 3 6 3 2 star 1 9 3 1 _ 2 10"},      // written here, and cut
	{true, 0, "4 /home/ada/quilts/first-nine-patch.cutlist 20 8 1 1 _ 2"},  // changed, as others did meanwhile
	{true, 0, "2 /home/ada/quilts/older/lamp.cutlist 2"},                   // put right
	{true, 0, "3 Lamp Ink 5 0 7 3"},                                        // left half written
}

// inPlain runs an evening in plain lines, and returns what it said and what it
// wrote down.
func inPlain(t *testing.T, first bool, fail int, answers string) (said string, wrote []session.Action) {
	t.Helper()
	at := time.Date(2026, 11, 25, 18, 0, 0, 0, time.UTC)
	now := func() time.Time { at = at.Add(time.Minute); return at }
	book := &testBook{Ledger: session.New(session.OpenOptions{Now: now, Planner: fixture.OneByOne})}
	var id session.QuiltID
	if !first {
		list, q := fixture.LampRoom()
		var err error
		if id, _, err = book.Start(session.Start{Text: "quilt Lamp Room\n", List: list, Queue: q}); err != nil {
			t.Fatal(err)
		}
	}
	const path = fixture.Home + "first-nine-patch.cutlist"
	tab := fixture.NewTable()
	edited := strings.Replace(tab.Files[path], "12 squares", "18 squares", 1)
	desk := &fixture.Late{Table: tab, Path: path, Text: edited}
	book.fail = fail
	var out bytes.Buffer
	if err := plain.Run(context.Background(), book, id, plain.Options{In: lines(answers), Out: &out, Now: now, Desk: desk}); err != nil {
		t.Fatal(err)
	}
	return out.String(), book.done
}

// TestPlainWritesDownAllThatTheScreenDoes: what can be recorded from the
// screen can be recorded from the plain lines.
func TestPlainWritesDownAllThatTheScreenDoes(t *testing.T) {
	onScreen := map[string]bool{}
	everyBinding(t, func(_ *desk, b binding) {
		if b.refused == "" && b.do != nil {
			asks(b.do(), onScreen)
		}
	})
	inLines := map[string]bool{}
	for _, p := range plainly {
		_, wrote := inPlain(t, p.first, p.fail, p.answers)
		for _, a := range wrote {
			inLines[fmt.Sprintf("%T", a)] = true
		}
	}
	for a := range onScreen {
		if !inLines[a] {
			t.Errorf("%s can't be had in plain lines", a)
		}
	}
	if t.Log("recorded from the screens:", slices.Sorted(maps.Keys(onScreen))); len(onScreen) < 22 {
		t.Errorf("only %d kinds of action were found on the screens", len(onScreen))
	}
}

// counterparts say, for what a binding says on the screen, what the plain
// lines say where they do the same in other words; or after a bar why they
// have nothing of the kind.
var counterparts = func(w words.English) map[string]string {
	return map[string]string{
		w.TakeCount(1):     w.Spoiled(1),
		w.KeyCross(false):  w.PlainByPlace(),
		w.KeyCross(true):   w.PlainWhichEnd(),
		w.KeyPickNone():    w.PlainWhichEnd(),
		w.KeyUnwash("One"): w.KeyTakeBackMat(),
		w.KeyTakeName():    w.PlainNameHow(),
		w.KeySave():        w.SaveAs(),
		w.KeyMark():        w.FormOption("one-way"),
		w.KeyAdd():         w.RowAddFabric(),
		w.KeyChange():      "2: " + w.SettingUnits(),
		w.KeyChoose():      "1: " + w.WayDemo(),
		w.KeyLook("light"): "4: " + w.SettingLook(),
		w.KeyErase():       "| the terminal erases in a line that is typed",
		w.KeyHelp():        "| each answer is said every time",
		w.KeySleep():       "| the shell's own key does it",
		w.KeyAbove():       "| a name that is typed may lie in any folder",
		w.KeyAllFiles():    "| a name that is typed may be any file",
		w.KeyOnlyLists():   "| a name that is typed may be any file",
		w.KeyLastValue():   "| the values go round",
	}
}(words.English{})

// TestEveryBindingHasItsPlainCounterpart: what a binding does can be had in
// plain lines by the same words or by its counterpart's, or there is a reason
// why not. What moves a cursor, and what stands for a row or a digit, is the
// number of an answer in lines.
func TestEveryBindingHasItsPlainCounterpart(t *testing.T) {
	var all strings.Builder
	for _, p := range plainly {
		said, _ := inPlain(t, p.first, p.fail, p.answers)
		all.WriteString(said)
	}
	used, n := map[string]bool{}, 0
	everyBinding(t, func(d *desk, b binding) {
		if b.kind != meant && b.name != "cross" || b.says == "" {
			return
		}
		n++
		says := b.says
		if b.name == "look" { // whichever is in use
			says = words.English{}.KeyLook("light")
		}
		if strings.HasSuffix(says, " spoiled") && says[0] <= '9' {
			says = words.English{}.TakeCount(1)
		}
		switch other, ok := counterparts[says]; {
		case ok:
			used[says] = true
			if !strings.HasPrefix(other, "| ") && !strings.Contains(all.String(), other) {
				t.Errorf("%T, %q: plain lines never say %q", d.f.screen, says, other)
			}
		case !strings.Contains(all.String(), says):
			t.Errorf("%T, %s: plain lines have nothing for %q", d.f.screen, b.name, says)
		}
	})
	for says := range counterparts {
		if !used[says] {
			t.Errorf("no binding says %q any more", says)
		}
	}
	t.Log(n, "bindings on", len(golden)+len(listFrames), "screens")
}
