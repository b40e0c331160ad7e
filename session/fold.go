package session

import (
	"errors"
	"fmt"
	"time"
)

// FirstMat is the mat that is there before she has named any.
const FirstMat = "One"

// longestStep is the time between two events after which it was no work but a
// break: half an hour, our guess. A long cut is the longest thing in between.
const longestStep = 30 * time.Minute

// Fold makes the state out of a log. It is pure, and these laws hold:
//
// (1) Fold(events) refuses, with ErrCannotFollow, a log in which some event
// can't follow the ones before it, and never panics on one.
// (2) A log with an Undone at its end folds to the state of the log without
// both the Undone and its target, but for Seq and At.
// (3) In each quilt Asked = Done + Left + Waiting + Short.
func Fold(events []Event) (State, error) {
	dead, err := takenBack(events)
	if err != nil {
		return State{}, err
	}
	s := newState()
	err = s.applyAll(events, dead)
	return s, err
}

func (s *State) applyAll(events []Event, dead map[uint64]bool) error {
	for i := range events {
		if err := s.apply(&events[i], dead); err != nil {
			*s = State{}
			return err
		}
	}
	return nil
}

func newState() State { return State{Mats: []Mat{{Name: FirstMat, Runs: []Run{{}}}}} }

// takenBack finds the events that a later Undone takes back.
func takenBack(events []Event) (map[uint64]bool, error) {
	dead := map[uint64]bool{}
	for i := range events {
		u, ok := events[i].Content.(Undone)
		if !ok {
			continue
		}
		at := int(u.Target) - int(events[0].Seq)
		if at >= 0 && at < i && isLost(events[at].Content) {
			continue // there is nothing left to take back
		}
		if at < 0 || at >= i || dead[u.Target] || !canTakeBack(events[at].Content) || events[at].Quilt != events[i].Quilt {
			return nil, cannotFollow(&events[i], "nothing to take back at %d", u.Target)
		}
		dead[u.Target] = true
	}
	return dead, nil
}

func isLost(c Content) bool {
	_, ok := c.(Lost)
	return ok
}

// canTakeBack says which kinds an Undone may name.
func canTakeBack(c Content) bool { return movesOn(c) || ofMat(c) != "" }

// movesOn says which kinds move a quilt along.
func movesOn(c Content) bool {
	switch c.(type) {
	case StepDone, Peeled, Joined, Moved, Replanned, MatUsed:
		return true
	}
	return false
}

// ofMat names the mat of an event that is a mat's own.
func ofMat(c Content) string {
	switch c := c.(type) {
	case MatWashed:
		return c.Mat
	case MatRefreshed:
		return c.Mat
	case MatDue:
		return c.Mat
	}
	return ""
}

func cannotFollow(e *Event, format string, args ...any) error {
	return fmt.Errorf("%w: event %d, %s: %s", ErrCannotFollow, e.Seq, e.Content.kind(), fmt.Sprintf(format, args...))
}

// apply folds one event in. What dead names only counts up the numbers.
func (s *State) apply(e *Event, dead map[uint64]bool) error {
	if e.Seq != s.Seq+1 {
		return cannotFollow(e, "after %d", s.Seq)
	}
	if e.Content == nil {
		return fmt.Errorf("%w: event %d is empty", ErrCannotFollow, e.Seq)
	}
	if !dead[e.Seq] {
		if err := s.applyIf(e); err != nil {
			return err
		}
	}
	s.Seq, s.At = e.Seq, e.At
	return nil
}

// applyIf folds a live event. Where events are lost, one that can't follow is
// left out and named, with the state as it was: better than nothing at all.
func (s *State) applyIf(e *Event) error {
	if len(s.Lost) == 0 {
		return s.applyLive(e)
	}
	f := s.fork(e)
	err := f.applyLive(e)
	if errors.Is(err, ErrCannotFollow) {
		s.Left = append(s.Left, e.Seq)
		return nil
	}
	*s = f
	return err
}

func (s *State) applyLive(e *Event) error {
	switch c := e.Content.(type) {
	case Undone:
		return nil
	case Lost:
		s.Lost = append(s.Lost, e.Seq)
		return nil
	case Started:
		return s.start(e, &c)
	case BladeChanged:
		s.Blade.Changed, s.Blade.Changes = e.At, s.Blade.Changes+1
		s.Blade.Runs = append(s.Blade.Runs, nil)
		return nil
	case HabitsSet:
		s.Habits = c.Habits
		return nil
	case MatAdded, MatWashed, MatRefreshed, MatDue, MatRenamed, MatRetired:
		return s.applyMat(e)
	}
	q := s.Quilt(e.Quilt)
	if q == nil {
		return cannotFollow(e, "no quilt %d", e.Quilt)
	}
	if q.Brief {
		return applyBrief(q, e)
	}
	return s.applyQuilt(q, e)
}

// applyBrief folds what may be done to a quilt of which only the sums are
// known; for anything else the log must be folded anew.
func applyBrief(q *Quilt, e *Event) error {
	switch c := e.Content.(type) {
	case Renamed:
		q.Name = c.Name
	case Removed:
		q.Standing = Gone
	default:
		return errBrief
	}
	q.Touched = e.At
	return nil
}
