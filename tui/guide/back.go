package guide

import (
	"cmp"
	"slices"

	"example.org/matside/plan/cutlist"
	"example.org/matside/session"
	"example.org/matside/tui/words"
)

// spoiled walks over all spoiled pieces that are known one by one.
func spoiled(state *session.State, f func(list *cutlist.List, l *session.Load, piece int)) {
	for _, q := range state.Quilts {
		for i := range q.Loads {
			l := &q.Loads[i]
			for _, p := range l.Spoiled {
				if p < len(l.Pieces) {
					f(q.ListOf(l), l, p)
				}
			}
		}
	}
}

// Count is how many there are of a name.
type Count struct {
	Name string
	N    int
}

// SpoiledIn is how many pieces were spoiled of each fabric, the most first.
func SpoiledIn(state *session.State) []Count {
	count := make(map[string]int)
	spoiled(state, func(list *cutlist.List, l *session.Load, piece int) {
		count[list.Fabrics[list.Lines[l.Pieces[piece].Line].Fabric].Name]++
	})
	var all []Count
	for name, n := range count {
		all = append(all, Count{name, n})
	}
	slices.SortFunc(all, func(a, b Count) int { return cmp.Or(cmp.Compare(b.N, a.N), cmp.Compare(a.Name, b.Name)) })
	return all
}

// SpoiledAt is how many were spoiled in each ninth of the mat, by rows from
// the top.
func SpoiledAt(state *session.State) (ninths [3][3]int) {
	spoiled(state, func(list *cutlist.List, l *session.Load, piece int) {
		var x, y, n int64
		for _, p := range l.Pieces[piece].Outline {
			x, y, n = x+int64(p.X/1000), y+int64(p.Y/1000), n+1
		}
		if n > 0 {
			ninth := func(sum int64, side int64) int { return int(min(max(3*sum/n/max(side/1000, 1), 0), 2)) }
			ninths[ninth(y, int64(list.Mat.Height))][ninth(x, int64(list.Mat.Width))]++
		}
	})
	return ninths
}

// Card is how far a quilt is; short where there is little room.
func Card(w words.Words, card session.Card, short bool) string {
	says := w.PiecesOf(card.Pieces.Done, card.Pieces.Asked)
	if card.Standing == session.Done {
		return says
	}
	says += ", " + w.LoadsLeft(card.LoadsLeft)
	if card.LoadsLeft == 0 {
		return says
	}
	time := w.TimeLeft
	if short {
		time = w.TimeLeftShort
	}
	return says + ", " + time(card.Left.Mid, card.Left.Guess)
}
