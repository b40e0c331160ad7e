package tui

import (
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"example.org/matside/tui/guide"
)

// bell comes when something ought to be over. It means nothing once something
// else has been written down.
type bell struct{ seq uint64 }

// arm asks for the next alarm after what was just written down.
func (f *frame) arm() tea.Cmd {
	v := f.view()
	next := v.alarms().Next(v.now)
	if next == 0 {
		return nil
	}
	return f.later(next, bell{f.state.Seq})
}

// ring rings the bell and notifies, as she has it, once for each alarm.
func (f *frame) ring(b bell) tea.Cmd {
	if b.seq != f.state.Seq {
		return nil
	}
	v := f.view()
	says := ""
	switch what := v.alarm(); {
	case what == f.rung:
	case what == guide.CutOver:
		says = v.words.CutOver()
	case what == guide.PauseDue:
		says = v.words.RestHands()
	}
	f.rung = v.alarm()
	return tea.Batch(f.sound(says), f.arm())
}

// sound writes to the terminal beside the picture: a bell, and the
// notification of OSC 9, which terminals that have none ignore.
func (f *frame) sound(says string) tea.Cmd {
	text := ""
	if f.settings.Sound {
		text = "\a"
	}
	if f.settings.Notify {
		text += ansi.Notify(f.words.Name() + ": " + says)
	}
	if says == "" || text == "" {
		return nil
	}
	write := f.write
	return func() tea.Msg { write(text); return nil }
}

// alarms are those of the quilt in hand, alarm the one that is due now.
func (v view) alarms() guide.Alarms {
	return guide.AlarmsOf(v.state, v.quilt, v.settings.Pause)
}

func (v view) alarm() guide.Alarm { return v.alarms().At(v.now) }
