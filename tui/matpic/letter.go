package matpic

import (
	"example.org/matside/plan/outline"
	"example.org/matside/tui/canvas"
	"example.org/matside/tui/glyph"
	"example.org/matside/tui/look"
)

// letter puts a piece's character on the free cell nearest to the middle of
// its corners, with a blank on either side where that is free too; as a large
// letter of some height, where that is not 0.
func (d *drawing) letter(o outline.Outline, r rune, chosen bool, height int) {
	x, y, ok := d.place(o)
	if !ok {
		return
	}
	s := canvas.Style{Ink: look.Strong, Bold: true, Reverse: chosen}
	l, ok := glyph.Fit(3*height, height, string(r))
	if height == 0 || !ok {
		d.beside(o, x, y, ' ', s)
		d.c.Over(x, y, r, s)
		return
	}
	x0, y0 := x-l.W/2, y-l.H/2
	for j := -1; j <= l.H; j++ {
		for i := -1; i <= l.W; i++ {
			if d.free(o, x0+i, y0+j) {
				d.c.Over(x0+i, y0+j, ' ', s)
			}
		}
	}
	for j, row := range l.Rows {
		d.write(x0, y0+j, row, s)
	}
}

// letterHeight is how high a letter a piece has room for; 0 for none but a plain one. Small letters have no picture of their own.
func (d *drawing) letterHeight(o outline.Outline, r rune) int {
	x, y, ok := d.place(o)
	if !ok || r >= 'a' && r <= 'z' {
		return 0
	}
	for _, h := range []int{7, 4, 3} {
		l, ok := glyph.Fit(3*h, h, string(r))
		over := 1 // the lowest may fill its piece from edge to edge
		if h == 3 {
			over = 0
		}
		if ok && l.H == h && d.allFree(o, x-l.W/2-1, y-l.H/2-over, l.W+2, l.H+2*over) {
			return h
		}
	}
	return 0
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
func (d *drawing) crossed(o outline.Outline, r rune, chosen bool) {
	s := canvas.Style{Ink: look.Strong, Bold: true, Reverse: chosen}
	d.cells(o, func(x, y int) {
		if (x+y)%2 == 0 && d.free(o, x, y) {
			d.c.Over(x, y, '╳', s)
		}
	})
	x, y, ok := d.place(o)
	switch {
	case !ok:
	case d.beside(o, x, y, '╳', s):
		d.c.Over(x, y, r, s)
	default:
		d.c.Over(x, y, '╳', s)
	}
}

func (d *drawing) place(o outline.Outline) (bestX, bestY int, ok bool) {
	if len(o) == 0 {
		return 0, 0, false
	}
	var sx, sy int64
	for _, p := range o {
		sx += micro(p.X)
		sy += micro(p.Y)
	}
	sx, sy = sx/int64(len(o)), sy/int64(len(o))
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
