package plain

import (
	"io"

	"example.org/matside/tui/guide"
)

// rung is the last alarm told: each is told once, until something is written
// down.
type rung struct {
	seq   uint64
	alarm guide.Alarm
}

func (t *talk) alarms() guide.Alarms {
	state, q := t.quilt()
	return guide.AlarmsOf(state, q, t.Settings.Pause)
}

// ring says what ought to be over now, with the bell where she has it on.
// Lines have no notification: the bell is what they have.
func (t *talk) ring() {
	state, _ := t.quilt()
	now := rung{state.Seq, t.alarms().At(t.Now())}
	if now == t.rung {
		return
	}
	switch t.rung = now; now.alarm {
	case guide.CutOver:
		t.say(t.words.CutOver())
	case guide.PauseDue:
		t.say(t.words.RestHands())
	default:
		return
	}
	if t.Settings.Sound && t.fail == nil {
		_, t.fail = io.WriteString(t.Out, "\a")
	}
}
