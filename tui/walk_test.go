package tui

import (
	"reflect"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"example.org/matside/session"
)

const ms = time.Millisecond

func TestOnlyEnterGoesToTheEnd(t *testing.T) {
	d := newDesk(t, 80, 24)
	for range 10 {
		d.key("enter")
	}
	if !d.q().Finished() {
		t.Fatalf("not finished: step %v of load %d", d.q().Step, d.q().Current)
	}
	d.sees("Lamp Room is all cut.", "16 good pieces in 2 loads", "None was spoiled")
	d.key("enter")
	if !d.quit {
		t.Error("Enter does not leave the last page")
	}
}

func TestHeldKeyAndDoubleHits(t *testing.T) {
	d := newDesk(t, 80, 24)
	d.send(keyMsg("enter"))
	d.after(500 * ms)
	for range 300 { // ten seconds of a held key
		d.send(keyMsg("enter"))
		d.after(33 * ms)
	}
	d.after(2 * time.Second)
	if d.q().Step != session.Press {
		t.Fatalf("a held key went to %v", d.q().Step)
	}
	d.send(keyMsg("enter"))
	d.after(80 * ms)
	d.send(keyMsg("space")) // the same meaning, so the same press
	d.after(2 * time.Second)
	if d.q().Step != session.Lay {
		t.Fatalf("two hits within a tenth of a second went to %v", d.q().Step)
	}
}

func TestBackTakesBackWhatTheStepRecorded(t *testing.T) {
	d := newDesk(t, 80, 24)
	d.key("backspace")
	d.sees("there is nothing to take back")
	d.key("enter", "enter", "enter", "enter", "3", "enter")
	if p := d.q().Pieces; p.Done != 5 || p.Waiting != 3 {
		t.Fatalf("after a peel with three spoiled: %+v", p)
	}
	d.key("backspace")
	if q := d.q(); q.Pieces.Done != 0 || q.Pieces.Waiting != 0 || q.Step != session.Peel || q.Current != 1 {
		t.Fatalf("after back: %+v at %v of load %d", q.Pieces, q.Step, q.Current)
	}
	d.key("backspace", "backspace", "backspace", "backspace")
	if d.q().Step != session.Fabric {
		t.Fatalf("four times back from peel: %v", d.q().Step)
	}
}

func spoiledOf(t *testing.T, d *desk) []int {
	t.Helper()
	last, ok := d.book.done[len(d.book.done)-1].(session.GoOn)
	if !ok {
		t.Fatalf("last action is %#v", d.book.done[len(d.book.done)-1])
	}
	return last.Spoiled
}

func TestSpoiledOnOneLine(t *testing.T) {
	d := newDesk(t, 80, 24)
	d.key("enter", "enter", "enter", "enter")
	d.key("9")
	d.sees("9 pieces spoiled")
	d.key("enter")
	d.sees("There are only 8 pieces on the mat.")
	d.key("backspace", "2", "enter")
	if got := spoiledOf(t, d); !reflect.DeepEqual(got, []int{6, 7}) {
		t.Errorf("spoiled %v, want the last two", got)
	}
	d.sees("Cut again in loads 3 and 4, from Plum panel 1.")
}

func TestArrowsStepTheCount(t *testing.T) {
	d := newDesk(t, 80, 24)
	d.key("enter", "enter", "enter", "enter")
	for range 12 {
		d.key("up")
	}
	d.sees("There are only 8 pieces on the mat.", "8 pieces spoiled")
	d.key("down", "enter")
	if got := spoiledOf(t, d); len(got) != 7 {
		t.Errorf("%d spoiled, want 7", len(got))
	}
}

func TestSpoiledOnSeveralLinesIsAskedLineByLine(t *testing.T) {
	peel2 := []string{"enter", "enter", "enter", "enter", "enter", "enter", "enter", "enter", "enter"}
	for _, c := range []struct {
		name string
		keys []string
		want []int
	}{
		{"one of each", []string{"2", "enter", "1", "enter"}, []int{3, 7}},
		{"all of the first", []string{"2", "enter", "2", "enter"}, []int{2, 3}},
		{"none of the first", []string{"2", "enter", "0", "enter"}, []int{6, 7}},
		{"nothing typed is none", []string{"2", "enter", "enter"}, []int{6, 7}},
		{"all of them is not asked", []string{"8", "enter"}, []int{0, 1, 2, 3, 4, 5, 6, 7}},
		{"none spoiled is not asked", []string{"enter"}, nil},
		{"zero typed", []string{"0", "enter"}, nil},
	} {
		d := newDesk(t, 80, 24)
		d.key(peel2...)
		d.key(c.keys...)
		if got := spoiledOf(t, d); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s: spoiled %v, want %v", c.name, got, c.want)
		}
	}
	d := newDesk(t, 80, 24)
	d.key(peel2...)
	d.key("6", "enter", "1")
	d.sees("6 spoiled. How many are these?", "A 4 squares 2 1/2, Plum", "Type a number, 2 to 4.")
	d.key("enter")
	d.sees("At least 2 must be among these.")
	d.key("backspace", "5", "enter")
	d.sees("There are only 4 of them.")
	d.key("backspace", "backspace")
	d.sees("Any spoiled? Type how many.")
	if d.q().Step != session.Peel {
		t.Error("backing out of the question took a step back")
	}
}

func TestWash(t *testing.T) {
	d := newDesk(t, 80, 24)
	for range 5 {
		d.key("enter")
	}
	d.sees("1 load since its wash")
	d.key("w")
	d.sees("Mat One is washed.", "drying until about")
	if m := d.book.State(); m.Mats[0].Washes != 1 {
		t.Fatalf("washes: %d", m.Mats[0].Washes)
	}
	d.key("u")
	d.sees("The wash of mat One is taken back.", "1 load since its wash")
	d.key("w", "enter", "enter", "enter")
	d.sees("Mat One is drying until about", "A wet mat does not hold the fabric.")
	d.key("enter")
	if d.q().Step != session.Cut {
		t.Fatalf("told that it is dry, at %v", d.q().Step)
	}
	d.key("w")
	d.sees("There is fabric on mat One: peel it first.")
}

func TestWashAsksWhichMat(t *testing.T) {
	d := newDesk(t, 80, 24)
	if _, err := d.book.Ledger.Do(0, session.AddMat{Mat: "Two"}); err != nil {
		t.Fatal(err)
	}
	d.f.state = d.book.State()
	d.key("w")
	d.sees("Which mat was washed?", "1 mat One", "2 mat Two")
	d.key("backspace")
	d.sees("Cut Plum")
	d.key("w", "2")
	d.sees("Mat Two is washed.", "Cut Plum")
	st := d.book.State()
	if st.Mat("Two").Washes != 1 || st.Mat("One").Washes != 0 {
		t.Errorf("washes: %+v", st.Mats)
	}
}

func TestMergedKeysAndPaste(t *testing.T) {
	d := newDesk(t, 80, 24)
	d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("q\n "), Paste: true})
	if d.quit || d.q().Step != session.Fabric {
		t.Fatal("a paste pressed keys")
	}
	d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("xQ")})
	if !d.quit {
		t.Error(`"xQ" in one message does not leave`)
	}
}

func TestHelpShowsEveryKey(t *testing.T) {
	d := newDesk(t, 80, 24)
	d.key("?")
	for _, b := range (walk{}).bindings(d.f.view()) {
		if b.key != "" && b.name != "on" {
			d.sees(b.key, b.says)
		}
	}
	d.sees("Enter or space")
	d.key("enter")
	d.sees("Cut Plum")
	if d.q().Step != session.Fabric {
		t.Error("Enter in the help went on")
	}
}

// No key's name runs into what it does, however long the language makes it.
func TestHelpKeepsKeysAndWordsApart(t *testing.T) {
	for _, language := range []string{"en", "de"} {
		d := newDesk(t, 80, 24)
		d.speaks(language)
		d.key("?")
		if got := ansi.Strip(d.f.View()); !strings.Contains(got, d.f.words.EnterOrSpace()+"  "+d.f.words.Done(0)) {
			t.Error(got)
		}
	}
}

func TestHelpInPages(t *testing.T) {
	d := newDesk(t, 60, 20)
	d.key("enter", "enter", "enter", "enter", "?")
	seen := ansi.Strip(d.f.View())
	d.sees("part 1 of 3: n shows the next")
	for range 2 {
		d.key("n")
		seen += ansi.Strip(d.f.View())
	}
	for _, b := range (walk{}).bindings(d.f.view()) {
		if b.key != "" && !strings.Contains(seen, b.says) {
			t.Errorf("help never says %q", b.says)
		}
	}
}

func TestLiftedAndRaggedAreNoted(t *testing.T) {
	d := newDesk(t, 80, 24)
	d.key("enter", "enter", "enter", "enter", "f", "r", "1")
	d.sees("Noted: fabric lifted.", "Noted: an edge was ragged.")
	d.key("r", "enter")
	last := d.book.done[len(d.book.done)-1].(session.GoOn)
	if !last.Lifted || last.Ragged || len(last.Spoiled) != 1 {
		t.Errorf("noted %+v", last)
	}
}

func TestOverview(t *testing.T) {
	d := newDesk(t, 80, 24)
	d.key("enter", "enter", "enter", "enter", "2", "enter", "o")
	d.sees("All loads", "1 Plum 8 pieces 0 min 2 spoiled", "2 Plum and Oat 8 pieces 8 min now", "3 Plum 1 piece 7 min cut again")
	d.key("e")
	if got := d.q().Current; got != 2 {
		t.Fatalf("load in hand %d", got)
	}
	d.key("down", "e")
	if got := d.q().Current; got != 3 {
		t.Errorf("moved to the front, the load in hand is %d, want 3", got)
	}
	d.sees("All loads") // it stays
	d.key("p")
	if loads := d.q().Loads; loads[len(loads)-1].ID != 3 {
		t.Errorf("put off, the last load is %d, want 3", loads[len(loads)-1].ID)
	}
	d.key("home", "n")
	d.sees("That load is done.")
	d.key("enter", "enter", "o", "t")
	d.sees("Its fabric is cut already")
	d.key("backspace", "backspace")
	d.sees("FABRIC")
}

func TestMats(t *testing.T) {
	d := newDesk(t, 80, 24)
	d.key("enter", "enter", "enter", "enter", "enter", "m")
	d.sees("The mats", "mat One, in use", "1 load since its wash, 0 washes and 1 load in all", "Wash due after 8 loads: a guess, nothing is learned yet.", "warranty")
	d.key("n", "down", "m")
	d.sees("mat Two, in use")
	if d.q().Mat != "Two" {
		t.Errorf("in use: mat %s", d.q().Mat)
	}
	d.key("-", "-")
	d.sees("Wash due after 6 loads, as you set it.")
	d.key("d", "m")
	d.sees("Mat Two is in use already.")
}

func TestTheScreenWaitsForTheSave(t *testing.T) {
	d := newDesk(t, 80, 24)
	d.slow = true
	d.key("enter")
	d.sees("saving", "Cut Plum")
	d.key("enter")
	d.sees("One moment: still saving.", "Cut Plum")
	d.release()
	d.sees("Press Plum flat.")
	if got := len(d.book.done); got != 1 {
		t.Errorf("%d actions written, want 1", got)
	}
}

func TestFailedSaveStaysAndIsTriedAgain(t *testing.T) {
	d := newDesk(t, 80, 24)
	d.book.fail = 2
	d.key("enter")
	d.sees("NOT SAVED: no room on the disk", "Enter try again", "Cut Plum")
	d.key("w", "backspace", "?")
	d.sees("NOT SAVED", "Cut Plum")
	d.key("enter")
	d.sees("NOT SAVED")
	d.key("enter")
	d.sees("Press Plum flat.")
	if strings.Contains(d.f.View(), "NOT SAVED") {
		t.Error("the failure still stands")
	}
	d.book.fail = 1
	d.key("enter", "q")
	if !d.quit {
		t.Error("q does not leave after a failed save")
	}
}

func TestPanicWhileSaving(t *testing.T) {
	d := newDesk(t, 80, 24)
	d.book.panic = true
	d.key("enter")
	d.sees("NOT SAVED: saving broke off: broken ledger")
	d.book.panic = false
	d.key("enter")
	d.sees("Press Plum flat.")
}

func TestLeavingWaitsForTheSave(t *testing.T) {
	for name, how := range map[string]tea.Msg{"q": keyMsg("q"), "ctrl+c": keyMsg("ctrl+c"), "SIGTERM": tea.QuitMsg{}, "SIGINT": tea.InterruptMsg{}} {
		d := newDesk(t, 80, 24)
		d.slow = true
		d.key("enter")
		d.send(how)
		if d.quit {
			t.Fatalf("%s left with a save out", name)
		}
		d.sees("leaving: waiting for the last save")
		d.key("enter", "backspace") // keys no longer count
		d.release()
		if !d.quit || d.q().Step != session.Press || len(d.book.done) != 1 {
			t.Errorf("%s: left %v at %v after %d actions", name, d.quit, d.q().Step, len(d.book.done))
		}
	}
	d := newDesk(t, 80, 24)
	d.send(keyMsg("q"))
	if !d.quit {
		t.Error("q with nothing out does not leave at once")
	}
}

func TestLeavingStaysWhenTheSaveFails(t *testing.T) {
	d := newDesk(t, 80, 24)
	d.slow, d.book.fail = true, 1
	d.key("enter", "q")
	d.release()
	if d.quit {
		t.Fatal("left without the step saved")
	}
	d.sees("NOT SAVED")
	d.key("q")
	if !d.quit {
		t.Error("q does not leave now")
	}
}

func TestStaleAnswersAreDropped(t *testing.T) {
	d := newDesk(t, 80, 24)
	d.key("enter")
	d.send(answered{id: d.f.saver.id, err: errDisk})
	d.send(answered{id: 99, err: errDisk})
	d.sees("Press Plum flat.")
}

// counting is a screen that counts what reaches it.
type counting struct{ n *int }

func (c counting) bindings(view) []binding {
	return []binding{{name: "x", keys: []string{"x"}, key: "x", says: "count", do: func() action { *c.n++; return nil }}}
}

func TestEachMessageIsDeliveredOnce(t *testing.T) {
	d := newDesk(t, 80, 24)
	n := 0
	d.f.screen = countingScreen{walk{}, counting{&n}}
	for i := 1; i <= 5; i++ {
		d.key("x")
		d.after(2 * time.Second)
		if n != i {
			t.Fatalf("after %d presses: %d", i, n)
		}
	}
}

type countingScreen struct {
	walk
	counting
}

func (c countingScreen) bindings(v view) []binding { return c.counting.bindings(v) }

func TestPanicsEndWithTheTerminalInOrder(t *testing.T) {
	d := newDesk(t, 80, 24)
	d.f.screen = broken{}
	if got := d.f.View(); got != "" || d.f.crash == nil {
		t.Errorf("View: %q, %v", got, d.f.crash)
	}
	d.f.crash = nil
	d.key("x")
	if !d.quit || d.f.crash == nil {
		t.Errorf("Update: quit %v, %v", d.quit, d.f.crash)
	}
}

type broken struct{ walk }

func (broken) bindings(view) []binding { panic("a mistake of ours") }

// Too little fabric is told when she sits down, not when all else is cut.
func TestTooLittleFabricIsToldAtOnce(t *testing.T) {
	d := newDesk(t, 80, 24)
	if got := d.f.seated("The change is taken."); got != "The change is taken." {
		t.Errorf("the sample is short of nothing, and %q is said", got)
	}
	d.q().Pieces.Short = 5
	if got := d.f.seated("The change is taken."); got != "The change is taken. There is too little fabric for 5 pieces." {
		t.Error(got)
	}
}

// A notice that one line can't hold is said whole, above the mat's line: what
// to do stands at its end.
func TestALongNoticeIsSaidWhole(t *testing.T) {
	const why = "there is no room left on the disk for /home/her/.local/share/matside/matside.db; everything recorded before is safe; make room, then try again"
	for _, size := range sizes {
		d := newDesk(t, size[0], size[1])
		before := rowOf(d, "mat One")
		d.f.notice = why
		said := strings.Join(strings.Fields(ansi.Strip(d.f.View())), " ")
		if !strings.Contains(said, why) || rowOf(d, "mat One") != before {
			t.Errorf("%v: %s", size, said)
		}
	}
}

// rowOf is the last row that holds text.
func rowOf(d *desk, text string) int {
	at := -1
	for y, row := range strings.Split(ansi.Strip(d.f.View()), "\n") {
		if strings.Contains(row, text) {
			at = y
		}
	}
	return at
}
