package matpic

import (
	"slices"
	"strings"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/queue"
	"example.org/matside/tui/words"
)

// Tell tells a load in words, a line for each row of pieces from the top:
// "Row 1, from the left: 4 squares 2 1/2 of Plum, line A." A row holds the
// pieces that begin above the middle of its first one.
func Tell(w words.Words, list *cutlist.List, load *queue.Load) []string {
	letters := Letters(list)
	var told []string
	for i, row := range rows(load) {
		var parts []string
		for at := 0; at < len(row); {
			line, n := row[at], 0
			for at < len(row) && row[at] == line {
				at++
				n++
			}
			l := list.Lines[line]
			parts = append(parts, w.RowPieces(w.Pieces(l, n), list.Fabrics[l.Fabric].Name, letters[line]))
		}
		told = append(told, w.Row(i+1, strings.Join(parts, "; ")))
	}
	return told
}

// rows are the lines of the pieces, row by row, each from the left.
func rows(load *queue.Load) [][]int {
	type spot struct {
		line          int
		x, y0, middle length.Len
	}
	var spots []spot
	for _, p := range load.Pieces {
		if len(p.Outline) > 0 {
			x0, y0, _, y1 := box(p.Outline)
			spots = append(spots, spot{p.Line, x0, y0, y0 + (y1-y0)/2})
		}
	}
	slices.SortStableFunc(spots, func(a, b spot) int {
		if a.y0 != b.y0 {
			return int(min(max(a.y0-b.y0, -1), 1))
		}
		return int(min(max(a.x-b.x, -1), 1))
	})
	var out [][]int
	for len(spots) > 0 {
		n := 0
		for n < len(spots) && spots[n].y0 < max(spots[0].middle, spots[0].y0+1) {
			n++
		}
		row := spots[:n:n]
		slices.SortStableFunc(row, func(a, b spot) int { return int(min(max(a.x-b.x, -1), 1)) })
		var lines []int
		for _, s := range row {
			lines = append(lines, s.line)
		}
		out, spots = append(out, lines), spots[n:]
	}
	return out
}
