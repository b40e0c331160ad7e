package session

import (
	"errors"
	"slices"
)

// The ledger keeps a state some hundred events back, the base, and the events
// since, the tail: so a step taken back costs a fold of the tail and not of
// the whole log. The base is also what is cached on disk; it lies behind so
// that taking back is as quick after a restart.

// keepTail is how many events the tail keeps at least, and twice that at most.
const keepTail = 256

// errTooOld says that the base already holds what is to be taken back.
var errTooOld = errors.New("session: taken back from before the base")

// foldFrom folds events that follow base, which stays as it is.
func foldFrom(base *State, events []Event) (State, error) {
	for i := range events {
		if u, ok := events[i].Content.(Undone); ok && u.Target <= base.Seq {
			return State{}, errTooOld
		}
	}
	dead, err := takenBack(events)
	if err != nil {
		return State{}, err
	}
	s := base.copy()
	err = s.applyAll(events, dead)
	return s, err
}

// shorten moves the base forward when the tail has grown long.
func (l *Ledger) shorten() {
	if l.store == nil || len(l.tail) < 2*keepTail {
		return
	}
	n := cutAt(l.tail)
	dead, err := takenBack(l.tail[:n])
	base := l.base.copy()
	if n == 0 || err != nil || base.applyAll(l.tail[:n], dead) != nil {
		return // the tail stays long: it only costs time
	}
	l.base, l.tail = base, slices.Clone(l.tail[n:])
}

// cutAt says how many events may go into the base, so that no later one takes
// one of them back.
func cutAt(tail []Event) int {
	n := len(tail) - keepTail
	for i := len(tail) - 1; i >= n && i >= 0; i-- {
		if u, ok := tail[i].Content.(Undone); ok {
			n = max(0, min(n, int(u.Target-tail[0].Seq)))
		}
	}
	return n
}

// copy shares nothing that a fold writes to.
func (s *State) copy() State {
	c := *s
	c.Quilts = slices.Clone(s.Quilts)
	for i, q := range c.Quilts {
		c.Quilts[i] = q.clone()
	}
	c.Mats = slices.Clone(s.Mats)
	for i := range c.Mats {
		c.Mats[i].Runs = slices.Clone(c.Mats[i].Runs)
		for j := range c.Mats[i].Runs {
			r := &c.Mats[i].Runs[j]
			r.Loads = slices.Clip(r.Loads)
		}
	}
	c.Blade.Runs = slices.Clone(s.Blade.Runs)
	for i := range c.Blade.Runs {
		c.Blade.Runs[i] = slices.Clip(c.Blade.Runs[i])
	}
	c.Days, c.Recent, c.Lost = slices.Clone(s.Days), slices.Clip(s.Recent), slices.Clip(s.Lost)
	return c
}

// fork is a copy of what applying e writes to, so that the state forked from
// stays as it is; of two forks only one may live on.
func (s *State) fork(e *Event) State {
	_, all := e.Content.(MatRenamed)
	f := *s
	f.Quilts = slices.Clone(s.Quilts)
	for i, q := range f.Quilts {
		if all || q.ID == e.Quilt {
			f.Quilts[i] = q.clone()
		}
	}
	f.Mats = slices.Clone(s.Mats)
	for i := range f.Mats {
		f.Mats[i].Runs = slices.Clone(f.Mats[i].Runs)
	}
	f.Blade.Runs = slices.Clone(s.Blade.Runs)
	f.Days = slices.Clone(s.Days)
	return f
}

func (q *Quilt) clone() *Quilt {
	c := *q
	c.Loads = slices.Clone(q.Loads)
	c.Stock = slices.Clone(q.Stock)
	c.LineDone = slices.Clone(q.LineDone)
	c.Editions = slices.Clip(q.Editions)
	return &c
}
