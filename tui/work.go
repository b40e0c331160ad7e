package tui

import (
	"context"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/matside/plan/say"
	"example.org/matside/tui/canvas"
	"example.org/matside/tui/words"
)

// job is work that may take a while: opening the data file, planning. While
// it is under way a screen of its own shows how far it is, and it can be left
// at once: its answer is then dropped.
type job struct {
	name string // what the screen says
	do   func(ctx context.Context, tell func(step say.Sentence)) any
	then func(v view, answer any) action
}

// jobs has one job under way at a time.
type jobs struct {
	id    int // of the job under way, or of the last one
	job   job
	stop  context.CancelFunc // nil when none is
	first tea.Cmd            // begins the opening of the data file
}

// progress tells how far job id is, worked is its answer.
type (
	progress struct {
		id   int
		step say.Sentence
	}
	worked struct {
		id     int
		answer any
	}
	waited  struct{ then func(v view) action }
	dropped struct{}
)

// begin begins a job and shows that it is under way. A panic in it is its
// answer, so that the terminal stays in order.
func (f *frame) begin(j job) tea.Cmd {
	f.drop()
	ctx, stop := context.WithCancel(context.Background())
	f.jobs.id++
	f.jobs.job, f.jobs.stop = j, stop
	f.screen = working{name: j.name, under: f.screen}
	id, send := f.jobs.id, f.send
	return func() (msg tea.Msg) {
		defer func() {
			if r := recover(); r != nil {
				msg = worked{id, brokeOff{words.BrokeOff.Err(r)}}
			}
		}()
		return worked{id, j.do(ctx, func(step say.Sentence) { send(progress{id, step}) })}
	}
}

// drop ends the job under way, if there is one.
func (f *frame) drop() {
	if f.jobs.stop != nil {
		f.jobs.stop()
		f.jobs.stop = nil
	}
}

// dropped goes back to the screen that a job was begun from.
func (f *frame) dropped() tea.Cmd {
	f.drop()
	if w, ok := f.screen.(working); ok && w.under != nil {
		f.screen = w.under
	}
	return nil
}

func (f *frame) progress(p progress) tea.Cmd {
	if w, ok := f.screen.(working); ok && p.id == f.jobs.id {
		f.screen = w.told(f.words.Say(p.step))
	}
	return nil
}

func (f *frame) worked(w worked) tea.Cmd {
	if w.id != f.jobs.id || f.jobs.stop == nil {
		return nil
	}
	f.drop()
	if s, ok := f.screen.(working); ok && s.under != nil {
		f.screen = s.under
	}
	return f.act(f.jobs.job.then(f.view(), w.answer))
}

// working is shown while a job is under way. Nothing on it moves by itself
// but the steps as they are told.
type working struct {
	name  string
	steps []string
	under screen // nil at the start of the program
}

// told adds a step; one told again only counts up.
func (s working) told(step string) working {
	steps := s.steps[:len(s.steps):len(s.steps)]
	if n := len(steps); n > 0 && steps[n-1] == step {
		return s
	}
	s.steps = append(steps, step)
	return s
}

func (s working) bindings(v view) []binding {
	all := []binding{}
	if s.under != nil {
		all = append(all, binding{name: "back", keys: []string{"backspace", "esc"}, key: "Backspace", says: v.words.KeyStop(), do: func() action { return dropped{} }})
	}
	return append(all, v.leaveKey(), v.lookKey(), v.sleepKey())
}

func (s working) title(view) string   { return "" }
func (s working) caution(view) string { return "" }

func (s working) body(v view, c *canvas.Canvas) {
	lines := []line{{s.name, strong}, {v.words.OneMoment(), text}, {}}
	for i, step := range s.steps {
		style, sign := text, "   "
		if i < len(s.steps)-1 {
			style, sign = good, "\u2713  "
		}
		lines = append(lines, line{sign + words.Capital(step), style})
	}
	v.middle(c, []string{v.words.LargeWait()}, lines[:min(len(lines), max(c.H, 1))])
}

// openJob opens the data file: the first job of all.
func (f *frame) openJob(name string, open Opener) job {
	return job{name: name,
		do: func(ctx context.Context, tell func(say.Sentence)) any {
			o, err := open(ctx, tell)
			if err != nil {
				return err
			}
			return o
		},
		then: func(_ view, answer any) action { return opened{answer} },
	}
}

// opened is the data file, or what kept it from being opened.
type opened struct{ answer any }

// open takes the data file into use.
func (f *frame) open(answer any) tea.Cmd {
	switch a := answer.(type) {
	case Opened:
		f.book, f.quilt, f.state = a.Book, a.Quilt, a.Book.State()
		f.notice = f.seated(a.Notice)
		f.planner, f.demo = a.Planner, f.demo || a.Demo
		if a.Desk != nil {
			f.desk = a.Desk
		}
		f.screen = f.view().home()
		return tea.Batch(f.arm(), f.follow())
	case brokeOff:
		return f.crashed(a.error)
	case error:
		f.failure = a
	}
	return tea.Quit
}
