package guide

import (
	"time"

	"example.org/matside/session"
)

// Alarm is what ought to be over.
type Alarm uint8

// Nothing, the cutting, or her handling of fabric without a pause.
const (
	Quiet Alarm = iota
	CutOver
	PauseDue
)

// Alarms are when something ought to be over; zero is never.
type Alarms struct{ Cut, Pause time.Time }

// AlarmsOf are those of a quilt as it stands, nil for none in hand. pause is
// her setting: minutes of handling, below 0 never, 0 by her habits.
func AlarmsOf(state *session.State, q *session.Quilt, pause int) Alarms {
	if q == nil || q.InHand() == nil || q.Paused || q.Clock.IsZero() { // no time counts
		return Alarms{}
	}
	var a Alarms
	if l := q.InHand(); q.Step == session.Cut {
		a.Cut = q.Clock.Add(max(CutTakes(state, l)-l.Work[session.Cut], 0))
	}
	after := state.PauseAfter()
	if pause != 0 {
		after = time.Duration(max(pause, 0)) * time.Minute
	}
	switch {
	case after == 0:
	case q.Handled >= after:
		a.Pause = q.Clock
	case q.Step != session.Cut: // while the cutter cuts, her hands rest
		a.Pause = q.Clock.Add(after - q.Handled)
	}
	return a
}

// At is what ought to be over at a time.
func (a Alarms) At(now time.Time) Alarm {
	past := func(at time.Time) bool { return !at.IsZero() && !now.Before(at) }
	switch {
	case past(a.Pause):
		return PauseDue
	case past(a.Cut):
		return CutOver
	}
	return Quiet
}

// Next is how long it is to the next alarm, or 0 where none comes.
func (a Alarms) Next(now time.Time) time.Duration {
	var next time.Duration
	for _, at := range []time.Time{a.Cut, a.Pause} {
		if d := at.Sub(now); !at.IsZero() && d > 0 && (next == 0 || d < next) {
			next = d
		}
	}
	return next
}
