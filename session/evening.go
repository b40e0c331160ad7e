package session

import (
	"slices"
	"time"

	"example.org/matside/plan/cutlist"
	"example.org/matside/session/pace"
)

// Pace is what has been learned of her times.
func (s *State) Pace() pace.Pace {
	recent := s.Recent[max(0, len(s.Recent)-keepRecent):]
	loads := make([]pace.Load, len(recent))
	for i, t := range recent {
		loads[i] = pace.Load{Work: t.Work, Metres: metres(t.CutLength)}
		for step, broken := range t.Broken {
			loads[i].Known[step] = !broken
		}
	}
	return pace.Learn(loads)
}

// TimeLeft is how long a quilt's loads to come take, without its breaks. now
// counts for the step in hand.
func (s *State) TimeLeft(id QuiltID, now time.Time) pace.Range {
	q := s.Quilt(id)
	if q == nil {
		return pace.Range{}
	}
	return s.Pace().Left(q.todo(now))
}

// todo are the loads to come as pace sees them.
func (q *Quilt) todo(now time.Time) []pace.Todo {
	var todo []pace.Todo
	for i, l := range q.ToCome() {
		t := pace.Todo{Metres: metres(l.CutLength)}
		if i == 0 && l.ID == q.Current {
			t.At, t.Spent = int(q.Step), l.Work[q.Step]
			if d := now.Sub(q.Clock); !q.Clock.IsZero() && !q.Paused && d > 0 && d <= longestStep {
				t.Spent += d
			}
		}
		todo = append(todo, t)
	}
	return todo
}

// Together is who waits for what when the next is made ready while one is cut.
type Together struct {
	Plan   pace.Plan     // with the mats there are; loads count from the one in hand
	OneMat time.Duration // how long it takes with one mat alone
	Second time.Duration // what a second mat saves, or would save
}

// WorkTogether plans the rest of a quilt.
func (s *State) WorkTogether(id QuiltID, now time.Time) Together {
	q := s.Quilt(id)
	if q == nil {
		return Together{}
	}
	p, todo := s.Pace(), q.todo(now)
	w := pace.Washing{Wash: time.Duration(s.Habits.wash()) * time.Minute, Dry: time.Duration(s.Habits.dry()) * time.Minute}
	mats := s.paceMats(q, now)
	if len(mats) == 0 {
		return Together{}
	}
	one := p.Schedule(todo, mats[:1], w)
	two := mats
	if len(mats) == 1 {
		two = append(mats[:1:1], pace.Mat{Name: "a second mat", Left: mats[0].After, After: mats[0].After})
	}
	both := p.Schedule(todo, two, w)
	t := Together{Plan: one, OneMat: one.Long, Second: max(one.Long-both.Long, 0)}
	if len(mats) > 1 {
		t.Plan = both
	}
	return t
}

// paceMats are the mats there are, the one in use first.
func (s *State) paceMats(q *Quilt, now time.Time) []pace.Mat {
	var mats []pace.Mat
	for _, m := range s.MatsThere() {
		d := s.Due(m.Name)
		pm := pace.Mat{Name: m.Name, Left: max(d.Left, 1), After: max(d.After, 1), Dry: max(m.DryAt.Sub(now), 0)}
		if m.Name == q.Mat {
			mats = slices.Insert(mats, 0, pm)
		} else {
			mats = append(mats, pm)
		}
	}
	return mats
}

// PauseDue says whether a rest is due, and how long she has been handling
// fabric since the last one. While the cutter cuts her hands rest, but that is
// no pause.
func (s *State) PauseDue(id QuiltID, now time.Time) (due bool, handled time.Duration) {
	q := s.Quilt(id)
	if q == nil || q.Paused || q.Clock.IsZero() || q.Current == 0 {
		return false, 0
	}
	handled = q.Handled
	if d := now.Sub(q.Clock); q.Step != Cut && d > 0 && d <= longestStep {
		handled += d
	}
	after := s.PauseAfter()
	return after > 0 && handled >= after, handled
}

// PauseAfter is how long she handles fabric before a rest is due; 0 is never.
func (s *State) PauseAfter() time.Duration {
	return time.Duration(max(s.Habits.pauseAfter(), 0)) * time.Minute
}

// PauseFor is how long a rest should be.
func (s *State) PauseFor() time.Duration { return time.Duration(s.Habits.pause()) * time.Minute }

// Card is a quilt as the shelf shows it.
type Card struct {
	ID        QuiltID
	Name      string
	Standing  Standing
	LoadsLeft int
	Pieces    Pieces
	Left      pace.Range
	Touched   time.Time
}

// Minutes is the time left, in whole minutes.
func (c *Card) Minutes() Minutes { return minutesOf(c.Left) }

// Shelf lists the quilts that aren't removed: those under way first, the one
// touched last on top.
func (s *State) Shelf(now time.Time) []Card {
	p := s.Pace()
	var cards []Card
	for _, q := range s.Quilts {
		if q.Standing != Gone {
			cards = append(cards, Card{q.ID, q.Name, q.Standing, q.LoadsLeft(), q.Pieces, p.Left(q.todo(now)), q.Touched})
		}
	}
	slices.SortStableFunc(cards, func(a, b Card) int {
		if a.Standing != b.Standing {
			return int(a.Standing) - int(b.Standing)
		}
		return b.Touched.Compare(a.Touched)
	})
	return cards
}

// ShortFabric is a fabric of which there isn't enough.
type ShortFabric struct {
	Fabric int // index into List.Fabrics
	Pieces int // that can't be cut from what there is
}

// ShortOf names the fabrics that fall short, by the plan and by what was
// spoiled since.
func (q *Quilt) ShortOf() []ShortFabric {
	list := q.List()
	if list == nil {
		return nil
	}
	count := make([]int, len(list.Fabrics))
	for _, short := range q.Short {
		for line, n := range short.Missing {
			if line < len(list.Lines) && list.Lines[line].Kind == cutlist.OnMat {
				count[list.Lines[line].Fabric] += n
			}
		}
	}
	for _, c := range q.NoFabric {
		count[list.Lines[c.Line].Fabric]++
	}
	var out []ShortFabric
	for f, n := range count {
		if n > 0 {
			out = append(out, ShortFabric{f, n})
		}
	}
	return out
}
