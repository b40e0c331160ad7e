package tui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"example.org/matside/session"
	"example.org/matside/tui/guide"
)

// bell comes when something ought to be over. It means nothing once something
// else has been written down.
type bell struct{ seq uint64 }

// The alarms there are.
const (
	cutOver  = "cut over"
	pauseDue = "pause due"
)

// arm asks for the next alarm after what was just written down.
func (f *frame) arm() tea.Cmd {
	v := f.view()
	var next time.Duration
	for _, at := range []time.Time{v.cutOverAt(), v.pauseDueAt()} {
		if d := at.Sub(v.now); !at.IsZero() && d > 0 && (next == 0 || d < next) {
			next = d
		}
	}
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
	case what == cutOver:
		says = v.words.CutOver()
	case what == pauseDue:
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

// alarm is what ought to be over now, or "".
func (v view) alarm() string {
	past := func(at time.Time) bool { return !at.IsZero() && !v.now.Before(at) }
	switch {
	case past(v.pauseDueAt()):
		return pauseDue
	case past(v.cutOverAt()):
		return cutOver
	}
	return ""
}

// timed reports that there is a load in hand and time counts.
func (v view) timed() bool {
	return v.quilt != nil && v.quilt.InHand() != nil && !v.quilt.Paused && !v.quilt.Clock.IsZero()
}

// cutOverAt is when the cutter ought to be done, or zero.
func (v view) cutOverAt() time.Time {
	if !v.timed() || v.quilt.Step != session.Cut {
		return time.Time{}
	}
	return v.quilt.Clock.Add(max(guide.CutTakes(v.state, v.quilt.InHand())-v.quilt.InHand().Work[session.Cut], 0))
}

// pauseDueAt is when her hands ought to rest, or zero. While the cutter cuts
// they do.
func (v view) pauseDueAt() time.Time {
	after := v.pauseAfter()
	if !v.timed() || after == 0 {
		return time.Time{}
	}
	switch {
	case v.quilt.Handled >= after:
		return v.quilt.Clock
	case v.quilt.Step == session.Cut:
		return time.Time{}
	}
	return v.quilt.Clock.Add(after - v.quilt.Handled)
}

// pauseAfter is how long she handles fabric before a pause is due; 0 never.
func (v view) pauseAfter() time.Duration {
	if set := v.settings.Pause; set != 0 {
		return time.Duration(max(set, 0)) * time.Minute
	}
	return v.state.PauseAfter()
}
