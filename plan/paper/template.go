package paper

import (
	"fmt"
	"math"

	"codeberg.org/go-pdf/fpdf"

	"example.org/matside/plan/outline"
)

// A template page says how to check it, shows the two squares at its foot, and
// the piece between.
const (
	inchSquare  = 25.4
	fiveSquare  = 50.0
	squaresRoom = fiveSquare + 6
)

// template prints one line's piece at true size, on as many pages as it takes.
func (s *sheets) template(line int) {
	o := s.list.Lines[line].Outline.Normalise()
	b := o.Bounds()
	w, h := mm(b.Width()), mm(b.Height())
	s.turn()
	s.templateHead(line)
	roomW, roomH := s.width(), s.bottom()-squaresRoom-s.y-4
	if w <= roomW && h <= roomH {
		points := s.templateEdge(o, place{margin + (roomW-w)/2, s.y + 2, 1})
		s.marks(points, line)
		s.squares()
		return
	}
	// Every page must have the same room, whatever its heading takes.
	roomH -= s.lead(s.body) * 3
	columns, rows := int(math.Ceil(w/roomW)), int(math.Ceil(h/roomH))
	for n := range columns * rows {
		if n > 0 {
			s.turn()
			s.templateHead(line)
		}
		column, row := n%columns, n/columns
		s.text(fmt.Sprintf("Page %d of %d: row %d, column %d. Cut along the broken lines and tape the pages edge to edge.",
			n+1, columns*rows, row+1, column+1))
		s.tile(line, o, float64(column)*roomW, float64(row)*roomH, min(roomW, w-float64(column)*roomW), min(roomH, h-float64(row)*roomH))
		s.squares()
	}
}

func (s *sheets) templateHead(line int) {
	s.heading("Template "+s.stack(line), 2, 0)
	s.text("Print at actual size, 100 %. Before you cut, measure both squares below: 1 inch and 5 centimeters on every side. " +
		"If they are off, so is the template. The outer line is the cut edge, seen from the right side of the fabric.")
}

// tile draws the part of a piece that is w by h, from x, y on.
func (s *sheets) tile(line int, o outline.Outline, x, y, w, h float64) {
	top := s.y + 2
	s.pdf.ClipRect(margin, top, w, h, false)
	points := s.templateEdge(o, place{margin - x, top - y, 1})
	s.pdf.ClipEnd()
	if mx, my, _ := middle(points); mx > margin && mx < margin+w && my > top && my < top+h {
		s.marks(points, line)
	}
	s.line(0.2, 1.5, 1.5)
	s.pdf.Polygon(rectangle(margin, top, w, h), "D")
	s.line(0.3)
}

func (s *sheets) templateEdge(o outline.Outline, at place) []fpdf.PointType {
	points := at.polygon(o)
	s.line(0.25)
	s.pdf.Polygon(points, "D")
	return points
}

// marks are the piece's letter and its grain, in its middle.
func (s *sheets) marks(points []fpdf.PointType, line int) {
	x, y, far := middle(points)
	s.grain(x, y, min(far*0.8, 25))
	s.font("B", s.body)
	text := string(s.letters[line])
	if w := s.pdf.GetStringWidth(text); far > 2*w {
		s.put(x+1.5, y+0.36*s.body*pt, text)
	}
}

// grain is an arrow along the lengthwise grain, both ways.
func (s *sheets) grain(x, y, reach float64) {
	s.pdf.Line(x, y-reach, x, y+reach)
	tip := min(2, reach/3)
	for _, way := range []float64{-1, 1} {
		s.pdf.Polygon([]fpdf.PointType{{X: x, Y: y + way*reach}, {X: x - tip/2, Y: y + way*(reach-tip)}, {X: x + tip/2, Y: y + way*(reach-tip)}}, "FD")
	}
}

// squares are the two to measure, at the foot of the page.
func (s *sheets) squares() {
	foot := s.bottom() - 2
	s.line(0.2)
	s.pdf.Rect(margin, foot-inchSquare, inchSquare, inchSquare, "D")
	five := margin + inchSquare + 10
	s.pdf.Rect(five, foot-fiveSquare, fiveSquare, fiveSquare, "D")
	s.box("", s.body, margin+1, foot-inchSquare+1, inchSquare-2, inchSquare-2, "1 inch", true)
	s.box("", s.body, five+1, foot-fiveSquare+1, fiveSquare-2, fiveSquare-2, "5 cm", true)
	s.box("", s.body, five+fiveSquare+6, foot-fiveSquare, s.Width-margin-five-fiveSquare-6, fiveSquare,
		"The arrow is the lengthwise grain.", false)
}
