package tui

import (
	"errors"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/muesli/termenv"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
	"example.org/matside/session"
	"example.org/matside/tui/look"
)

func TestMain(m *testing.M) {
	// Frames are compared as text; nothing of the machine's terminal counts.
	for _, name := range []string{"NO_COLOR", "COLORTERM", "COLORFGBG"} {
		_ = os.Unsetenv(name)
	}
	os.Exit(m.Run())
}

const inch = length.Inch

func rectangle(x, y, w, h length.Len) outline.Outline {
	return outline.Outline{{X: x, Y: y}, {X: x + w, Y: y}, {X: x + w, Y: y + h}, {X: x, Y: y + h}}
}

// lampRoom is an invented quilt with two loads made by hand, so that frames
// change only when the screens do: eight squares of one fabric, then squares
// and triangles of two.
func lampRoom() (*cutlist.List, *queue.Queue) {
	mat := cutlist.Mat{Width: 12 * inch, Height: 12 * inch, UsableWidth: 11 * inch, UsableHeight: 11 * inch}
	side, leg := 5*inch/2, 23*inch/8
	list := &cutlist.List{Quilt: "Lamp Room", Margin: inch / 4, Mat: mat,
		Fabrics: []cutlist.Fabric{
			{Name: "Plum", Stock: []cutlist.Panel{{Width: 42 * inch, Height: 54 * inch}}, Setting: "woven cotton"},
			{Name: "Oat", Stock: []cutlist.Panel{{Width: 21 * inch, Height: 18 * inch}, {Width: 21 * inch, Height: 18 * inch}}, OneWay: true},
		},
		Lines: []cutlist.Line{
			{Number: 4, Fabric: 0, Count: 12, Shape: "square", Size: "2 1/2", Label: "A", Outline: rectangle(0, 0, side, side)},
			{Number: 6, Fabric: 1, Count: 4, Shape: "half-square triangle", Size: "2 7/8", Label: "wing", Outline: outline.Outline{{X: 0, Y: 0}, {X: leg, Y: 0}, {X: 0, Y: leg}}},
		}}
	squares := func(n int, from int) (all []queue.Placement) {
		for i := range n {
			x, y := length.Len(i%4), length.Len(i/4)
			all = append(all, queue.Placement{Line: 0, Copy: from + i, Outline: rectangle(inch/2+x*side, inch/2+y*side, side, side)})
		}
		return all
	}
	second := squares(4, 9)
	for i := range 4 {
		x, y := inch/2+length.Len(i/2)*leg, 15*inch/4
		o := outline.Outline{{X: x, Y: y}, {X: x + leg, Y: y}, {X: x, Y: y + leg}}
		if i%2 == 1 {
			o = outline.Outline{{X: x + leg, Y: y}, {X: x + leg, Y: y + leg}, {X: x, Y: y + leg}}
		}
		second = append(second, queue.Placement{Line: 1, Copy: 1 + i, RoughCut: 1, Outline: o})
	}
	return list, &queue.Queue{List: list,
		Loads: []queue.Load{
			{Number: 1, Layout: 1, CutLength: 60 * inch, Pieces: squares(8, 1),
				RoughCuts: []queue.RoughCut{{Fabric: 0, Panel: 1, X: inch / 4, Y: inch / 4, Width: 21 * inch / 2, Height: 11 * inch / 2}}},
			{Number: 2, Layout: 2, CutLength: 70 * inch, Pieces: second,
				RoughCuts: []queue.RoughCut{
					{Fabric: 0, Panel: 1, X: inch / 4, Y: inch / 4, Width: 21 * inch / 2, Height: 3 * inch},
					{Fabric: 1, Panel: 2, X: inch / 4, Y: 7 * inch / 2, Width: 25 * inch / 4, Height: 27 * inch / 8}}},
		}}
}

// oneByOne plans each piece wanted onto a load of its own.
func oneByOne(list *cutlist.List, w session.Wish) (*queue.Queue, error) {
	q := &queue.Queue{List: list}
	for i, c := range w.Wanted {
		l := list.Lines[c.Line]
		o := make(outline.Outline, len(l.Outline))
		for j, p := range l.Outline {
			o[j] = outline.Point{X: p.X + inch/2, Y: p.Y + inch/2}
		}
		q.Loads = append(q.Loads, queue.Load{Number: i + 1, Layout: 9, CutLength: 10 * inch,
			RoughCuts: []queue.RoughCut{{Fabric: l.Fabric, Panel: 1, X: inch / 4, Y: inch / 4, Width: 7 * inch / 2, Height: 7 * inch / 2}},
			Pieces:    []queue.Placement{{Line: c.Line, Copy: c.Copy, Outline: o}}})
	}
	return q, nil
}

// desk drives a frame by hand: one message after the other, commands run as
// they come, timers as the clock is put forward. Nothing sleeps.
type desk struct {
	t     failer
	f     *frame
	book  *testBook
	clock time.Time
	wait  []due
	quit  bool
	slow  bool      // answers of the saver are held back
	held  []tea.Msg // those held back
	seen  int       // messages given to Update
}

// failer is a test, a benchmark or a rapid test.
type failer interface {
	Helper()
	Fatal(...any)
	Fatalf(string, ...any)
}

// due is a message that comes at a time.
type due struct {
	at  time.Time
	msg tea.Msg
}

// testBook is a ledger whose next writes may fail.
type testBook struct {
	*session.Ledger
	fail  int
	panic bool
	done  []session.Action
}

var errDisk = errors.New("no room on the disk")

func (b *testBook) Do(id session.QuiltID, a session.Action) (session.State, error) {
	if b.panic {
		panic("broken ledger")
	}
	if b.fail > 0 {
		b.fail--
		return b.State(), errDisk
	}
	st, err := b.Ledger.Do(id, a)
	if err == nil {
		b.done = append(b.done, a)
	}
	return st, err
}

func newDesk(t failer, w, h int) *desk {
	d := &desk{t: t, clock: time.Date(2026, 11, 25, 18, 0, 0, 0, time.UTC)}
	now := func() time.Time { return d.clock }
	d.book = &testBook{Ledger: session.New(session.OpenOptions{Now: now, Planner: oneByOne})}
	list, q := lampRoom()
	id, _, err := d.book.Start(session.Start{Text: "quilt Lamp Room\n", List: list, Queue: q})
	if err != nil {
		t.Fatal(err)
	}
	left := func(_ *session.State, q *session.Quilt) (time.Duration, bool) {
		return time.Duration(q.LoadsLeft()) * 25 * time.Minute, true
	}
	o := Options{Demo: true, Now: now, Advice: Advice{Left: left}, look: &look.Plain, profile: termenv.Ascii}
	d.f = newFrame(d.book, id, o)
	d.f.later = func(t time.Duration, msg tea.Msg) tea.Cmd {
		d.wait = append(d.wait, due{d.clock.Add(t), msg})
		return nil
	}
	d.send(tea.WindowSizeMsg{Width: w, Height: h})
	return d
}

// send gives one message to the frame and runs what comes of it.
func (d *desk) send(msg tea.Msg) {
	switch msg := msg.(type) {
	case nil:
		return
	case tea.BatchMsg:
		for _, c := range msg {
			d.run(c)
		}
		return
	case tea.QuitMsg, tea.InterruptMsg:
		if held := holdBack(d.f, msg); held != msg {
			d.send(held)
			return
		}
		d.quit = true
		return
	}
	d.seen++
	_, cmd := d.f.Update(msg)
	d.run(cmd)
}

// run runs a command.
func (d *desk) run(cmd tea.Cmd) {
	if cmd == nil {
		return
	}
	msg := cmd()
	if _, ok := msg.(answered); ok && d.slow {
		d.held = append(d.held, msg)
		return
	}
	d.send(msg)
}

// release lets the answers held back through.
func (d *desk) release() {
	held := d.held
	d.held, d.slow = nil, false
	for _, msg := range held {
		d.send(msg)
	}
}

// after puts the clock forward and brings what is due on the way.
func (d *desk) after(t time.Duration) {
	end := d.clock.Add(t)
	for {
		slices.SortStableFunc(d.wait, func(a, b due) int { return a.at.Compare(b.at) })
		if len(d.wait) == 0 || d.wait[0].at.After(end) {
			break
		}
		next := d.wait[0]
		d.wait = d.wait[1:]
		d.clock = next.at
		d.send(next.msg)
	}
	d.clock = end
}

// key presses keys one after the other, half a second apart.
func (d *desk) key(names ...string) {
	for _, name := range names {
		d.send(keyMsg(name))
		d.after(500 * time.Millisecond)
	}
}

func keyMsg(name string) tea.KeyMsg {
	switch name {
	case "enter":
		return tea.KeyMsg{Type: tea.KeyEnter}
	case "space":
		return tea.KeyMsg{Type: tea.KeySpace, Runes: []rune(" ")}
	case "backspace":
		return tea.KeyMsg{Type: tea.KeyBackspace}
	case "up":
		return tea.KeyMsg{Type: tea.KeyUp}
	case "down":
		return tea.KeyMsg{Type: tea.KeyDown}
	case "esc":
		return tea.KeyMsg{Type: tea.KeyEsc}
	case "ctrl+c":
		return tea.KeyMsg{Type: tea.KeyCtrlC}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(name)}
}

// sees fails unless all of the texts stand on the screen.
func (d *desk) sees(texts ...string) {
	d.t.Helper()
	screen := strings.Join(strings.Fields(ansi.Strip(d.f.View())), " ")
	for _, text := range texts {
		if !strings.Contains(screen, text) {
			d.t.Fatalf("screen does not say %q:\n%s", text, d.f.View())
		}
	}
}

func (d *desk) q() *session.Quilt { st := d.book.State(); return st.Quilt(d.f.quilt) }
