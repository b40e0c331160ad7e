package matpic

import (
	"strconv"
	"strings"
	"unicode"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
	"example.org/matside/tui/canvas"
	"example.org/matside/tui/look"
)

// drawing maps the mat onto the cells of a canvas. Lines run through the
// middles of cells; the mat's own edge through the outermost.
type drawing struct {
	c             *canvas.Canvas
	width, height int64   // of the mat, micrometres
	solid, broken []uint8 // sides a box line leaves each cell by
	dots          []uint8 // Braille dots of each cell
	paper         []uint8 // of each cell filled by a fabric, else 0
}

// The sides a line leaves a cell by.
const (
	up uint8 = 1 << iota
	right
	down
	left
)

// light and dashed are the box characters by sides.
var (
	light  = []rune(" ╵╶└╷│┌├╴┘─┴┐┤┬┼")
	dashed = []rune(" ╎╌└╎╎┌├╌┘╌┴┐┤┬┼")
)

func newDrawing(c *canvas.Canvas, width, height length.Len) *drawing {
	n := c.W * c.H
	return &drawing{c, micro(width), micro(height), make([]uint8, n), make([]uint8, n), make([]uint8, n), make([]uint8, n)}
}

// col and row are the cells a coordinate falls in, rounded, and inside the
// mat's own edge, so that a rough cut at the very edge still shows its own.
func (d *drawing) col(x length.Len) int {
	return min(max(nearest(micro(x)*int64(d.c.W-1), d.width), 1), d.c.W-2)
}

func (d *drawing) row(y length.Len) int {
	return min(max(nearest(micro(y)*int64(d.c.H-1), d.height), 1), d.c.H-2)
}

func nearest(a, b int64) int { return int((2*a + b) / (2 * b)) }

// middle is the place on the mat, in micrometres, of a cell's middle.
func (d *drawing) middle(x, y int) (int64, int64) {
	return int64(x) * d.width / int64(d.c.W-1), int64(y) * d.height / int64(d.c.H-1)
}

// cells calls f for each cell that may lie inside o.
func (d *drawing) cells(o outline.Outline, f func(x, y int)) {
	if len(o) == 0 {
		return
	}
	x0, y0, x1, y1 := box(o)
	for y := max(d.row(y0), 0); y <= min(d.row(y1), d.c.H-1); y++ {
		for x := max(d.col(x0), 0); x <= min(d.col(x1), d.c.W-1); x++ {
			f(x, y)
		}
	}
}

// fill lays a fabric's paper and pattern over a piece.
func (d *drawing) fill(o outline.Outline, fabric int, chosen bool) {
	s := canvas.Style{Ink: look.Mark, Paper: look.Cloth(fabric), Reverse: chosen}
	d.cells(o, func(x, y int) {
		if mx, my := d.middle(x, y); inside(o, mx, my) {
			d.c.Rune(x, y, Pattern(fabric, x, y), s)
			d.paper[y*d.c.W+x] = s.Paper
		}
	})
}

// zone names the cells inside o for a pointer, a run of each row at a time.
func (d *drawing) zone(o outline.Outline, name string) {
	from, row, n := 0, -1, 0
	d.cells(o, func(x, y int) {
		switch mx, my := d.middle(x, y); {
		case !inside(o, mx, my):
		case y == row && x == from+n:
			n++
		default:
			d.c.Zone(from, row, n, 1, name)
			from, row, n = x, y, 1
		}
	})
	d.c.Zone(from, row, n, 1, name)
}

func roughOutline(r queue.RoughCut) outline.Outline {
	return corners(r.X, r.Y, r.Width, r.Height)
}

func corners(x, y, w, h length.Len) outline.Outline {
	return outline.Outline{{X: x, Y: y}, {X: x + w, Y: y}, {X: x + w, Y: y + h}, {X: x, Y: y + h}}
}

// waste lays the fabric beside the pieces and its broken edge.
func (d *drawing) waste(r queue.RoughCut) {
	o := roughOutline(r)
	waste := canvas.Style{Ink: look.Mark, Paper: look.Waste}
	d.cells(o, func(x, y int) { d.c.Rune(x, y, ' ', waste) })
	d.straight(d.broken, o)
}

// bare shows a rough cut whole.
func (d *drawing) bare(r queue.RoughCut) {
	o := roughOutline(r)
	d.fill(o, r.Fabric, false)
	d.straight(d.solid, o)
}

// number puts the number of a rough cut in its middle, or in the row nearest
// to it that has no size of it: 1 beside 10 would be read as 110.
func (d *drawing) number(o outline.Outline, n int) {
	x0, y0, x1, y1 := box(o)
	x, y := d.col(x0+(x1-x0)/2), d.row(y0+(y1-y0)/2)
	text := " " + strconv.Itoa(n) + " "
	for _, off := range []int{0, 1, -1, 2, -2} {
		row := y + off
		if row < d.row(y0) || row > d.row(y1) || d.paper[row*d.c.W+x] == 0 || d.written(x-3, row, len(text)+4) {
			continue
		}
		d.write(x-1, row, text, canvas.Style{Ink: look.Strong, Bold: true})
		return
	}
}

// written reports that a size stands in some of the n cells from x on.
func (d *drawing) written(x, y, n int) bool {
	for i := x; i < x+n; i++ {
		if strings.ContainsAny(d.c.At(i, y), "0123456789/") {
			return true
		}
	}
	return false
}

// sizes writes a rectangle's width on its lower edge and its height on its
// right one: inside where nothing else is, else beside it on the bare mat,
// else over the edge, clear of letters.
func (d *drawing) sizes(o outline.Outline, width, height string, inner bool) {
	a, b, e, f := box(o)
	x0, y0, x1, y1 := d.col(a), d.row(b), d.col(e), d.row(f)
	s := canvas.Style{Ink: look.Strong, Bold: true}
	if n := canvas.Width(width); n+2 < x1-x0 {
		d.write(x0+(x1-x0-n)/2, y1, width, s)
	}
	y, n := y0+1+(y1-y0-1)/3, canvas.Width(height)
	switch {
	case y1-y0 < 3 || n+3 >= x1-x0:
	case inner:
		d.write(x1-n, y, height, s)
	case d.bareFrom(x1+1, y, n+1):
		d.write(x1+1, y, height, s)
	default:
		d.overEdge(x1-n+1, y, y1, height, s)
	}
}

// overEdge writes text at x, in the first row from y on, before end, where it
// hides no letter.
func (d *drawing) overEdge(x, y, end int, text string, s canvas.Style) {
	for ; y < end; y++ {
		clear := true
		for i := x - 1; i < x+canvas.Width(text)+1; i++ {
			r := []rune(d.c.At(i, y) + " ")[0]
			clear = clear && !unicode.IsLetter(r) && !(r >= '▀' && r <= '█') && r != '╳'
		}
		if clear {
			d.write(x, y, text, s)
			return
		}
	}
}

// bareFrom reports whether n cells from x, y on are bare mat.
func (d *drawing) bareFrom(x, y, n int) bool {
	for i := x; i < x+n; i++ {
		if at := d.c.At(i, y); i >= d.c.W-1 || at != " " && at != "·" || d.paper[y*d.c.W+i] != 0 || d.solid[y*d.c.W+i]|d.broken[y*d.c.W+i] != 0 {
			return false
		}
	}
	return true
}

func (d *drawing) write(x, y int, text string, s canvas.Style) {
	for _, r := range text {
		d.c.Over(x, y, r, s)
		x++
	}
}

// close lays a fabric's paper under the edges of its pieces too, so that a
// piece is filled to all of its edges alike.
func (d *drawing) close() {
	for y := range d.c.H {
		for x := range d.c.W {
			if i := y*d.c.W + x; d.paper[i] == 0 && (d.solid[i] != 0 || d.dots[i] != 0) {
				if p := d.around(x, y); p != 0 {
					d.c.Rune(x, y, ' ', canvas.Style{Ink: look.Mark, Paper: p})
				}
			}
		}
	}
}

// around is the paper of a filled cell next to x, y.
func (d *drawing) around(x, y int) uint8 {
	for dy := -1; dy <= 1; dy++ {
		for dx := -1; dx <= 1; dx++ {
			if i, j := x+dx, y+dy; i >= 0 && j >= 0 && i < d.c.W && j < d.c.H && d.paper[j*d.c.W+i] != 0 {
				return d.paper[j*d.c.W+i]
			}
		}
	}
	return 0
}

// straight marks the edges of o that run along the grain or across it, and
// returns the others to slanted.
func (d *drawing) straight(sides []uint8, o outline.Outline) {
	for i := range o {
		a, b := o[i], o[(i+1)%len(o)]
		x0, y0, x1, y1 := d.col(a.X), d.row(a.Y), d.col(b.X), d.row(b.Y)
		switch {
		case a.Y == b.Y:
			d.across(sides, min(x0, x1), max(x0, x1), y0)
		case a.X == b.X:
			d.along(sides, x0, min(y0, y1), max(y0, y1))
		}
	}
}

func (d *drawing) across(sides []uint8, x0, x1, y int) {
	for x := x0; x < x1; x++ {
		d.mark(sides, x, y, right)
		d.mark(sides, x+1, y, left)
	}
}

func (d *drawing) along(sides []uint8, x, y0, y1 int) {
	for y := y0; y < y1; y++ {
		d.mark(sides, x, y, down)
		d.mark(sides, x, y+1, up)
	}
}

func (d *drawing) mark(sides []uint8, x, y int, side uint8) {
	if x >= 0 && y >= 0 && x < d.c.W && y < d.c.H {
		sides[y*d.c.W+x] |= side
	}
}

// edges marks the outline of a piece, slanted edges in dots.
func (d *drawing) edges(o outline.Outline) {
	d.straight(d.solid, o)
	for i := range o {
		if a, b := o[i], o[(i+1)%len(o)]; a.X != b.X && a.Y != b.Y {
			d.slanted(a, b)
		}
	}
}

// dot is the bit of each of a Braille character's dots, by row and column.
var dot = [4][2]uint8{{0x01, 0x08}, {0x02, 0x10}, {0x04, 0x20}, {0x40, 0x80}}

// slanted dots the line from a to b: 2 dots a column, 4 a row.
func (d *drawing) slanted(a, b outline.Point) {
	x0, y0 := d.dotAt(a)
	x1, y1 := d.dotAt(b)
	steps := max(abs(x1-x0), abs(y1-y0), 1)
	for i := range steps + 1 {
		x := nearest((x1-x0)*i+x0*steps, steps)
		y := nearest((y1-y0)*i+y0*steps, steps)
		if cx, cy := x/2, y/4; cx >= 0 && cy >= 0 && cx < d.c.W && cy < d.c.H {
			d.dots[cy*d.c.W+cx] |= dot[y%4][x%2]
		}
	}
}

// dotAt is the dot a point falls on, counted from the top left of the canvas.
func (d *drawing) dotAt(p outline.Point) (x, y int64) {
	x = (2*micro(p.X)*int64(d.c.W-1) + d.width) / d.width
	y = (4*micro(p.Y)*int64(d.c.H-1) + 2*d.height) / d.height
	return min(max(x, 2), 2*int64(d.c.W)-3), min(max(y, 4), 4*int64(d.c.H)-5)
}

func abs(x int64) int64 { return max(x, -x) }

// lines draws what was marked: a whole line hides a broken one and dots.
func (d *drawing) lines() {
	mark := canvas.Style{Ink: look.Mark}
	for i := range d.solid {
		x, y := i%d.c.W, i/d.c.W
		switch {
		case d.solid[i] != 0:
			d.c.Over(x, y, light[d.solid[i]], mark)
		case d.dots[i] != 0:
			d.c.Over(x, y, 0x2800+rune(d.dots[i]), mark)
		case d.broken[i] != 0:
			d.c.Over(x, y, dashed[d.broken[i]], mark)
		}
	}
}

// sheetEdge draws the edge of the mat, with round corners.
func (d *drawing) sheetEdge(s canvas.Style) { d.edge(s, [4]rune{'╭', '╮', '╰', '╯'}) }

// edge frames the whole canvas. Its corners go from the top left, row by row.
func (d *drawing) edge(s canvas.Style, corners [4]rune) {
	w, h := d.c.W, d.c.H
	for x := 1; x < w-1; x++ {
		d.c.Rune(x, 0, '─', s)
		d.c.Rune(x, h-1, '─', s)
	}
	for y := 1; y < h-1; y++ {
		d.c.Rune(0, y, '│', s)
		d.c.Rune(w-1, y, '│', s)
	}
	d.c.Rune(0, 0, corners[0], s)
	d.c.Rune(w-1, 0, corners[1], s)
	d.c.Rune(0, h-1, corners[2], s)
	d.c.Rune(w-1, h-1, corners[3], s)
}
