package session

import (
	"errors"
	"fmt"
	"slices"
	"time"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/queue"
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

// start opens a quilt.
func (s *State) start(e *Event, c *Started) error {
	if e.Quilt != QuiltID(e.Seq) {
		return cannotFollow(e, "a quilt is called by its first event")
	}
	if c.List == nil {
		return cannotFollow(e, "no cut list")
	}
	if s.Mat(c.Mat) == nil {
		return cannotFollow(e, "no mat %s", c.Mat)
	}
	q := &Quilt{ID: e.Quilt, Name: c.Name, Mat: c.Mat, Started: e.At, Touched: e.At, Clock: e.At, NextLoad: 1}
	q.Editions = []Edition{{c.Text, c.List}}
	q.LineDone = make([]int, len(c.List.Lines))
	q.Stock, q.Buy, q.Short, q.Fewest = cloneStock(c.Plan.Stock), c.Plan.Buy, c.Plan.Short, c.Plan.Fewest
	if err := q.addLoads(e, c.Plan.Loads, false); err != nil {
		return err
	}
	q.recount(0)
	q.next()
	s.Quilts = append(s.Quilts, q)
	for i := range s.Mats { // the first mat came with the first quilt
		if m := &s.Mats[i]; m.Came.IsZero() {
			m.Came = e.At
		}
	}
	return nil
}

// addLoads puts planned loads at the end of the queue.
func (q *Quilt) addLoads(e *Event, loads []queue.Load, recut bool) error {
	for _, l := range loads {
		if l.Number < q.NextLoad {
			return cannotFollow(e, "load %d again", l.Number)
		}
		if !properLoad(q.List(), &l) {
			return cannotFollow(e, "load %d has a piece of no line, or of no rough cut", l.Number)
		}
		q.NextLoad, q.Drawings = l.Number+1, max(q.Drawings, l.Layout)
		q.Loads = append(q.Loads, Load{Load: l, ID: l.Number, Edition: len(q.Editions) - 1, Recut: recut})
	}
	q.Count.All = len(q.Loads)
	return nil
}

// properLoad says that every piece has a line and an outline, and lies on a
// rough cut of a fabric.
func properLoad(list *cutlist.List, l *queue.Load) bool {
	for _, r := range l.RoughCuts {
		if r.Fabric < 0 || r.Fabric >= len(list.Fabrics) {
			return false
		}
	}
	for _, p := range l.Pieces {
		if p.Line < 0 || p.Line >= len(list.Lines) || p.RoughCut < 0 || p.RoughCut >= len(l.RoughCuts) || len(p.Outline) == 0 {
			return false
		}
	}
	return true
}

// recount makes the counts of a plan just begun: LineDone stands.
func (q *Quilt) recount(extra int) {
	p := Pieces{Spoiled: q.Pieces.Spoiled, Extra: extra}
	for _, l := range q.List().Lines {
		if l.Kind == cutlist.OnMat {
			p.Asked += l.Count
		}
	}
	for _, n := range q.LineDone {
		p.Done += n
	}
	for i := range q.Loads {
		if l := &q.Loads[i]; !l.Done {
			first, again := l.asked()
			p.Left, p.Waiting = p.Left+first, p.Waiting+again
		}
	}
	for _, s := range q.Short {
		for line, n := range s.Missing {
			if line < len(q.List().Lines) && q.List().Lines[line].Kind == cutlist.OnMat {
				p.Short += n
			}
		}
	}
	q.Pieces = p
}

// next takes the next load in hand, or none; a quilt that lacks nothing is
// done.
func (q *Quilt) next() {
	q.Current, q.Step = 0, Fabric
	if at := q.Count.Done; at < len(q.Loads) {
		q.Current = q.Loads[at].ID
		return
	}
	if q.Pieces.Done == q.Pieces.Asked {
		q.Standing = Done
	}
}

// begun says that a load's fabric is cut, so that it can't be moved.
func (q *Quilt) begun(l *Load) bool { return l.Done || l.ID == q.Current && q.Step > Fabric }

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

func (q *Quilt) moved(e *Event, c *Moved) error {
	from := slices.IndexFunc(q.Loads, func(l Load) bool { return l.ID == c.Load })
	first := q.firstFree()
	if from < first || c.To < 0 || q.LoadsDone()+c.To < first || q.LoadsDone()+c.To >= len(q.Loads) {
		return cannotFollow(e, "load %d can't go to %d", c.Load, c.To)
	}
	to := q.LoadsDone() + c.To
	l := q.Loads[from]
	l.Skipped = c.Skip
	q.Loads = slices.Insert(slices.Delete(q.Loads, from, from+1), to, l)
	if q.Step == Fabric {
		q.next()
	}
	q.Last = Last{What: "moved", Load: c.Load}
	return nil
}

// firstFree is the index of the first load that may be moved.
func (q *Quilt) firstFree() int {
	at := q.LoadsDone()
	if at < len(q.Loads) && q.begun(&q.Loads[at]) {
		at++
	}
	return at
}

func (q *Quilt) replanned(e *Event, c *Replanned) error {
	inHand := q.InHand()
	if c.List == nil || len(c.Done) != len(c.List.Lines) || (c.Keep != nil || c.As != nil) != (inHand != nil && q.begun(inHand)) {
		return cannotFollow(e, "not a whole plan")
	}
	keep := q.Loads[:q.firstFree()]
	if c.Keep != nil {
		if c.Keep.Load.Number != inHand.ID {
			return cannotFollow(e, "load %d is in hand", inHand.ID)
		}
		inHand.Load, inHand.Edition, inHand.Recut = c.Keep.Load, len(q.Editions), false
	}
	if c.As != nil {
		if !c.properAs(len(inHand.Pieces)) {
			return cannotFollow(e, "load %d is in hand", inHand.ID)
		}
		inHand.As, inHand.Recut, inHand.Anew = c.As, false, nil
	}
	q.Loads = slices.Clip(keep)
	q.Count.All = len(q.Loads)
	q.Editions = append(q.Editions, Edition{c.Text, c.List})
	q.LineDone = slices.Clone(c.Done)
	q.Stock, q.Buy, q.Short, q.Fewest = cloneStock(c.Plan.Stock), c.Plan.Buy, c.Plan.Short, c.Plan.Fewest
	q.NoFabric = nil
	if err := q.addLoads(e, c.Plan.Loads, false); err != nil {
		return err
	}
	q.recount(c.Extra)
	if q.Standing == Done {
		q.Standing = UnderWay
	}
	if c.Keep == nil && c.As == nil {
		q.next()
	}
	q.Last = Last{What: "replanned"}
	return nil
}

// properAs says that As names a line for each piece of the load in hand.
func (c *Replanned) properAs(pieces int) bool {
	for _, as := range c.As {
		if as.Line < -1 || as.Line >= len(c.List.Lines) {
			return false
		}
	}
	return len(c.As) == pieces
}

// addUses notes what further comes out of the panels.
func (q *Quilt) addUses(uses []queue.PanelUse) {
	for _, u := range uses {
		at := slices.IndexFunc(q.Stock, func(p queue.PanelUse) bool { return p.Fabric == u.Fabric && p.Panel == u.Panel })
		if at < 0 {
			q.Stock = append(q.Stock, u)
			continue
		}
		p := &q.Stock[at]
		p.RoughCuts = append(slices.Clip(p.RoughCuts), u.RoughCuts...)
		p.Height = max(p.Height, u.Height) // a length to buy may grow
	}
}

// dropUses gives the fabric of a load back.
func (q *Quilt) dropUses(load int) {
	for i := range q.Stock {
		q.Stock[i].RoughCuts = slices.DeleteFunc(slices.Clone(q.Stock[i].RoughCuts),
			func(f queue.FromPanel) bool { return f.Load == load })
	}
}

func cloneStock(uses []queue.PanelUse) []queue.PanelUse { return slices.Clone(uses) }
