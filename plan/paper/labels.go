package paper

// A label is half a page wide: two side by side.
const (
	labelHeight = 38.0
	labelColumn = 2
)

// labels prints one for each line's stack, to be cut apart along broken lines.
func (s *sheets) labels() {
	w := s.width() / labelColumn
	for i := range s.list.Lines {
		column := i % labelColumn
		if i == 0 {
			s.turn()
			s.heading("Labels for the stacks: cut along the broken lines", 2, labelHeight)
		}
		if column == 0 {
			s.need(labelHeight)
		}
		s.label(margin+float64(column)*w, s.y, w, i)
		if column == labelColumn-1 {
			s.y += labelHeight
		}
	}
}

func (s *sheets) label(x, y, w float64, line int) {
	const pad, letterWidth = 3.0, 16.0
	s.line(0.25, 1.5, 1.5)
	s.pdf.Polygon(rectangle(x, y, w, labelHeight), "D")
	s.box("B", 34, x+pad, y+pad, letterWidth, labelHeight-2*pad, string(s.letters[line])+":", true)
	s.box("", s.body+4, x+letterWidth+2*pad, y+pad, w-letterWidth-3*pad, labelHeight-2*pad, s.stackWords(line), false)
	s.line(0.3)
}
