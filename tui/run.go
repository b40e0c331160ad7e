package tui

import (
	"context"
	"errors"
	"io"
	"os"
	"os/signal"
	"sync"
	"syscall"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"example.org/matside/plan/say"
	"example.org/matside/session"
	"example.org/matside/tui/early"
	"example.org/matside/tui/look"
	"example.org/matside/tui/settings"
)

// ErrCrash is returned when a mistake of ours ended the screen. The terminal
// is restored, and what was shown as done is saved.
var ErrCrash = errors.New("matside made a mistake and had to stop")

// ErrInterrupted is returned when an interrupt signal ended the screen.
var ErrInterrupted = errors.New("interrupted")

// Options say how to run. The zero value runs on the program's own terminal.
type Options struct {
	Demo     bool // say on screen that nothing is kept
	Advice   Advice
	Settings settings.Settings
	Keep     func(settings.Settings) error // keeps changed settings; nil: they last while it runs
	In       io.Reader                     // nil: standard input
	Out      io.Writer                     // nil: standard output
	Getenv   func(string) string
	Now      func() time.Time

	look    *look.Look
	profile termenv.Profile
}

// Run draws the first picture, opens the notebook beside it, and shows the
// screens until she leaves. What it returns comes after everything is saved,
// the quilt in hand is left, open has returned and the terminal is restored:
// nil, what open failed with, ErrInterrupted, ErrCrash, or what kept the
// terminal from being used. The notebook is the caller's to close.
func Run(ctx context.Context, open Opener, o Options) error {
	o.fill()
	f := newFrame(o)
	var program *tea.Program
	f.send, f.write = func(msg tea.Msg) { program.Send(msg) }, writeTo(o.Out)
	var opening sync.Mutex // held while open runs
	f.jobs.first = f.begin(f.openJob(f.opening(), func(ctx context.Context, tell func(say.Sentence)) (Opened, error) {
		opening.Lock()
		defer opening.Unlock()
		if err := ctx.Err(); err != nil {
			return Opened{}, err
		}
		return open(ctx, tell)
	}))
	program = tea.NewProgram(f, f.options(ctx, o)...)
	f.quit = program.Quit
	stop := onSignals(program)
	_, err := program.Run()
	stop()
	f.drop()
	opening.Lock()
	defer opening.Unlock()
	return errors.Join(f.ended(err), f.keepForm(), f.sayGoodbye())
}

// opening is what the first picture says is under way.
func (f *frame) opening() string {
	if f.demo {
		return f.words.OpeningDemo()
	}
	return f.words.OpeningFile()
}

// ended is what the end of the program comes to.
func (f *frame) ended(err error) error {
	switch {
	case f.crash != nil:
		return f.crash
	case f.failure != nil:
		return f.failure
	case errors.Is(err, tea.ErrInterrupted):
		return ErrInterrupted
	}
	return err
}

// sayGoodbye writes down that she has left, so that no time counts until she
// sits down again.
func (f *frame) sayGoodbye() error {
	if f.book == nil || f.quilt == 0 {
		return nil
	}
	state := f.book.State()
	if q := state.Quilt(f.quilt); q == nil || q.Standing == session.Gone {
		return nil
	}
	_, err := write(f.book, f.quilt, session.Leave{})
	return err
}

// writeTo writes what is no picture. Nothing can be done where it fails.
func writeTo(out io.Writer) func(string) {
	if out == nil {
		out = os.Stdout
	}
	return func(text string) { _, _ = io.WriteString(out, text) }
}

func (o *Options) fill() {
	if o.Getenv == nil {
		o.Getenv = os.Getenv
	}
	if o.Now == nil {
		o.Now = time.Now
	}
	if o.look == nil {
		o.look, o.profile = look.Choose(o.Getenv, early.Dark(o.Getenv("COLORFGBG")))
	}
}

func (f *frame) options(ctx context.Context, o Options) []tea.ProgramOption {
	options := []tea.ProgramOption{tea.WithContext(ctx), tea.WithAltScreen(), tea.WithMouseCellMotion(), tea.WithFilter(holdBack)}
	if o.In != nil {
		options = append(options, tea.WithInput(o.In))
	}
	if o.Out != nil {
		options = append(options, tea.WithOutput(o.Out))
	}
	return options
}

// holdBack keeps the messages that signals send from ending the program
// while a save is out: they never reach Update.
func holdBack(m tea.Model, msg tea.Msg) tea.Msg {
	f, ok := m.(*frame)
	if !ok || !f.saver.out && !f.keeping {
		return msg
	}
	switch msg.(type) {
	case tea.QuitMsg:
		return leaveNow{tea.Quit}
	case tea.InterruptMsg:
		return leaveNow{tea.Interrupt}
	}
	return msg
}

// onSignals makes a closed window and SIGQUIT leave like any other quit;
// Bubble Tea sees to SIGINT and SIGTERM.
func onSignals(p *tea.Program) (stop func()) {
	c := make(chan os.Signal, 1)
	done := make(chan struct{})
	signal.Notify(c, syscall.SIGHUP, syscall.SIGQUIT)
	go func() {
		for {
			select {
			case <-c:
				p.Quit()
			case <-done:
				return
			}
		}
	}()
	return func() { signal.Stop(c); close(done) }
}
