package session

import (
	"fmt"
	"slices"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/queue"
)

// pieceKey is what makes two pieces the same to her: fabric, label, shape and
// outline, whatever lines they stand in.
type pieceKey struct{ fabric, label, shape, outline string }

func keyOf(list *cutlist.List, line int) pieceKey {
	l := &list.Lines[line]
	return pieceKey{list.Fabrics[l.Fabric].Name, l.Label, l.Shape, fmt.Sprint(l.Outline)}
}

// replan plans what an edited cut list still asks for. Pieces that are done
// stay done, matched by key. The load in hand, once its fabric is cut, stays as
// it is: pieces that the new list no longer asks for come out as extra.
func (q *Quilt) replan(a *Replan, plan Planner) (Content, error) {
	if a.List == nil {
		return nil, fmt.Errorf("session: replan needs a cut list")
	}
	r := Replanned{Text: a.Text, List: a.List}
	room := newRoom(a.List)
	r.Done, r.Extra = q.carryDone(a.List, room)
	if l := q.InHand(); l != nil && q.begun(l) {
		r.As = q.as(l, room)
	}
	used := q.usedUnder(a.List)
	planned, err := plan(a.List, Wish{room.left(), true, used})
	if err != nil {
		return nil, fmt.Errorf("planning what is left: %w", err)
	}
	r.Plan = Planned{q.drawn(numbered(planned.Loads, q.NextLoad)), mergeUses(used, renumbered(planned.Stock, q.NextLoad)),
		planned.Buy, planned.Short, planned.Fewest}
	return r, nil
}

// room is how many pieces each line of a new list still takes, and which
// lines take a key.
type room struct {
	list  *cutlist.List
	taken []int
	lines map[pieceKey][]int
}

func newRoom(list *cutlist.List) *room {
	r := &room{list, make([]int, len(list.Lines)), map[pieceKey][]int{}}
	for i := range list.Lines {
		if list.Lines[i].Kind == cutlist.OnMat {
			k := keyOf(list, i)
			r.lines[k] = append(r.lines[k], i)
		}
	}
	return r
}

// take finds a line for one piece of key k and the copy it becomes.
func (r *room) take(k pieceKey) (Copy, bool) {
	for _, line := range r.lines[k] {
		if r.taken[line] < r.list.Lines[line].Count {
			r.taken[line]++
			return Copy{line, r.taken[line]}, true
		}
	}
	return Copy{}, false
}

// left are the copies that no piece has taken.
func (r *room) left() []Copy {
	out := []Copy{}
	for i, l := range r.list.Lines {
		if l.Kind != cutlist.OnMat {
			continue
		}
		for c := r.taken[i] + 1; c <= l.Count; c++ {
			out = append(out, Copy{i, c})
		}
	}
	return out
}

// carryDone takes room for the pieces done, and counts those that no line
// takes.
func (q *Quilt) carryDone(list *cutlist.List, room *room) (done []int, extra int) {
	done, extra = make([]int, len(list.Lines)), q.Pieces.Extra
	for line, n := range q.LineDone {
		if n == 0 {
			continue
		}
		k := keyOf(q.List(), line)
		for range n {
			if c, ok := room.take(k); ok {
				done[c.Line]++
			} else {
				extra++
			}
		}
	}
	return done, extra
}

// as says what each piece of the load in hand counts as in the new list.
func (q *Quilt) as(l *Load, room *room) []Copy {
	list := q.ListOf(l)
	as := make([]Copy, len(l.Pieces))
	for i, p := range l.Pieces {
		c, ok := room.take(keyOf(list, p.Line))
		if !ok {
			c = Copy{Line: -1}
		}
		as[i] = c
	}
	return as
}

func fabricNamed(list *cutlist.List, name string) int {
	return slices.IndexFunc(list.Fabrics, func(f cutlist.Fabric) bool { return f.Name == name })
}

// usedUnder is what has been cut out of the panels so far, by the new list's
// fabrics. A fabric whose stock she has written anew is taken at her word: all
// of it is there.
func (q *Quilt) usedUnder(list *cutlist.List) []queue.PanelUse {
	cut := map[int]bool{}
	for i := range q.Loads {
		if q.begun(&q.Loads[i]) {
			cut[q.Loads[i].ID] = true
		}
	}
	var out []queue.PanelUse
	for _, u := range q.Stock {
		old := q.List().Fabrics[u.Fabric]
		at := fabricNamed(list, old.Name)
		if at < 0 || !slices.Equal(list.Fabrics[at].Stock, old.Stock) {
			continue
		}
		u.Fabric, u.ByHand = at, nil
		u.RoughCuts = slices.DeleteFunc(slices.Clone(u.RoughCuts), func(f queue.FromPanel) bool { return !cut[f.Load] })
		if len(u.RoughCuts) > 0 {
			out = append(out, u)
		}
	}
	return out
}

// mergeUses puts what comes out of the same panel together.
func mergeUses(a, b []queue.PanelUse) []queue.PanelUse {
	q := Quilt{Stock: slices.Clone(a)}
	q.addUses(b)
	return q.Stock
}
