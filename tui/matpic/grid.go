package matpic

import (
	"strconv"

	"example.org/matside/plan/length"
	"example.org/matside/tui/canvas"
	"example.org/matside/tui/look"
)

// pitch is how far the lines of the mat's grid are apart, and every how many
// of them has its number: each inch, or each centimetre with every fifth
// numbered.
func pitch(u length.Unit) (step length.Len, numbered int) {
	if u == length.In {
		return length.Inch, 1
	}
	return length.Centimetre, 5
}

// grid dots the crossings of the printed grid on the bare mat; where they
// would stand closer than three columns they are left out.
func (d *drawing) grid(u length.Unit, s canvas.Style) {
	step, every := pitch(u)
	step *= length.Len(every)
	if d.width < 1 || int64(d.c.W-1)*micro(step) < 3*d.width {
		return
	}
	for y := step; micro(y) < d.height; y += step {
		for x := step; micro(x) < d.width; x += step {
			d.c.Rune(d.col(x), d.row(y), '·', s)
		}
	}
}

// scale writes the numbers of the grid's lines on the mat's upper and left
// edge, as many as there is room for.
func (d *drawing) scale(u length.Unit) {
	step, every := pitch(u)
	s := canvas.Style{Ink: look.Mark, Paper: look.Sheet}
	nextX, nextY := 0, 0
	for n := every; ; n += every {
		at := step * length.Len(n)
		x, y, text := d.col(at), d.row(at), strconv.Itoa(n)
		inX, inY := micro(at) < d.width, micro(at) < d.height
		if !inX && !inY {
			return
		}
		if w := len(text); inX && x >= nextX+2 && x+w < d.c.W-1 {
			d.write(x, 0, text, s)
			nextX = x + w
		}
		if inY && y > nextY && y < d.c.H-1 {
			d.left(y, text, s)
			nextY = y
		}
	}
}

// left writes a number on the left edge; its second digit only where the mat
// is bare.
func (d *drawing) left(y int, text string, s canvas.Style) {
	if len(text) == 1 || d.c.At(1, y) == " " {
		d.write(0, y, text, s)
	}
}
