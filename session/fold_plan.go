package session

import (
	"slices"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/queue"
)

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
	q.Stock, q.Buy, q.Short, q.Fewest = slices.Clone(c.Plan.Stock), c.Plan.Buy, c.Plan.Short, c.Plan.Fewest
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
	q.Stock, q.Buy, q.Short, q.Fewest = slices.Clone(c.Plan.Stock), c.Plan.Buy, c.Plan.Short, c.Plan.Fewest
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
