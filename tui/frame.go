package tui

import (
	"errors"
	"fmt"
	"runtime/debug"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"example.org/matside/session"
	"example.org/matside/tui/canvas"
	"example.org/matside/tui/look"
	"example.org/matside/tui/press"
	"example.org/matside/tui/words"
)

// frame is the root model: it owns the window, the gate, the saver and the
// screen shown. Effects are commands with one answer each.
type frame struct {
	book   Notebook
	advice Advice
	now    func() time.Time
	demo   bool
	words  words.Words

	w, h    int
	look    *look.Look
	profile termenv.Profile
	paint   func(canvas.Style) string

	state  session.State
	quilt  session.QuiltID
	screen screen
	notice string // a line that stays until the next press

	gate    *press.Gate
	bounced string // the last typed key and when, to drop its bounces
	at      time.Time

	saver   saver
	asks    int                                  // answers to other asks than this one are stale
	typed   string                               // the last rune typed into a field, to drop its bounces
	leaving tea.Cmd                              // what to do once nothing is out: quit, or interrupt
	crash   error                                // a panic of ours, told after the terminal is restored
	quit    func()                               // ends the program from outside Update
	later   func(time.Duration, tea.Msg) tea.Cmd // brings a message after a time
}

// settled says that a press held back may count now.
type settled struct{ ticket int }

// minute says that a minute has gone by.
type minute struct{}

// leaveNow stands for a quit or interrupt message that came while a save was
// out; cmd is what it asked for.
type leaveNow struct{ cmd tea.Cmd }

func newFrame(book Notebook, quilt session.QuiltID, o Options) *frame {
	f := &frame{book: book, quilt: quilt, advice: o.Advice, demo: o.Demo, now: o.Now,
		gate: press.New(), state: book.State(), look: o.look, profile: o.profile, quit: func() {}, later: later}
	f.setLook(o.look)
	f.screen = f.view().home()
	return f
}

func (f *frame) setLook(l *look.Look) { f.look, f.paint = l, l.Painter(f.profile) }

func (f *frame) view() view {
	return view{words: f.words, state: &f.state, quilt: f.state.Quilt(f.quilt), advice: f.advice, now: f.now(), demo: f.demo, look: f.look.Name}
}

// Init starts the clock that keeps the time left right.
func (f *frame) Init() tea.Cmd { return f.later(time.Minute, minute{}) }

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
	case told:
		return f, f.tell(msg)
	case settled:
		return f, f.settle(msg.ticket)
	case answered:
		return f, f.answer(msg)
	case leaveNow:
		return f, f.leave(msg.cmd)
	case minute:
		return f, f.later(time.Minute, minute{})
	}
	return f, nil
}

// keys takes the keys of one message, in order. Once one of them has sent
// something off or asked to leave, the rest were for a screen not seen yet.
func (f *frame) keys(names []string) tea.Cmd {
	var cmds []tea.Cmd
	for _, name := range names {
		cmd := f.key(name)
		cmds = append(cmds, cmd)
		if f.leaving != nil || f.saver.out {
			break
		}
	}
	return tea.Batch(cmds...)
}

// small reports that the window is too small to see what a key would do.
func (f *frame) small() bool { return f.w < minWidth || f.h < minHeight }

// key takes one key: moving ones act at once, typed ones but for bounces,
// and the others when the gate says that they were meant.
func (f *frame) key(name string) tea.Cmd {
	b, ok := find(f.bindings(), name)
	if !ok {
		return nil
	}
	now := f.now()
	if b.kind == meant {
		f.bounced = ""
		count, wait := f.gate.Event(b.name, now)
		return f.counted(count, wait)
	}
	bounce := b.kind == typed && f.bounced == name && now.Sub(f.at) < bounceTime
	f.bounced, f.at = name, now
	if bounce {
		return nil
	}
	return f.perform(b)
}

// bounceTime is how long a second hit of a typed key belongs to the first.
const bounceTime = 100 * time.Millisecond

func (f *frame) counted(names []string, wait press.Wait) tea.Cmd {
	var cmds []tea.Cmd
	for _, name := range names {
		cmds = append(cmds, f.named(name))
	}
	if wait != (press.Wait{}) {
		cmds = append(cmds, f.later(wait.For, settled{wait.Ticket}))
	}
	return tea.Batch(cmds...)
}

func (f *frame) settle(ticket int) tea.Cmd {
	if name, ok := f.gate.Settled(ticket); ok {
		return f.named(name)
	}
	return nil
}

// named performs the binding that has a name just now.
func (f *frame) named(name string) tea.Cmd {
	for _, b := range f.bindings() {
		if b.name == name {
			return f.perform(b)
		}
	}
	return nil
}

// bindings are the keys that count just now: the screen's, or those of a
// save that failed, or only the way out where the window is too small.
func (f *frame) bindings() []binding {
	v := f.view()
	switch {
	case f.saver.err != nil:
		retry := binding{name: "on", keys: []string{"enter", "space", "ctrl+j"}, key: "Enter", says: v.words.KeyRetry(), do: func() action { return again{} }}
		return []binding{retry, v.leaveKey(), v.sleepKey()}
	case f.small():
		return []binding{v.leaveKey(), v.sleepKey()}
	}
	return f.screen.bindings(v)
}

// again is the action that tries a failed save once more.
type again struct{}

// perform does what a binding does, or says why not.
func (f *frame) perform(b binding) tea.Cmd {
	f.notice = ""
	switch {
	case f.leaving != nil:
		return nil
	case b.refused != "":
		f.notice = b.refused
		return nil
	case b.do == nil:
		return nil
	}
	return f.act(b.do())
}

// act does what a screen asks for.
func (f *frame) act(a action) tea.Cmd {
	switch a := a.(type) {
	case show:
		f.screen = a.screen
		return nil
	case ask:
		return f.ask(a.do)
	case take:
		f.quilt, f.state, f.notice = a.quilt, f.book.State(), a.notice
		f.screen = f.view().home()
		return nil
	case save:
		return f.save(a.action)
	case again:
		return f.saver.again(f.book)
	case turn:
		f.nextLook()
		return nil
	case leave:
		return f.leave(tea.Quit)
	case sleep:
		return tea.Suspend
	}
	return nil
}

// save sends an action off, unless one is out: then she is told.
func (f *frame) save(a session.Action) tea.Cmd {
	if f.saver.out {
		f.notice = f.words.NotYetSaved()
		return nil
	}
	return f.saver.try(f.book, f.quilt, a)
}

// answer takes the saver's answer in: only now the state moves.
func (f *frame) answer(a answered) tea.Cmd {
	if !f.saver.take(a) {
		return nil
	}
	var refused *session.Refused
	var wet *session.WetMat
	switch {
	case a.err == nil:
		f.state = a.state
		f.notice = f.done(f.saver.action)
		f.screen = f.view().after(f.screen)
	case errors.As(a.err, &wet):
		f.saver.err = nil
		f.screen = wetMat{*wet}
	case errors.As(a.err, &refused), errors.Is(a.err, session.ErrNothingBack):
		f.saver.err = nil
		f.notice = capital(a.err.Error()) + "."
		f.screen = f.view().after(f.screen)
	}
	if f.leaving != nil && f.saver.err == nil {
		return f.leaving
	}
	f.leaving = nil // it failed: she sees it, and can try again or leave
	return nil
}

// done says what was written down, where the screen doesn't show it.
func (f *frame) done(a session.Action) string {
	switch a := a.(type) {
	case session.Wash:
		return f.words.WashedMat(a.Mat)
	case session.TakeBackMat:
		return f.words.WashTakenBack(a.Mat)
	case session.GoOn:
		if len(a.Spoiled) > 0 {
			return f.words.Spoiled(len(a.Spoiled))
		}
	}
	return ""
}

// leave leaves at once, or when the save under way has been answered.
func (f *frame) leave(cmd tea.Cmd) tea.Cmd {
	if f.saver.out {
		f.leaving = cmd
		return nil
	}
	return cmd
}

func (f *frame) nextLook() {
	for i, l := range look.All {
		if l == f.look {
			f.setLook(look.All[(i+1)%len(look.All)])
			break
		}
	}
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
