package paper

import (
	"fmt"
	"strings"

	"codeberg.org/go-pdf/fpdf"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/cutting"
	"example.org/matside/plan/length"
	"example.org/matside/plan/queue"
)

func rectangle(x, y, w, h float64) []fpdf.PointType {
	return []fpdf.PointType{{X: x, Y: y}, {X: x + w, Y: y}, {X: x + w, Y: y + h}, {X: x, Y: y + h}}
}

// panels tells for each panel what is cut out of it, in order.
func (s *sheets) panels() {
	steps := cutting.Order(s.q)
	if len(steps) == 0 {
		return
	}
	s.turn()
	s.text("On the drawings of the fabric a number in a ring is a cut, any other number is the load it is for, and a letter is cut by hand. " +
		"Across: from edge to edge, measured down from the top of what lies on the table. Along: up the grain, measured from its left edge.")
	s.gap(1)
	for i := range s.q.Stock {
		u := &s.q.Stock[i]
		n := 0
		for n < len(steps) && steps[n].Fabric == u.Fabric && steps[n].Panel == u.Panel {
			n++
		}
		s.panel(u, steps[:n])
		steps = steps[n:]
	}
}

// drawingHeight is the most a panel's drawing takes of a page.
const drawingHeight = 145.0

func (s *sheets) panel(u *queue.PanelUse, steps []cutting.Step) {
	shown := min(u.Height, u.Reach()+u.Width/20)
	scale := min(s.width()/mm(u.Width), drawingHeight/mm(shown))
	words := fmt.Sprintf("%s. Square up the top and the left edge first.", s.size(u.Width, u.Height))
	if shown < u.Height {
		words += fmt.Sprintf(" Below %s it stays whole and is not drawn.", s.show(u.Reach()))
	}
	const linesRoundIt = 6 // the words above it and the first cuts below it
	s.heading(fmt.Sprintf("Cut the fabric: %s, panel %d", s.list.Fabrics[u.Fabric].Name, u.Panel), 4, scale*mm(shown)+linesRoundIt*s.lead(s.body))
	s.text(words)
	s.gap(0.3)
	s.need(scale * mm(shown))
	s.drawPanel(u, steps, shown, place{margin + (s.width()-scale*mm(u.Width))/2, s.y, scale})
	s.y += scale*mm(shown) + s.lead(s.body)/2
	cut := 0
	for i := range steps {
		if steps[i].At > 0 {
			cut++
		}
		s.step(&steps[i], cut)
	}
	s.gap(1)
}

// step writes one cut and what comes off.
func (s *sheets) step(st *cutting.Step, number int) {
	indent := margin + 5*float64(st.Depth)
	if most := margin + s.width()/3; indent > most {
		indent = most
	}
	s.need(s.lead(s.body))
	what := "the rest: "
	if st.At > 0 {
		way := "along"
		if st.Across {
			way = "across"
		}
		s.font("B", s.body)
		s.put(indent, s.y+s.body*pt, fmt.Sprint(number))
		what = way + " at " + s.show(st.At) + ": "
	}
	left := indent + s.numberWidth()
	s.textIn("", left, margin+s.width()-left, what+s.comesOff(st))
}

// numberWidth is the room for the number of a cut.
func (s *sheets) numberWidth() float64 {
	s.font("B", s.body)
	return s.pdf.GetStringWidth("0000")
}

func (s *sheets) comesOff(st *cutting.Step) string {
	size := s.size(st.Width, st.Height)
	switch {
	case st.Copy > 0:
		l := s.list.Lines[st.Line]
		words := l.Shape
		if l.Label != "" {
			words += " for " + l.Label
		}
		return fmt.Sprintf("%s, %c, by hand: %s", size, s.letters[st.Line], words)
	case st.Load > 0:
		return fmt.Sprintf("%s, load %d", size, st.Load)
	case st.Offcut:
		return size + ", left over"
	}
	return size + ", to cut on"
}

// drawPanel draws a panel down to where it is shown, what comes out of it, and
// the cuts with their numbers.
func (s *sheets) drawPanel(u *queue.PanelUse, steps []cutting.Step, shown length.Len, at place) {
	for _, r := range u.RoughCuts {
		s.ware(rectangle(at.x(r.X), at.y(r.Y), at.len(r.Width), at.len(r.Height)), u.Fabric, fmt.Sprint(r.Load))
	}
	for _, h := range u.ByHand {
		s.ware(rectangle(at.x(h.X), at.y(h.Y), at.len(h.Width), at.len(h.Height)), u.Fabric, string(s.letters[h.Line]))
	}
	s.line(0.4)
	x1, y1 := at.x(u.Width), at.y(shown)
	s.pdf.Line(at.left, y1, at.left, at.top)
	s.pdf.Line(at.left, at.top, x1, at.top)
	s.pdf.Line(x1, at.top, x1, y1)
	if shown == u.Height {
		s.pdf.Line(at.left, y1, x1, y1)
	}
	number := 0
	for i := range steps {
		if st := &steps[i]; st.At > 0 {
			number++
			s.cutLine(st, number, at)
		}
	}
}

func (s *sheets) ware(box []fpdf.PointType, fabric int, text string) {
	s.fill(box, fabric)
	s.line(0.25)
	s.pdf.Polygon(box, "D")
	s.letter(box, text)
}

// cutLine draws a straight cut with its number in a ring, away from the middle,
// where the numbers of the loads are.
func (s *sheets) cutLine(st *cutting.Step, number int, at place) {
	x0, y0 := at.x(st.Left), at.y(st.Top)
	x1, y1 := at.x(st.Left+st.Width), at.y(st.Top+st.Height)
	s.line(0.6)
	const aside = 0.82
	x, y := x1, y0+aside*(y1-y0)
	if st.Across {
		s.pdf.Line(x0, y1, x1, y1)
		x, y = x0+aside*(x1-x0), y1
	} else {
		s.pdf.Line(x1, y0, x1, y1)
	}
	s.ring(x, y, min(at.len(st.Width), at.len(st.Height)), fmt.Sprint(number))
}

// ring writes a number in a ring, small where there is little room.
func (s *sheets) ring(x, y, room float64, text string) {
	size := max(5, min(s.body, room/(2.2*pt)))
	s.font("B", size)
	w := s.pdf.GetStringWidth(text)
	s.pdf.SetFillColor(255, 255, 255)
	s.line(0.3)
	s.pdf.Circle(x, y, max(w, 0.7*size*pt)/2+0.1*size*pt+0.3, "FD")
	s.put(x-w/2, y+0.36*size*pt, text)
}

// settings says how a rough cut is laid and cut, where there is anything to say.
func settings(f *cutlist.Fabric) string {
	var words []string
	if f.FaceDown {
		words = append(words, "right side DOWN")
	}
	if f.Setting != "" {
		words = append(words, "set the cutter to "+f.Setting)
	}
	return strings.Join(words, ", ")
}
