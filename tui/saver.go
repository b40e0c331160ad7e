package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"example.org/matside/plan/say"
	"example.org/matside/session"
	"example.org/matside/tui/words"
)

// saver has one action written down at a time. The frame refuses keys while
// one is out, so there is never a second.
type saver struct {
	id     int // of the request out, or of the last one
	out    bool
	quilt  session.QuiltID
	action any    // a session.Action, or a sitting
	err    error  // of the last try; nil when it was saved
	step   string // what is planned for it, "" where nothing is
}

// answered says that request id has been tried. Answers whose id is stale
// are dropped.
type answered struct {
	id    int
	state session.State
	err   error
}

// try sends an action to the notebook.
func (s *saver) try(book Notebook, quilt session.QuiltID, a any) tea.Cmd {
	s.id++
	s.out, s.quilt, s.action, s.err, s.step = true, quilt, a, nil, ""
	id := s.id
	return func() tea.Msg {
		state, err := write(book, quilt, a)
		return answered{id, state, err}
	}
}

// sitting leaves one quilt, if there is one, and sits down to another.
type sitting struct {
	from, to session.QuiltID
	notice   string
}

// planningStep tells what is planned below save id.
type planningStep struct {
	id   int
	step say.Sentence
}

// try has an action written down, and the steps told of what is planned for
// it.
func (f *frame) try(quilt session.QuiltID, a any) tea.Cmd {
	if f.planner != nil {
		id, send := f.saver.id+1, f.send
		f.planner.Watch(func(step say.Sentence) { send(planningStep{id, step}) })
	}
	return f.saver.try(f.book, quilt, a)
}

func (f *frame) planningStep(p planningStep) tea.Cmd {
	if f.saver.out && p.id == f.saver.id {
		f.saver.step = f.words.Say(p.step)
	}
	return nil
}

// write writes one action down. A panic below must not leave the terminal
// raw, nor lose the step.
func write(book Notebook, quilt session.QuiltID, a any) (state session.State, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = words.SavingBrokeOff.Err(r)
		}
	}()
	s, ok := a.(sitting)
	if !ok {
		return book.Do(quilt, a.(session.Action))
	}
	if s.from != 0 && s.from != s.to {
		if state, err := book.Do(s.from, session.Leave{}); err != nil {
			return state, err
		}
	}
	return book.Do(s.to, session.SitDown{})
}

// take takes an answer in and reports whether it was the one waited for.
func (s *saver) take(a answered) bool {
	if !s.out || a.id != s.id {
		return false
	}
	s.out, s.err = false, a.err
	return true
}
