package session

import (
	"cmp"
	"fmt"
	"slices"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/queue"
	"example.org/matside/session/reason"
)

// This file brings spoiled pieces back: on loads of their own at the end, or
// in the free room of loads planned before, whichever takes fewer loads.

// planRecut plans wanted, together with the recuts that wait if join, but for
// the load in hand.
func (q *Quilt) planRecut(wanted []Copy, inHand int, join bool, plan Planner) (*Recut, error) {
	if !join {
		r, err := q.planAlone(wanted, nil, plan)
		if err == nil {
			r.Short = append(slices.Clone(q.NoFabric), r.Short...)
		}
		return r, err
	}
	wanted = append(slices.Clone(wanted), q.NoFabric...)
	var drop []int
	for i := range q.Loads {
		if l := &q.Loads[i]; l.Recut && q.free(l, inHand) {
			drop = append(drop, l.ID)
			wanted = append(wanted, l.copies()...)
		}
	}
	alone, err := q.planAlone(wanted, drop, plan)
	if err != nil || len(alone.Plan.Loads) == 0 {
		return alone, err
	}
	return q.planInto(alone, wanted, drop, inHand, plan)
}

// free says that a load's fabric is uncut and she isn't at it.
func (q *Quilt) free(l *Load, inHand int) bool { return !q.begun(l) && l.ID != inHand }

// copies are what a load to come brings.
func (l *Load) copies() []Copy {
	var out []Copy
	for i := range l.Pieces {
		if c, ok := l.counts(i); ok {
			out = append(out, c)
		}
	}
	return out
}

// planAlone plans wanted on loads of its own, once drop is out of the queue.
func (q *Quilt) planAlone(wanted []Copy, drop []int, plan Planner) (*Recut, error) {
	r := &Recut{Drop: drop}
	if len(wanted) == 0 {
		return r, nil
	}
	wanted = slices.Clone(wanted)
	slices.SortFunc(wanted, func(a, b Copy) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Copy, b.Copy))
	})
	planned, err := plan(q.List(), Wish{Wanted: wanted, Used: without(q.Stock, drop)})
	if err != nil {
		return nil, fmt.Errorf("planning the pieces to cut again: %w", err)
	}
	r.Plan = Planned{Loads: q.drawn(numbered(planned.Loads, q.NextLoad)), Stock: renumbered(planned.Stock, q.NextLoad), Buy: planned.Buy}
	r.Short = missing(wanted, planned.Loads)
	return r, nil
}

// Taking in: at most so many loads at once, and at most so many of each number
// are tried, the emptiest first. Each try is a small plan.
const (
	mostTakenIn = 3
	mostTries   = 3
)

// planInto tries to take planned loads with room in, so that fewer loads come
// to the queue than alone brings; where it can't, it is alone.
func (q *Quilt) planInto(alone *Recut, wanted []Copy, drop []int, inHand int, plan Planner) (*Recut, error) {
	best, least := alone, len(alone.Plan.Loads)
	roomy := q.roomy(wanted, inHand)
	for n := 1; n <= min(mostTakenIn, len(roomy)) && least > 0; n++ {
		for from := 0; from+n <= len(roomy) && from < mostTries && least > 0; from++ {
			more, all := slices.Clone(drop), slices.Clone(wanted)
			for _, l := range roomy[from : from+n] {
				more, all = append(more, l.ID), append(all, l.copies()...)
			}
			r, err := q.planAlone(all, more, plan)
			if err != nil {
				return nil, err
			}
			if extra := len(r.Plan.Loads) - n; extra < least && subset(r.Short, alone.Short) {
				best, least = r, extra
			}
		}
	}
	return best, nil
}

// subset says that nothing is short that was not so before.
func subset(short, of []Copy) bool {
	return !slices.ContainsFunc(short, func(c Copy) bool { return !slices.Contains(of, c) })
}

// roomy are the planned loads that leave room for the smallest piece wanted,
// the emptiest first. One that is put off is left alone: its fabric isn't
// ready.
func (q *Quilt) roomy(wanted []Copy, inHand int) []*Load {
	list := q.List()
	smallest := int64(1) << 62
	for _, c := range wanted {
		if len(list.Lines[c.Line].Outline) == 0 {
			continue
		}
		b := list.Lines[c.Line].Outline.Bounds()
		smallest = min(smallest, squareMicrons(b.Max.X-b.Min.X, b.Max.Y-b.Min.Y))
	}
	var out []*Load
	for i := range q.Loads {
		if l := &q.Loads[i]; !l.Recut && !l.Skipped && l.ID != q.Current && q.free(l, inHand) && uncovered(list, l) >= smallest {
			out = append(out, l)
		}
	}
	slices.SortStableFunc(out, func(a, b *Load) int { return cmp.Compare(uncovered(list, b), uncovered(list, a)) })
	return out
}

// uncovered is the part of the usable mat that no piece covers, also where its
// rough cut lies.
func uncovered(list *cutlist.List, l *Load) int64 {
	free := squareMicrons(list.Mat.UsableWidth, list.Mat.UsableHeight)
	for _, p := range l.Pieces {
		free -= p.Outline.Area().FloorDiv(length.Mul(length.Micrometre, length.Micrometre))
	}
	return free
}

// without are the uses less those of the loads dropped.
func without(uses []queue.PanelUse, drop []int) []queue.PanelUse {
	out := slices.Clone(uses)
	for i := range out {
		out[i].RoughCuts = slices.DeleteFunc(slices.Clone(out[i].RoughCuts),
			func(f queue.FromPanel) bool { return slices.Contains(drop, f.Load) })
	}
	return out
}

// missing are the copies wanted that no load brings.
func missing(wanted []Copy, loads []queue.Load) []Copy {
	brought := map[Copy]bool{}
	for i := range loads {
		for _, p := range loads[i].Pieces {
			brought[Copy{p.Line, p.Copy}] = true
		}
	}
	var out []Copy
	for _, c := range wanted {
		if !brought[c] {
			out = append(out, c)
		}
	}
	return out
}

func (q *Quilt) join(plan Planner) (Content, error) {
	r, err := q.planRecut(nil, 0, true, plan)
	if err != nil {
		return nil, err
	}
	if len(r.Drop) < 2 && len(q.NoFabric) == 0 {
		return nil, refuse(reason.NoneToJoin)
	}
	return Joined{*r}, nil
}

// recut folds one: it takes loads out and puts new ones in, where the first
// planned one stood, or at the end.
func (q *Quilt) recut(e *Event, c *Recut) error {
	old := map[Copy]bool{} // pieces that were planned before, and aren't cut again
	place, before := -1, len(q.Loads)
	for _, id := range c.Drop {
		at := slices.IndexFunc(q.Loads, func(l Load) bool { return l.ID == id })
		if at < 0 || q.begun(&q.Loads[at]) {
			return cannotFollow(e, "load %d doesn't wait", id)
		}
		l := &q.Loads[at]
		for i, copied := range l.copies() {
			if !l.CutAgain(i) {
				old[copied] = true
			}
		}
		if !l.Recut && (place < 0 || at < place) {
			place = at
		}
	}
	for _, id := range c.Drop {
		at := slices.IndexFunc(q.Loads, func(l Load) bool { return l.ID == id })
		q.dropUses(id)
		q.Loads = slices.Delete(q.Loads, at, at+1)
		if at < place {
			place--
		}
	}
	kept := len(q.Loads)
	q.addUses(c.Plan.Stock)
	if err := q.addLoads(e, c.Plan.Loads, false); err != nil {
		return err
	}
	q.Again = Again{Short: slices.Clone(c.Short), Extra: len(q.Loads) - before}
	q.buyMore(c.Plan.Buy)
	for i := kept; i < len(q.Loads); i++ {
		q.markAgain(&q.Loads[i], old)
	}
	if place >= 0 {
		added := slices.Clone(q.Loads[kept:])
		q.Loads = slices.Insert(q.Loads[:kept:kept], place, added...)
	}
	q.NoFabric = c.Short
	if left, waiting := q.toCome(); left != q.Pieces.Left || waiting != q.Pieces.Waiting {
		return cannotFollow(e, "%d pieces are to come and %d to be cut again, the recut brings %d and %d", q.Pieces.Left, q.Pieces.Waiting, left, waiting)
	}
	q.Last = Last{What: "joined"}
	return nil
}

// markAgain marks a new load's pieces that are cut again, and notes them in
// q.Again.
func (q *Quilt) markAgain(l *Load, old map[Copy]bool) {
	var anew []int
	for i := range l.Pieces {
		p := &l.Pieces[i]
		if old[Copy{p.Line, p.Copy}] {
			continue
		}
		anew = append(anew, i)
		r := l.RoughCuts[p.RoughCut]
		if from := (Source{r.Fabric, r.Panel}); !slices.Contains(q.Again.From, from) {
			q.Again.From = append(q.Again.From, from)
		}
	}
	if len(anew) == 0 {
		return
	}
	q.Again.Pieces += len(anew)
	q.Again.Loads = append(q.Again.Loads, l.ID)
	if l.Recut = len(anew) == len(l.Pieces); !l.Recut {
		l.Anew = anew
	}
}

// buyMore adds to what a fabric without stock takes: a recut that finds no room
// in what is bought comes out of a length more.
func (q *Quilt) buyMore(more []queue.Buy) {
	q.Again.Buy = more
	q.Buy = slices.Clone(q.Buy)
	for _, b := range more {
		at := slices.IndexFunc(q.Buy, func(o queue.Buy) bool { return o.Fabric == b.Fabric })
		if at < 0 {
			q.Buy = append(q.Buy, b)
		} else {
			q.Buy[at].Length += b.Length
		}
	}
}

// toCome counts the pieces that loads to come are to bring: those cut for the
// first time, and those cut again, the ones without fabric too.
func (q *Quilt) toCome() (left, waiting int) {
	waiting = len(q.NoFabric)
	for i := range q.Loads {
		if l := &q.Loads[i]; !l.Done {
			first, again := l.asked()
			left, waiting = left+first, waiting+again
		}
	}
	return left, waiting
}

// count notes where the pieces of a peeled load lay.
func (w *Where) count(list *cutlist.List, l *Load) {
	mat := &list.Mat
	for i := range l.Pieces {
		b := l.Pieces[i].Outline.Bounds()
		row := third((b.Min.Y+b.Max.Y)/2-(mat.Height-mat.UsableHeight)/2, mat.UsableHeight)
		column := third((b.Min.X+b.Max.X)/2-(mat.Width-mat.UsableWidth)/2, mat.UsableWidth)
		w.Pieces[row][column]++
		if slices.Contains(l.Spoiled, i) {
			w.Spoiled[row][column]++
		}
	}
}

// third says in which third of a width a place lies.
func third(at, of length.Len) int {
	if of <= 0 {
		return 0
	}
	return int(max(0, min(3*at/of, 2)))
}
