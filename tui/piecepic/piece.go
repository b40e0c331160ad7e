package piecepic

import (
	"math"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/tui/canvas"
	"example.org/matside/tui/look"
)

// Piece is what to draw.
type Piece struct {
	Outline       outline.Outline // bounding box at 0,0
	Seam          length.Len      // of it that is sewn away; 0: none is shown
	Width, Height string          // written on the lower edge and beside the right one
}

// Draw draws a piece as large as fits w by h cells. Where there is no room
// for a picture it is nothing.
func (p Piece) Draw(w, h int) *canvas.Canvas {
	box := p.Outline.Bounds()
	beside := canvas.Width(p.Height) + 1
	cols, rows := fit(box.Width(), box.Height(), w-beside, h-1)
	if cols < 1 || rows < 1 {
		return canvas.New(0, 0, canvas.Style{})
	}
	c := canvas.New(max(cols+beside, canvas.Width(p.Width)), rows+1, canvas.Style{Ink: look.Text})
	shape := canvas.Style{Ink: look.Mark}
	r := raster{p.Outline, float64(box.Width()) / float64(cols), float64(box.Height()) / float64(2*rows), float64(p.Seam)}
	for y := range rows {
		for x := range cols {
			if ch := r.cell(x, y); ch != ' ' {
				c.Rune(x, y, ch, shape)
			}
		}
	}
	strong := canvas.Style{Ink: look.Strong, Bold: true}
	c.Text(max(0, (cols-canvas.Width(p.Width))/2), rows, p.Width, strong)
	c.Text(cols+1, rows/2, p.Height, strong)
	return c
}

// fit is the largest picture of sides w and h in cols by rows cells, a cell
// being twice as high as wide.
func fit(w, h length.Len, cols, rows int) (int, int) {
	if w <= 0 || h <= 0 || cols < 1 || rows < 1 {
		return 0, 0
	}
	x, y := cols, int((int64(cols)*int64(h)/int64(w)+1)/2)
	if y > rows {
		x, y = int(2*int64(rows)*int64(w)/int64(h)), rows
	}
	return max(min(x, cols), 1), max(y, 1)
}

// raster samples an outline in steps of dx by dy, two rows to a cell.
type raster struct {
	o            outline.Outline
	dx, dy, seam float64
}

// cell is the character for a cell: whole or half of what is cut, lighter
// where all of it is seam allowance.
func (r raster) cell(x, y int) rune {
	up, down := r.at(x, 2*y), r.at(x, 2*y+1)
	switch {
	case up == outside && down == outside:
		return ' '
	case up == outside:
		return '▄'
	case down == outside:
		return '▀'
	case up == sewn && down == sewn:
		return '█'
	}
	return '▒'
}

// What a sample hits.
const (
	outside = iota
	allowance
	sewn
)

func (r raster) at(x, y int) int {
	px, py := (float64(x)+0.5)*r.dx, (float64(y)+0.5)*r.dy
	in, near := false, math.Inf(1)
	for i, a := range r.o {
		b := r.o[(i+1)%len(r.o)]
		ax, ay, bx, by := float64(a.X), float64(a.Y), float64(b.X), float64(b.Y)
		if (ay > py) != (by > py) && px < ax+(py-ay)/(by-ay)*(bx-ax) {
			in = !in
		}
		near = min(near, distance(px, py, ax, ay, bx, by))
	}
	switch {
	case !in:
		return outside
	case near < r.seam:
		return allowance
	}
	return sewn
}

// distance is how far p is from the line from a to b.
func distance(px, py, ax, ay, bx, by float64) float64 {
	vx, vy := bx-ax, by-ay
	t := 0.0
	if d := vx*vx + vy*vy; d > 0 {
		t = max(0, min(1, ((px-ax)*vx+(py-ay)*vy)/d))
	}
	return math.Hypot(px-ax-t*vx, py-ay-t*vy)
}
