package session

import (
	"slices"
	"time"
)

func (s *State) applyQuilt(q *Quilt, e *Event) error {
	q.spend(e.At, e.Content, time.Duration(s.Habits.pause())*time.Minute)
	if movesOn(e.Content) {
		q.Again = Again{}
	}
	var err error
	switch c := e.Content.(type) {
	case StepDone:
		err = q.stepDone(e, &c, len(s.Lost) > 0)
	case Peeled:
		err = s.peeled(q, e, &c)
	case Joined:
		err = q.recut(e, &c.Recut)
		if q.Step == Fabric {
			q.next()
		}
	case Moved:
		err = q.moved(e, &c)
	case Replanned:
		err = q.replanned(e, &c)
	case MatUsed:
		if s.Mat(c.Mat) == nil {
			return cannotFollow(e, "no mat %s", c.Mat)
		}
		q.Mat = c.Mat
		q.Last = Last{What: "mat used"}
	case Renamed:
		q.Name = c.Name
	case SetAside:
		q.Standing = Aside
	case TakenUp:
		q.Standing = UnderWay
	case Finished:
		q.Standing = Done
	case Removed:
		q.Standing = Gone
	case Opened, Left, Paused, Resumed: // spend has seen to them
	default:
		return cannotFollow(e, "not a quilt's")
	}
	if movesOn(e.Content) {
		q.Last.Seq = e.Seq
	}
	q.Touched = e.At
	return err
}

// spend gives the time since the last event to the step in hand. It stops
// while she is away or pausing; where it can't be known the step is marked.
func (q *Quilt) spend(now time.Time, c Content, rest time.Duration) {
	l := q.InHand()
	if _, opened := c.(Opened); opened {
		if l != nil && !q.Clock.IsZero() && !q.Paused {
			l.Broken[q.Step] = true // the program ended without a goodbye
		}
		if gap := now.Sub(q.Touched); gap >= rest {
			q.Handled = 0
		}
		q.Clock, q.Paused = now, false
		return
	}
	if !q.Clock.IsZero() && !q.Paused {
		q.work(l, now.Sub(q.Clock))
	}
	switch c.(type) {
	case Paused:
		q.Paused = true
	case Resumed:
		q.Paused, q.Handled = false, 0
	case Left:
		q.Clock, q.Paused = time.Time{}, false
		return
	}
	if !q.Clock.IsZero() {
		q.Clock = now
	}
}

// work adds d to the step in hand, unless it was no work.
func (q *Quilt) work(l *Load, d time.Duration) {
	switch {
	case l == nil:
	case d < 0 || d > longestStep:
		l.Broken[q.Step] = true
		if d > longestStep {
			q.Handled = 0
		}
	default:
		l.Work[q.Step] += d
		if q.Step != Cut {
			q.Handled += d
		}
	}
}

// jumpTo goes to a load and step that a later event tells of, where the ones
// between are lost. A load passed over stays among those to come.
func (q *Quilt) jumpTo(load int, step Step) {
	from := slices.IndexFunc(q.Loads, func(l Load) bool { return l.ID == load && !l.Done })
	if from < 0 {
		return
	}
	l := q.Loads[from]
	q.Loads = slices.Insert(slices.Delete(q.Loads, from, from+1), q.Count.Done, l)
	q.Current, q.Step = load, step
}
