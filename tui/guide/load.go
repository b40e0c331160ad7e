package guide

import (
	"slices"
	"time"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/session"
	"example.org/matside/session/pace"
	"example.org/matside/tui/words"
)

// Of are the facts of the step in hand of a quilt that has one.
func Of(state *session.State, q *session.Quilt, unit length.Unit) Facts {
	load := q.InHand()
	list := q.ListOf(load)
	f := Facts{List: list, Load: &load.Load, Step: q.Step, Mat: q.Mat, Unit: unit,
		Panels: func(fabric int) int { return len(list.Fabrics[fabric].Stock) }}
	f.Ready = func(rough int) bool { return ready(q, f, rough) }
	if f.Step == session.Cut {
		f.Takes = CutTakes(state, load)
		if to := q.ToCome(); len(to) > 1 {
			f.Next = Fabrics(q, &to[1])
		}
	}
	return f
}

// Unit is the unit to write lengths in: the one she has set, "in" or "cm", or
// else the one that the quilt's list is written in. A quilt that was finished
// long ago is known without its list.
func Unit(set string, q *session.Quilt) length.Unit {
	switch {
	case set == "cm":
		return length.Cm
	case set == "in" || q == nil || q.List() == nil:
		return length.In
	}
	return q.List().Unit
}

// Fabrics are the names of the fabrics on a load, each once.
func Fabrics(q *session.Quilt, l *session.Load) []string {
	var names []string
	for _, r := range l.RoughCuts {
		if n := q.ListOf(l).Fabrics[r.Fabric].Name; !slices.Contains(names, n) {
			names = append(names, n)
		}
	}
	return names
}

// State is how a load stands in a word or two, "" where it is just to come.
func State(w words.Words, q *session.Quilt, l *session.Load) string {
	switch {
	case l.Done && len(l.Spoiled) > 0:
		return w.StateSpoiled(len(l.Spoiled))
	case l.Done:
		return w.StateDone()
	case l.ID == q.Current:
		return w.StateNow()
	case l.Skipped:
		return w.StatePutOff()
	case l.Recut:
		return w.Recut()
	}
	return ""
}

// CutTakes is how long the cutter should take for a load.
func CutTakes(state *session.State, l *session.Load) time.Duration {
	p := state.Pace()
	return p.Took(int(session.Cut), CutMetres(l))
}

// CutMetres is how far the blade goes for a load, as pace counts it.
func CutMetres(l *session.Load) float64 { return float64(l.CutLength/length.Millimetre) / 1000 }

// ByHand is how many lines of a quilt are cut at the table.
func ByHand(q *session.Quilt) int {
	if q.List() == nil { // finished long ago: it is known in brief
		return 0
	}
	n := 0
	for _, l := range q.List().Lines {
		if l.Kind != cutlist.OnMat {
			n++
		}
	}
	return n
}

// Minutes is how long a load took, or should take.
func Minutes(p pace.Pace, l *session.Load) time.Duration {
	var sum time.Duration
	for step := range session.Steps {
		if l.Done {
			sum += l.Work[step]
		} else {
			sum += max(p.Took(step, CutMetres(l)), l.Work[step])
		}
	}
	return sum
}
