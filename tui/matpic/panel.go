package matpic

import (
	"strconv"

	"example.org/matside/plan/length"
	"example.org/matside/tui/canvas"
	"example.org/matside/tui/look"
	"example.org/matside/tui/ruler"
)

// Panel is a piece of stock with what comes out of it.
type Panel struct {
	Fabric        int // for its pattern and paper
	Width, Height length.Len
	Boxes         []PanelBox
	Cuts          []ruler.Cut // to make now, in order
	Say           func(length.Len) string
}

// PanelBox is one rough cut or piece cut by hand.
type PanelBox struct {
	ruler.Box
	When   When
	Rough  int // index of the rough cut in its load, for Now
	Number int // of the rough cut, from 1, for Now; 0: it needs none beside those of the straight cuts
}

// When says whether a box is cut out.
type When uint8

// Cut out already, to cut now, or later.
const (
	Later When = iota
	Now
	Gone
)

// Size is Size for a panel.
func (p Panel) Size(w, h int) (cols, rows int) { return fill(p.Width, p.Height, w, h) }

// Draw draws the panel: what is gone is hatched, what comes later has a broken
// edge, what to cut now has its number and size, and each straight cut is a
// heavy line with its number.
func (p Panel) Draw(cols, rows int) *canvas.Canvas {
	page := canvas.Style{Ink: look.Mark, Paper: look.Cloth(p.Fabric)}
	c := canvas.New(cols, rows, page)
	if cols < minCols || rows < minRows {
		return c
	}
	d := newDrawing(c, p.Width, p.Height)
	for _, b := range p.Boxes {
		p.box(d, b)
	}
	d.lines()
	for i, cut := range p.Cuts {
		d.cut(cut, i+1)
	}
	d.border(page)
	for _, b := range p.Boxes {
		if o := corners(b.X, b.Y, b.W, b.H); b.When == Now {
			d.sizes(o, p.Say(b.W), p.Say(b.H), true)
			if b.Number > 0 {
				d.number(o, b.Number)
			}
		}
	}
	return c
}

func (p Panel) box(d *drawing, b PanelBox) {
	o := corners(b.X, b.Y, b.W, b.H)
	switch b.When {
	case Gone:
		d.cells(o, func(x, y int) {
			if mx, my := d.middle(x, y); inside(o, mx, my) {
				d.c.Rune(x, y, '▒', canvas.Style{Ink: look.Quiet, Paper: look.Page})
			}
		})
	case Now:
		d.fill(o, p.Fabric, false)
		d.straight(d.solid, o)
	default:
		d.straight(d.broken, o)
	}
}

// cut draws a straight cut through the piece in hand, its number at the end
// where the ruler is laid on.
func (d *drawing) cut(cut ruler.Cut, number int) {
	s := canvas.Style{Ink: look.Strong, Bold: true}
	h := cut.Hand
	x0, y0, x1, y1 := d.col(h.X), d.row(h.Y), d.col(h.X+h.W), d.row(h.Y+h.H)
	text := strconv.Itoa(number)
	if cut.Across {
		y := d.row(h.Y + cut.At)
		for x := x0; x <= x1; x++ {
			d.c.Over(x, y, '━', s)
		}
		d.write(max(x1-1-len(text), x0), y, text, s)
		return
	}
	x := d.col(h.X + cut.At)
	for y := y0; y <= y1; y++ {
		d.c.Over(x, y, '┃', s)
	}
	d.write(x, (y0+y1)/2, text, s)
}

// border draws the panel's own edge, with square corners.
func (d *drawing) border(s canvas.Style) { d.edge(s, [4]rune{'┌', '┐', '└', '┘'}) }
