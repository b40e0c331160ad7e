package session

import (
	"slices"
	"time"
)

func (q *Quilt) stepDone(e *Event, c *StepDone, lossy bool) error {
	if lossy {
		q.jumpTo(c.Load, c.Step)
	}
	if q.Current == 0 || c.Load != q.Current || c.Step != q.Step || c.Step >= Peel {
		return cannotFollow(e, "load %d is at %s", q.Current, q.Step)
	}
	q.Last = Last{What: "step", Load: c.Load, Step: c.Step}
	q.Step++
	return nil
}

func (s *State) peeled(q *Quilt, e *Event, c *Peeled) error {
	if len(s.Lost) > 0 {
		q.jumpTo(c.Load, Peel)
	}
	l := q.InHand()
	if l == nil || c.Load != l.ID || q.Step != Peel {
		return cannotFollow(e, "load %d is at %s", q.Current, q.Step)
	}
	if !proper(c.Spoiled, len(l.Pieces)) {
		return cannotFollow(e, "load %d has %d pieces", l.ID, len(l.Pieces))
	}
	m := s.Mat(c.Mat)
	if m == nil {
		return cannotFollow(e, "no mat %s", c.Mat)
	}
	l.Done, l.Mat, l.Spoiled, l.Lifted, l.Ragged, l.At, l.Skipped = true, c.Mat, c.Spoiled, c.Lifted, c.Ragged, e.At, false
	q.Count.Done++
	for i := range l.Pieces {
		q.tally(l, i, !slices.Contains(c.Spoiled, i))
	}
	s.remember(l)
	s.Where.count(q.ListOf(l), l)
	m.carry(MatLoad{c.Weight, c.Lifted})
	s.Blade.cut(BladeLoad{c.CutLength, c.Ragged})
	if c.Recut != nil {
		if err := q.recut(e, c.Recut); err != nil {
			return err
		}
	}
	q.Last = Last{What: "peeled", Load: l.ID, Step: Peel}
	q.next()
	return nil
}

// keepRecent is how many loads times are learned from: a habit of years ago
// should not outvote tonight's.
const keepRecent = 200

// remember sums a load up for the days behind and for the times to come.
func (s *State) remember(l *Load) {
	t := LoadTime{l.At, len(l.Pieces), l.CutLength, l.Work, l.Broken}
	if len(s.Recent) >= 2*keepRecent {
		s.Recent = slices.Clone(s.Recent[len(s.Recent)-keepRecent:])
	}
	s.Recent = append(s.Recent, t)
	date := l.At.Format(time.DateOnly)
	if n := len(s.Days); n == 0 || s.Days[n-1].Date != date {
		s.Days = append(s.Days, Day{Date: date})
	}
	d := &s.Days[len(s.Days)-1]
	d.Loads++
	d.Pieces += len(l.Pieces) - len(l.Spoiled)
	d.Spoiled += len(l.Spoiled)
	if l.Lifted {
		d.Lifted++
	}
	for i, w := range l.Work {
		d.Work[i] += w
	}
}

// proper says that at holds different indexes below n, rising.
func proper(at []int, n int) bool {
	for i, x := range at {
		if x < 0 || x >= n || i > 0 && x <= at[i-1] {
			return false
		}
	}
	return true
}

// tally counts one piece of a load just peeled.
func (q *Quilt) tally(l *Load, piece int, good bool) {
	if !good {
		q.Pieces.Spoiled++
	}
	c, asked := l.counts(piece)
	switch {
	case !asked && good:
		q.Pieces.Extra++
	case !asked:
	default:
		from := &q.Pieces.Left
		if l.CutAgain(piece) {
			from = &q.Pieces.Waiting
		}
		*from--
		if good {
			q.Pieces.Done++
			q.LineDone[c.Line]++
		} else {
			q.Pieces.Waiting++
		}
	}
}
