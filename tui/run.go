package tui

import (
	"context"
	"errors"
	"io"
	"os"
	"os/signal"
	"syscall"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"example.org/matside/session"
	"example.org/matside/tui/early"
	"example.org/matside/tui/look"
)

// ErrCrash is returned when a mistake of ours ended the screen. The terminal
// is restored, and what was shown as done is saved.
var ErrCrash = errors.New("matside made a mistake and had to stop")

// ErrInterrupted is returned when an interrupt signal ended the screen.
var ErrInterrupted = errors.New("interrupted")

// Options say how to run. The zero value runs on the program's own terminal.
type Options struct {
	Demo   bool // say on screen that nothing is kept
	Advice Advice
	In     io.Reader // nil: standard input
	Out    io.Writer // nil: standard output
	Getenv func(string) string
	Now    func() time.Time

	look    *look.Look
	profile termenv.Profile
}

// Run shows the screens of one quilt (0: none is under way, a first page)
// until she leaves. What it returns comes after everything is saved and the
// terminal is restored: nil, ErrInterrupted, ErrCrash, or what kept the
// terminal from being used.
func Run(ctx context.Context, book Notebook, quilt session.QuiltID, o Options) error {
	o.fill()
	f := newFrame(book, quilt, o)
	program := tea.NewProgram(f, f.options(ctx, o)...)
	f.quit = program.Quit
	stop := onSignals(program)
	defer stop()
	_, err := program.Run()
	switch {
	case f.crash != nil:
		return f.crash
	case errors.Is(err, tea.ErrInterrupted):
		return ErrInterrupted
	}
	return err
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
	options := []tea.ProgramOption{tea.WithContext(ctx), tea.WithAltScreen(), tea.WithFilter(holdBack)}
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
	if !ok || !f.saver.out {
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
