package tui

import (
	"cmp"
	"errors"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/matside/session"
	"example.org/matside/tui/guide"
	"example.org/matside/tui/look"
	"example.org/matside/tui/settings"
	"example.org/matside/tui/words"
)

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
		if k, ok := a.screen.(keeper); ok {
			f.form = k.kept()
		}
		return nil
	case both:
		return tea.Batch(f.act(a.one), f.act(a.other))
	case putOff:
		return f.putOff(a)
	case forget:
		f.form = nil
		return nil
	case save:
		return f.save(f.quilt, a.action)
	case saveFor:
		return f.save(a.quilt, a.action)
	case take:
		return f.save(a.quilt, sitting{f.quilt, a.quilt, a.notice})
	case again:
		return f.try(f.saver.quilt, f.saver.action)
	case ask:
		return f.ask(a.do)
	case begin:
		return f.begin(a.job)
	case dropped:
		return f.dropped()
	case opened:
		return f.open(a.answer)
	case wait:
		return f.later(a.d, waited{a.then})
	case set:
		return f.set(a.settings)
	case turn:
		return f.set(f.nextLook())
	case leave:
		return f.leave(tea.Quit)
	case sleep:
		return tea.Suspend
	}
	return nil
}

// save sends an action off, unless one is out: then she is told.
func (f *frame) save(quilt session.QuiltID, a any) tea.Cmd {
	if f.saver.out {
		f.notice = f.words.NotYetSaved()
		return nil
	}
	return f.try(quilt, a)
}

// answer takes the saver's answer in: only now the state moves.
func (f *frame) answer(a answered) tea.Cmd {
	if !f.saver.take(a) {
		return nil
	}
	var refused *session.Refused
	var wet *session.WetMat
	var next tea.Cmd
	switch {
	case a.err == nil:
		f.state = a.state
		s, sat := f.saver.action.(sitting)
		if sat {
			f.quilt, f.screen = s.to, nil
		}
		f.notice = f.done(f.saver.action)
		f.screen = f.view().after(f.screen)
		next = f.arm()
		if sat {
			next = tea.Batch(next, f.follow())
		}
	case errors.As(a.err, &wet):
		f.saver.err = nil
		f.screen = wetMat{*wet}
	case errors.As(a.err, &refused):
		f.saver.err = nil
		f.notice = words.Full(f.words.Error(a.err))
		f.screen = f.view().after(f.screen)
	}
	if f.saver.err != nil {
		f.leaving = nil // she sees that it failed, and can try again or leave
	}
	return tea.Batch(next, f.leftIfIdle())
}

// seated is what to tell her as she sits down to a quilt or its list has
// changed: what is said, and for how many pieces there is too little fabric,
// before she has cut what there is.
func (f *frame) seated(says string) string {
	if q := f.state.Quilt(f.quilt); q != nil && q.Pieces.Short > 0 && q.InHand() != nil {
		return strings.TrimSpace(says + " " + f.words.StillShort(q.Pieces.Short))
	}
	return says
}

// done says what was written down, where the screen doesn't show it.
func (f *frame) done(a any) string {
	switch a := a.(type) {
	case sitting:
		return f.seated(a.notice)
	case session.Wash:
		return f.words.WashedMat(a.Mat)
	case session.TakeBackMat:
		return f.words.WashTakenBack(a.Mat)
	case session.GoOn:
		if len(a.Spoiled) > 0 {
			return cmp.Or(guide.Again(f.words, f.state.Quilt(f.quilt)), f.words.Spoiled(len(a.Spoiled)))
		}
	case session.Replan:
		f.watch.news = ""
		return f.seated(f.words.ChangeTaken())
	}
	return ""
}

// leave leaves at once, or when what is being written has been answered.
func (f *frame) leave(cmd tea.Cmd) tea.Cmd {
	f.leaving = cmd
	if f.planner != nil && f.saver.out {
		f.planner.Hurry()
	}
	return f.leftIfIdle()
}

// leftIfIdle is what leaving waits for, once nothing is being written.
func (f *frame) leftIfIdle() tea.Cmd {
	if f.leaving == nil || f.saver.out || f.keeping {
		return nil
	}
	f.drop()
	return f.leaving
}

// kept says that settings have been kept, or why not.
type kept struct{ err error }

// set takes settings into use at once and keeps them, one try at a time.
func (f *frame) set(s settings.Settings) tea.Cmd {
	f.use(s)
	switch {
	case f.keep == nil:
		return nil
	case f.keeping:
		f.newer = true
		return nil
	}
	f.keeping = true
	keep := f.keep
	return func() (msg tea.Msg) {
		defer func() {
			if r := recover(); r != nil {
				msg = kept{words.BrokeOff.Err(r)}
			}
		}()
		return kept{keep(s)}
	}
}

func (f *frame) kept(err error) tea.Cmd {
	f.keeping = false
	if err != nil {
		f.notice = f.words.SettingsNotKept(plainError(f.words, err))
	}
	if f.newer {
		f.newer = false
		return f.set(f.settings)
	}
	return f.leftIfIdle()
}

// nextLook is the settings with the next look.
func (f *frame) nextLook() settings.Settings {
	s := f.settings
	at := slices.Index(look.All, f.look)
	s.Look = look.All[(at+1)%len(look.All)].Name
	return s
}
