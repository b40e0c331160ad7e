package matpic

import (
	"cmp"
	"slices"
	"strings"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/queue"
	"example.org/matside/tui/words"
)

// Tell tells a load in words, a line for each row of pieces from the top:
// "Row 1, from the left: 4 squares 2 1/2 of Plum, line A."
func Tell(w words.Words, list *cutlist.List, load *queue.Load) []string {
	return tell(w, list, load, func(says string, _, _ int) string { return says })
}

// TellNumbered is Tell with the numbers of the pieces, counted from 1 row by
// row: "4 squares 2 1/2 of Plum, line A, numbers 1 to 4".
func TellNumbered(w words.Words, list *cutlist.List, load *queue.Load) []string {
	return tell(w, list, load, func(says string, from, to int) string { return says + ", " + w.PlainNumbers(from, to) })
}

func tell(w words.Words, list *cutlist.List, load *queue.Load, say func(says string, from, to int) string) []string {
	letters := Letters(list)
	var told []string
	before := 0
	for i, row := range Rows(load) {
		var parts []string
		for at := 0; at < len(row); {
			line, n := load.Pieces[row[at]].Line, 0
			for at < len(row) && load.Pieces[row[at]].Line == line {
				at++
				n++
			}
			l := list.Lines[line]
			says := w.RowPieces(w.Pieces(l, n), list.Fabrics[l.Fabric].Name, letters[line])
			parts = append(parts, say(says, before+at-n+1, before+at))
		}
		before += len(row)
		told = append(told, w.Row(i+1, strings.Join(parts, "; ")))
	}
	return told
}

// PlaceOf is the row of a piece and its place in the row, both from 0; -1
// where it is in none.
func PlaceOf(rows [][]int, piece int) (row, place int) {
	for r, pieces := range rows {
		if i := slices.Index(pieces, piece); i >= 0 {
			return r, i
		}
	}
	return -1, -1
}

// Rows are the pieces of a load, by index, row by row from the top and each
// row from the left. A row holds the pieces that begin above the middle of
// its first one.
func Rows(load *queue.Load) [][]int {
	type spot struct {
		piece         int
		x, y0, middle length.Len
	}
	var spots []spot
	for i, p := range load.Pieces {
		if len(p.Outline) > 0 {
			x0, y0, _, y1 := box(p.Outline)
			spots = append(spots, spot{i, x0, y0, y0 + (y1-y0)/2})
		}
	}
	byX := func(a, b spot) int { return cmp.Compare(a.x, b.x) }
	slices.SortStableFunc(spots, func(a, b spot) int { return cmp.Or(cmp.Compare(a.y0, b.y0), byX(a, b)) })
	var out [][]int
	for len(spots) > 0 {
		n := 0
		for n < len(spots) && spots[n].y0 < max(spots[0].middle, spots[0].y0+1) {
			n++
		}
		row := spots[:n:n]
		slices.SortStableFunc(row, byX)
		var pieces []int
		for _, s := range row {
			pieces = append(pieces, s.piece)
		}
		out, spots = append(out, pieces), spots[n:]
	}
	return out
}

// Move is the piece beside piece at in a direction: dx -1 or 1 along the
// rows, which follow each other; dy -1 or 1 to the nearest in the row above
// or below. A piece that is not there (-1) moves to the first. Where there is
// none, at stays.
func Move(load *queue.Load, at, dx, dy int) int {
	rows := Rows(load)
	flat := slices.Concat(rows...)
	i := slices.Index(flat, at)
	switch {
	case len(flat) == 0:
		return -1
	case i < 0:
		return flat[0]
	case dy == 0:
		return flat[min(max(i+dx, 0), len(flat)-1)]
	}
	r := slices.IndexFunc(rows, func(row []int) bool { return slices.Contains(row, at) })
	if r+dy < 0 || r+dy >= len(rows) {
		return at
	}
	middle := func(piece int) length.Len {
		x0, _, x1, _ := box(load.Pieces[piece].Outline)
		return x0 + (x1-x0)/2
	}
	far := func(piece int) length.Len { return max(middle(piece)-middle(at), middle(at)-middle(piece)) }
	return slices.MinFunc(rows[r+dy], func(a, b int) int { return cmp.Compare(far(a), far(b)) })
}
