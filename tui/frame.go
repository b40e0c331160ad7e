package tui

import (
	"fmt"
	"runtime/debug"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"example.org/matside/session"
	"example.org/matside/tui/canvas"
	"example.org/matside/tui/form"
	"example.org/matside/tui/guide"
	"example.org/matside/tui/look"
	"example.org/matside/tui/press"
	"example.org/matside/tui/settings"
	"example.org/matside/tui/words"
)

// frame is the root model: it owns the window, the gate, the saver and the
// screen shown. Effects are commands with one answer each.
type frame struct {
	book     Notebook // nil until the data file is open
	advice   Advice
	now      func() time.Time
	demo     bool
	words    words.Words
	settings settings.Settings
	keep     func(settings.Settings) error // nil: settings are not kept
	desk     Desk                          // nil: there are no cut lists to be had
	form     *form.Form                    // the one being written, kept when the program ends

	w, h    int
	look    *look.Look
	own     *look.Look // the one the terminal asks for
	profile termenv.Profile
	paint   func(canvas.Style) string

	state  session.State
	quilt  session.QuiltID
	screen screen
	notice string // a line that stays until the next press

	last drawn // the last picture of the mat

	gate    *press.Gate
	bounced string // the last typed key and when, to drop its bounces
	at      time.Time
	pointed string // the zone the mouse button went down on

	watch   watch // of the cut list of the quilt in hand
	saver   saver
	planner Planner // at work below the saver; nil where it can't be watched
	asks    int     // answers to other asks than this one are stale
	typed   string  // the last rune typed into a field, to drop its bounces
	jobs    jobs
	keeping bool        // settings are being kept
	newer   bool        // and there are newer ones to keep
	rung    guide.Alarm // what the bell last rang for
	leaving tea.Cmd     // what to do once nothing is out: quit, or interrupt
	crash   error       // a panic of ours, told after the terminal is restored
	failure error       // what kept the data file from being opened

	quit  func()                               // ends the program from outside Update
	later func(time.Duration, tea.Msg) tea.Cmd // brings a message after a time
	send  func(tea.Msg)                        // brings a message from a job under way
	write func(string)                         // to the terminal: bells and notifications
}

// settled says that a press held back may count now.
type settled struct{ ticket int }

// minute says that a minute has gone by.
type minute struct{}

// leaveNow stands for a quit or interrupt message that came while a save was
// out; cmd is what it asked for.
type leaveNow struct{ cmd tea.Cmd }

func newFrame(o Options) *frame {
	f := &frame{advice: o.Advice, demo: o.Demo, now: o.Now, own: o.look, profile: o.profile, keep: o.Keep,
		quit: func() {}, later: later, send: func(tea.Msg) {}, write: func(string) {}}
	f.use(o.Settings)
	return f
}

// use takes settings into use.
func (f *frame) use(s settings.Settings) {
	f.settings, f.words = s, words.In(s.Language)
	f.gate = press.New(s.Gap())
	l := f.own
	for _, named := range look.All {
		if named.Name == s.Look {
			l = named
		}
	}
	f.look, f.paint = l, l.Painter(f.profile)
}

func (f *frame) view() view {
	return view{words: f.words, state: &f.state, quilt: f.state.Quilt(f.quilt), advice: f.advice, now: f.now(),
		demo: f.demo, look: f.look.Name, settings: f.settings, last: &f.last, desk: f.desk, book: f.book}
}

// Init begins to open the data file, and starts the clock that keeps the time
// left right.
func (f *frame) Init() tea.Cmd { return tea.Batch(f.jobs.first, f.tick()) }

// tick asks for the next minute, unless nothing is to move by itself.
func (f *frame) tick() tea.Cmd {
	if f.settings.Still {
		return nil
	}
	return f.later(time.Minute, minute{})
}

func later(d time.Duration, msg tea.Msg) tea.Cmd {
	return tea.Tick(d, func(time.Time) tea.Msg { return msg })
}

// Update takes one message in. Every branch returns.
func (f *frame) Update(msg tea.Msg) (m tea.Model, cmd tea.Cmd) {
	defer func() {
		if r := recover(); r != nil {
			m, cmd = f, f.crashed(r)
		}
	}()
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		f.w, f.h = msg.Width, msg.Height
		return f, nil
	case tea.KeyMsg:
		if text, ok := f.typing(msg); ok {
			return f, f.typeIn(text, msg.Paste)
		}
		return f, f.keys(press.Split(msg))
	case tea.MouseMsg:
		return f, f.mouse(msg)
	case told:
		return f, f.tell(msg)
	case settled:
		return f, f.settle(msg.ticket)
	case answered:
		return f, f.answer(msg)
	case progress:
		return f, f.progress(msg)
	case planningStep:
		return f, f.planningStep(msg)
	case worked:
		return f, f.worked(msg)
	case waited:
		return f, f.act(msg.then(f.view()))
	case kept:
		return f, f.kept(msg.err)
	case glance:
		return f, f.glance(msg.id)
	case glanced:
		return f, f.glanced(msg)
	case reread:
		f.reread(msg)
		return f, nil
	case bell:
		return f, f.ring(msg)
	case leaveNow:
		return f, f.leave(msg.cmd)
	case minute:
		return f, f.tick()
	}
	return f, nil
}

// crashed keeps a panic of ours for after the screen, and ends the program.
func (f *frame) crashed(r any) tea.Cmd {
	if f.crash == nil {
		f.crash = fmt.Errorf("%w: %v\n%s", ErrCrash, r, debug.Stack())
	}
	return tea.Quit
}

// View draws the window.
func (f *frame) View() (text string) {
	defer func() {
		if r := recover(); r != nil {
			f.crashed(r)
			go f.quit()
			text = ""
		}
	}()
	if f.w <= 0 || f.h <= 0 {
		return ""
	}
	return f.draw().Render(f.paint)
}
