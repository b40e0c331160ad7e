package matpic

import (
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/tui/canvas"
	"example.org/matside/tui/glyph"
	"example.org/matside/tui/look"
)

// letters writes a character on each piece, all of a line in one size: as a
// large one where large is asked for and every piece of the line has room.
type letters struct {
	d      *drawing
	places []place                // of each piece
	high   map[int]int            // the height of a line's letter, 0 for a plain one
	large  map[rune][]glyph.Lines // a character in the heights it may have
}

// place is the free cell nearest to the middle of a piece.
type place struct {
	x, y int
	ok   bool
}

// heights are those of large letters, the largest first.
var heights = []int{7, 4, 3}

// pictures are a character in all heights; a small letter has none of its own.
func (l *letters) pictures(r rune) []glyph.Lines {
	all, ok := l.large[r]
	if !ok && (r < 'a' || r > 'z') {
		for _, h := range heights {
			if g, ok := glyph.Fit(3*h, h, string(r)); ok && g.H == h {
				all = append(all, g)
			}
		}
		l.large[r] = all
	}
	return all
}

// room is how high a letter a piece has room for; 0 for none but a plain one.
func (l *letters) room(o outline.Outline, at place, r rune) int {
	if !at.ok {
		return 0
	}
	for _, g := range l.pictures(r) {
		over := 1 // the lowest may fill its piece from edge to edge
		if g.H == heights[len(heights)-1] {
			over = 0
		}
		if l.d.allFree(o, at.x-g.W/2-1, at.y-g.H/2-over, g.W+2, g.H+2*over) {
			return g.H
		}
	}
	return 0
}

// write writes a character, with blanks around it where that is free too.
func (l *letters) write(o outline.Outline, at place, r rune, height int, chosen bool) {
	if !at.ok {
		return
	}
	s := canvas.Style{Ink: look.Strong, Bold: true, Reverse: chosen}
	for _, g := range l.pictures(r) {
		if g.H == height {
			l.block(o, at.x-g.W/2, at.y-g.H/2, g, s)
			return
		}
	}
	l.d.beside(o, at.x, at.y, ' ', s)
	l.d.c.Over(at.x, at.y, r, s)
}

func (l *letters) block(o outline.Outline, x, y int, g glyph.Lines, s canvas.Style) {
	for j := -1; j <= g.H; j++ {
		for i := -1; i <= g.W; i++ {
			if l.d.free(o, x+i, y+j) {
				l.d.c.Over(x+i, y+j, ' ', s)
			}
		}
	}
	for j, row := range g.Rows {
		l.d.write(x, y+j, row, s)
	}
}

// beside puts a character on the free cells left and right of x, y, and
// reports whether there was one.
func (d *drawing) beside(o outline.Outline, x, y int, r rune, s canvas.Style) bool {
	put := false
	for _, side := range []int{x - 1, x + 1} {
		if d.free(o, side, y) {
			d.c.Over(side, y, r, s)
			put = true
		}
	}
	return put
}

func (d *drawing) allFree(o outline.Outline, x, y, w, h int) bool {
	for j := y; j < y+h; j++ {
		for i := x; i < x+w; i++ {
			if !d.free(o, i, j) {
				return false
			}
		}
	}
	return true
}

// crossed strikes a piece out: crosses over all of it, about its letter; in
// a piece of one cell a cross alone.
func (d *drawing) crossed(o outline.Outline, at place, r rune, chosen bool) {
	s := canvas.Style{Ink: look.Strong, Bold: true, Reverse: chosen}
	d.cells(o, func(x, y int) {
		if (x+y)%2 == 0 && d.free(o, x, y) {
			d.c.Over(x, y, '╳', s)
		}
	})
	switch {
	case !at.ok:
	case d.beside(o, at.x, at.y, '╳', s):
		d.c.Over(at.x, at.y, r, s)
	default:
		d.c.Over(at.x, at.y, '╳', s)
	}
}

// amid is the cell in the middle of a piece, whatever runs through it: where
// a piece that has no cell of its own is marked.
func (d *drawing) amid(o outline.Outline) (x, y int) {
	sx, sy := centre(o)
	return d.col(length.Len(sx) * length.Micrometre), d.row(length.Len(sy) * length.Micrometre)
}

// centre is the middle of the corners, in micrometres.
func centre(o outline.Outline) (x, y int64) {
	for _, p := range o {
		x += micro(p.X)
		y += micro(p.Y)
	}
	return x / int64(len(o)), y / int64(len(o))
}

// place is the free cell nearest to the middle of a piece.
func (d *drawing) place(o outline.Outline) (bestX, bestY int, ok bool) {
	if len(o) == 0 {
		return 0, 0, false
	}
	sx, sy := centre(o)
	best := int64(-1)
	d.cells(o, func(x, y int) {
		if !d.free(o, x, y) {
			return
		}
		mx, my := d.middle(x, y)
		far := (mx-sx)*(mx-sx) + (my-sy)*(my-sy)
		if !d.free(o, x-1, y) && !d.free(o, x+1, y) {
			far += d.width * d.width // squeezed between two lines: only if there is nothing better
		}
		if best < 0 || far < best {
			best, bestX, bestY = far, x, y
		}
	})
	return bestX, bestY, best >= 0
}

// free reports whether a cell lies inside o and no line runs through it.
func (d *drawing) free(o outline.Outline, x, y int) bool {
	if x < 1 || y < 1 || x >= d.c.W-1 || y >= d.c.H-1 {
		return false
	}
	i := y*d.c.W + x
	mx, my := d.middle(x, y)
	return d.solid[i] == 0 && d.dots[i] == 0 && inside(o, mx, my)
}
