package nest

import (
	"math"
	"slices"
)

// piles finds stacks of rows that fit the container's height by dynamic
// programming: top[c][v] is the least height at which the last of several rows,
// a row v, can have its top when they hold c pieces. It returns the stack with
// the most pieces, and the next best, laid.
func (m *model) piles(rows []row, limit int) [][]spot {
	d := newDrops(m, rows)
	most := 0
	for i := range rows {
		most = max(most, len(rows[i].spots))
	}
	limit = min(limit, most*(1+int(m.h/max(1, d.least()))))
	n := len(rows)
	const none = math.MaxInt64
	top := make([][]int64, limit+1)
	from := make([][]int, limit+1)
	for c := range top {
		top[c], from[c] = make([]int64, n), make([]int, n)
		for v := range rows {
			top[c][v], from[c][v] = none, -1
			if c == len(rows[v].spots) && rows[v].h <= m.h {
				top[c][v] = 0
			}
		}
	}
	for c := range top {
		for v, y := range top[c] {
			if y == none {
				continue
			}
			for w := range rows {
				at := c + len(rows[w].spots)
				if y2 := y + d.drop[v][w]; at <= limit && y2+rows[w].h <= m.h && y2 < top[at][w] {
					top[at][w], from[at][w] = y2, v
				}
			}
		}
	}
	var out [][]spot
	for c := limit; c > 0 && len(out) < maxPiles; c-- {
		best := -1
		for v, y := range top[c] {
			if y != none && (best < 0 || y+rows[v].h < top[c][best]+rows[best].h) {
				best = v
			}
		}
		if best < 0 {
			continue
		}
		if spots, ok := m.pileUp(trace(rows, from, c, best)); ok {
			out = append(out, spots)
		}
	}
	return out
}

// maxPiles is how many stacks are worth topping up.
const maxPiles = 4

func trace(rows []row, from [][]int, c, v int) []*row {
	var pile []*row
	for v >= 0 {
		pile = append(pile, &rows[v])
		c, v = c-len(rows[v].spots), from[c][v]
	}
	slices.Reverse(pile)
	return pile
}

// drops holds the distances from row to row below.
type drops struct{ drop [][]int64 }

func newDrops(m *model, rows []row) drops {
	d := drops{make([][]int64, len(rows))}
	for i := range rows {
		d.drop[i] = make([]int64, len(rows))
		for j := range rows {
			// Two short rows, one left, one right, would clear each other at no
			// distance at all, but not the rows after next.
			d.drop[i][j] = max(1, rows[j].h/2, m.gapBelow(&rows[i], &rows[j]))
		}
	}
	return d
}

func (d drops) least() int64 {
	l := int64(math.MaxInt64)
	for _, row := range d.drop {
		l = min(l, slices.Min(row))
	}
	return l
}

// pileUp lays the rows of a pile, each as high as all those above allow: a row
// with wide gaps lets the next but one through, which the distances from row to
// row don't know of. False if that makes it too high.
func (m *model) pileUp(pile []*row) ([]spot, bool) {
	var out []spot
	for _, r := range pile {
		var y int64
		for _, p := range out {
			for _, q := range r.spots {
				if d, ok := m.below(p.shape, q.shape, q.at.x-p.at.x); ok {
					y = max(y, p.at.y+d-q.at.y)
				}
			}
		}
		for _, q := range r.spots {
			if q.at.y+y+m.shapes[q.shape].h > m.h {
				return nil, false
			}
			out = append(out, spot{q.shape, vec{q.at.x, q.at.y + y}})
		}
	}
	return out, m.sound(out)
}
