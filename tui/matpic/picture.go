package matpic

import (
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
	"example.org/matside/tui/canvas"
	"example.org/matside/tui/glyph"
	"example.org/matside/tui/look"
)

// Picture is what to draw.
type Picture struct {
	List    *cutlist.List
	Load    *queue.Load
	Letters []rune
	Spoiled map[int]bool            // pieces to cross out, by index into Load.Pieces
	Cursor  int                     // piece to show as chosen, by index; -1 for none
	Bare    bool                    // rough cuts only: what there is before the blade has been
	Grid    bool                    // the mat's printed grid, in Unit
	Unit    length.Unit             // of the grid
	Large   bool                    // large letters in the pieces that have room
	Zone    func(piece int) string  // names a piece for the pointer; nil: pieces are no targets
	Say     func(length.Len) string // how a length is written on an edge; nil: no sizes
}

// Size returns the largest cells a picture of the mat can fill inside w by h
// with its sides true: a row is about twice as high as a column is wide.
func Size(mat cutlist.Mat, w, h int) (cols, rows int) { return fill(mat.Width, mat.Height, w, h) }

func fill(width, height length.Len, w, h int) (cols, rows int) {
	if width <= 0 || height <= 0 {
		return 0, 0
	}
	cols, rows = w, int((int64(w-1)*int64(height)/int64(width)+1)/2)+1
	if rows > h {
		rows = h
		cols = min(w, int(2*int64(h-1)*int64(width)/int64(height))+1)
	}
	return max(cols, 0), max(rows, 0)
}

// smallest sides of a picture that shows anything.
const minCols, minRows = 5, 3

// Draw draws the mat cols columns wide and rows rows high. The mat's edge
// takes the outermost cells.
func (p Picture) Draw(cols, rows int) *canvas.Canvas {
	sheet := canvas.Style{Ink: look.Mark, Paper: look.Sheet}
	c := canvas.New(cols, rows, sheet)
	if cols < minCols || rows < minRows {
		return c
	}
	d := newDrawing(c, p.List.Mat.Width, p.List.Mat.Height)
	if p.Grid {
		d.grid(p.Unit, sheet)
	}
	for _, r := range p.Load.RoughCuts {
		if p.Bare {
			d.bare(r)
		} else {
			d.waste(r)
		}
	}
	if !p.Bare {
		for i := range p.Load.Pieces {
			d.fill(p.Load.Pieces[i].Outline, p.fabric(i), p.Cursor == i)
			if p.Zone != nil {
				d.zone(p.Load.Pieces[i].Outline, p.Zone(i))
			}
		}
		for i := range p.Load.Pieces {
			d.edges(p.Load.Pieces[i].Outline)
		}
	}
	d.close()
	d.lines()
	d.sheetEdge(sheet)
	if p.Grid {
		d.scale(p.Unit)
	}
	p.words(d)
	return c
}

// words writes letters, sizes and numbers over the lines.
func (p Picture) words(d *drawing) {
	if !p.Bare {
		p.letters(d)
	}
	if p.Say != nil {
		for _, r := range p.Load.RoughCuts {
			d.sizes(roughOutline(r), p.Say(r.Width), p.Say(r.Height), p.Bare)
		}
	}
	if p.Bare && len(p.Load.RoughCuts) > 1 {
		for i, r := range p.Load.RoughCuts {
			d.number(roughOutline(r), i+1)
		}
	}
}

// letters writes the letters of the pieces and crosses out spoiled ones.
func (p Picture) letters(d *drawing) {
	l := letters{d: d, places: make([]place, len(p.Load.Pieces)), high: make(map[int]int), large: make(map[rune][]glyph.Lines)}
	for i, piece := range p.Load.Pieces {
		at := &l.places[i]
		at.x, at.y, at.ok = d.place(piece.Outline)
		if !at.ok && (p.Spoiled[i] || p.Cursor == i) && len(piece.Outline) > 0 {
			at.x, at.y = d.amid(piece.Outline)
			at.ok = true
		}
		if h, seen := l.high[piece.Line]; p.Large && (!seen || h > 0) {
			room := l.room(piece.Outline, *at, p.Letters[piece.Line])
			if !seen || room < h {
				l.high[piece.Line] = room
			}
		}
	}
	for i, piece := range p.Load.Pieces {
		r := p.Letters[piece.Line]
		if p.Spoiled[i] {
			d.crossed(piece.Outline, l.places[i], r, p.Cursor == i)
		} else {
			l.write(piece.Outline, l.places[i], r, l.high[piece.Line], p.Cursor == i)
		}
	}
}

func (p Picture) fabric(piece int) int {
	return p.List.Lines[p.Load.Pieces[piece].Line].Fabric
}

// micro brings a length down to micrometres, so that products of two stay
// inside int64 for anything a cut list can hold.
func micro(l length.Len) int64 { return int64(l / length.Micrometre) }

// inside reports whether the point x, y (micrometres) lies inside o, by the
// crossing number of the ray to the right.
func inside(o outline.Outline, x, y int64) bool {
	in := false
	for i := range o {
		a, b := o[i], o[(i+1)%len(o)]
		ax, ay, bx, by := micro(a.X), micro(a.Y), micro(b.X), micro(b.Y)
		if (ay > y) == (by > y) {
			continue
		}
		cross := (bx-ax)*(y-ay) - (by-ay)*(x-ax)
		if (cross > 0) == (by > ay) {
			in = !in
		}
	}
	return in
}

// box is the bounding box of o.
func box(o outline.Outline) (x0, y0, x1, y1 length.Len) {
	x0, y0, x1, y1 = o[0].X, o[0].Y, o[0].X, o[0].Y
	for _, p := range o[1:] {
		x0, y0, x1, y1 = min(x0, p.X), min(y0, p.Y), max(x1, p.X), max(y1, p.Y)
	}
	return x0, y0, x1, y1
}
