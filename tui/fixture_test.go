package tui

import (
	"context"
	"errors"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/muesli/termenv"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/say"
	"example.org/matside/session"
	"example.org/matside/tui/internal/fixture"
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

func rectangle(x, y, w, h length.Len) outline.Outline { return fixture.Rectangle(x, y, w, h) }

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
	busy  bool      // and those of files and planner
	held  []tea.Msg // those held back
	seen  int       // messages given to Update
	wrote string    // to the terminal beside the picture
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
	d.book = &testBook{Ledger: session.New(session.OpenOptions{Now: now, Planner: fixture.OneByOne})}
	list, q := fixture.LampRoom()
	id, _, err := d.book.Start(session.Start{Text: "quilt Lamp Room\n", List: list, Queue: q})
	if err != nil {
		t.Fatal(err)
	}
	left := func(_ *session.State, q *session.Quilt) (time.Duration, bool) {
		return time.Duration(q.LoadsLeft()) * 25 * time.Minute, true
	}
	o := Options{Demo: true, Now: now, Advice: Advice{Left: left}, look: &look.Plain, profile: termenv.Ascii}
	if _, err := d.book.Ledger.Do(id, session.SitDown{}); err != nil {
		t.Fatal(err)
	}
	d.f = newFrame(o)
	d.f.send = func(msg tea.Msg) { d.send(msg) }
	d.f.write = func(text string) { d.wrote += text }
	d.f.later = func(t time.Duration, msg tea.Msg) tea.Cmd {
		d.wait = append(d.wait, due{d.clock.Add(t), msg})
		return nil
	}
	d.send(tea.WindowSizeMsg{Width: w, Height: h})
	d.f.jobs.first = d.f.begin(d.f.openJob("Opening.", func(context.Context, func(say.Sentence)) (Opened, error) {
		return Opened{Book: d.book, Quilt: id}, nil
	}))
	d.run(d.f.Init())
	return d
}

// looks gives the window a look on a kind of terminal.
func (d *desk) looks(l *look.Look, p termenv.Profile) {
	d.f.own, d.f.profile = l, p
	d.f.use(d.f.settings)
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
	if d.holds(msg) {
		d.held = append(d.held, msg)
		return
	}
	d.send(msg)
}

// holds says whether an answer is held back just now.
func (d *desk) holds(msg tea.Msg) bool {
	switch msg.(type) {
	case answered:
		return d.slow || d.busy
	case worked, told, kept, glanced, reread:
		return d.busy
	}
	return false
}

// release lets the answers held back through.
func (d *desk) release() {
	held := d.held
	d.held, d.slow, d.busy = nil, false, false
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

// named are the keys that are no character.
var named = map[string]tea.KeyType{
	"enter": tea.KeyEnter, "backspace": tea.KeyBackspace, "esc": tea.KeyEsc, "ctrl+c": tea.KeyCtrlC, "tab": tea.KeyTab,
	"up": tea.KeyUp, "down": tea.KeyDown, "left": tea.KeyLeft, "right": tea.KeyRight,
	"home": tea.KeyHome, "end": tea.KeyEnd, "pgup": tea.KeyPgUp, "pgdown": tea.KeyPgDown,
}

func keyMsg(name string) tea.KeyMsg {
	if key, ok := named[name]; ok {
		return tea.KeyMsg{Type: key}
	}
	if name == "space" {
		return tea.KeyMsg{Type: tea.KeySpace, Runes: []rune(" ")}
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
