package guide

import (
	"slices"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/queue"
	"example.org/matside/tui/words"
)

// Told is a sentence, and how it is meant.
type Told struct {
	Says string
	Tone Tone
}

// Tone is how a sentence is meant.
type Tone uint8

// As any other; the one that counts; good news; not good.
const (
	Even Tone = iota
	Main
	Good
	Bad
)

// Plan tells what a cut list just written comes to: its loads, then of each
// fabric what there is to buy, what is short, or that there is enough.
func Plan(w words.Words, q *queue.Queue) (loads, fabrics []Told) {
	pieces := 0
	for _, l := range q.Loads {
		pieces += len(l.Pieces)
	}
	switch {
	case len(q.Loads) == 0:
		loads = []Told{{w.PlanNothing(), Bad}}
	case q.Fewest.Proved:
		loads = []Told{{w.PlanPieces(pieces, len(q.Loads)), Main}, {w.PlanProved(), Good}}
	default:
		loads = []Told{{w.PlanPieces(pieces, len(q.Loads)), Main}, {w.PlanAtLeast(q.Fewest.Loads), Even}}
	}
	return loads, planFabrics(w, q)
}

func planFabrics(w words.Words, q *queue.Queue) []Told {
	u := q.List.Unit
	buy, short := map[int]queue.Buy{}, map[int]queue.Short{}
	for _, b := range q.Buy {
		buy[b.Fabric] = b
	}
	for _, s := range q.Short {
		short[s.Fabric] = s
	}
	var told []Told
	for i, f := range q.List.Fabrics {
		b, wanted := buy[i]
		missing, isShort := short[i]
		switch {
		case isShort:
			n := 0
			for line, count := range missing.Missing {
				if q.List.Lines[line].Kind == cutlist.OnMat {
					n += count
				}
			}
			more := ""
			if _, long := missing.ToBuy(q.List); long > 0 {
				more = w.Yards(long, u)
			}
			told = append(told, Told{w.PlanShort(f.Name, n, more), Bad})
		case wanted:
			told = append(told, Told{w.PlanBuy(f.Name, w.SizeUnit(b.Width, u), w.Yards(b.Length, u)), Even})
		case slices.ContainsFunc(q.List.Lines, func(l cutlist.Line) bool { return l.Fabric == i }):
			told = append(told, Told{w.PlanEnough(f.Name), Even})
		}
	}
	return told
}
