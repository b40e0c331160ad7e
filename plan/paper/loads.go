package paper

import (
	"fmt"
	"strings"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
)

// loads draws each load's mat; loads that are cut alike share a page.
func (s *sheets) loads() {
	var order []string
	alike := map[string][]int{}
	for i := range s.q.Loads {
		key := look(&s.q.Loads[i])
		if alike[key] == nil {
			order = append(order, key)
		}
		alike[key] = append(alike[key], i)
	}
	for _, key := range order {
		s.load(alike[key])
	}
}

// look is all of a load that its page shows.
func look(l *queue.Load) string {
	var b strings.Builder
	for _, r := range l.RoughCuts {
		fmt.Fprintln(&b, r.Fabric, int64(r.X), int64(r.Y), int64(r.Width), int64(r.Height))
	}
	for _, p := range l.Pieces {
		fmt.Fprintln(&b, p.Line, p.RoughCut)
		for _, c := range p.Outline {
			fmt.Fprint(&b, " ", int64(c.X), " ", int64(c.Y))
		}
	}
	return b.String()
}

// load is the page of loads that look alike.
func (s *sheets) load(alike []int) {
	l := &s.q.Loads[alike[0]]
	var numbers []int
	for _, i := range alike {
		numbers = append(numbers, s.q.Loads[i].Number)
	}
	s.turn()
	title := fmt.Sprintf("Load %s of %d", and(numbers), len(s.q.Loads))
	if len(numbers) > 1 {
		title = fmt.Sprintf("Loads %s of %d, all alike", and(numbers), len(s.q.Loads))
	}
	s.heading(title, 4, 0)
	rulers := s.lead(s.body)
	m := s.list.Mat
	scale := min((s.width()-2*rulers)/mm(m.Width), (s.bottom()-margin)*0.62/mm(m.Height))
	at := place{margin + (s.width()-scale*mm(m.Width))/2, s.y + rulers, scale}
	s.need(scale*mm(m.Height) + rulers)
	s.drawMat(l, at)
	s.y = at.y(m.Height) + s.lead(s.body)/2
	for i := range l.RoughCuts {
		s.rough(l, i)
	}
}

func (s *sheets) drawMat(l *queue.Load, at place) {
	m := s.list.Mat
	for _, p := range l.Pieces {
		s.fill(at.polygon(p.Outline), s.list.Lines[p.Line].Fabric)
	}
	s.line(0.5)
	s.pdf.Polygon(at.polygon(outline.Rect(0, 0, m.Width, m.Height)), "D")
	s.line(0.2, 0.6, 1.2)
	s.pdf.Polygon(at.polygon(outline.Rect((m.Width-m.UsableWidth)/2, (m.Height-m.UsableHeight)/2, m.UsableWidth, m.UsableHeight)), "D")
	s.line(0.3, 2, 1.2)
	for _, r := range l.RoughCuts {
		s.pdf.Polygon(at.polygon(outline.Rect(r.X, r.Y, r.Width, r.Height)), "D")
	}
	s.line(0.35)
	for _, p := range l.Pieces {
		points := at.polygon(p.Outline)
		s.pdf.Polygon(points, "D")
		s.letter(points, string(s.letters[p.Line]))
	}
	if len(l.RoughCuts) > 1 {
		for i, r := range l.RoughCuts {
			s.ring(at.x(r.X)+2, at.y(r.Y)+2, 8, fmt.Sprint(i+1))
		}
	}
	s.rulers(at)
}

// rulers number the mat's grid along its top and left edges.
func (s *sheets) rulers(at place) {
	step := length.Inch
	if s.list.Unit != length.In {
		step = 5 * length.Centimetre
	}
	size := s.body
	for m := s.list.Mat; at.len(step) < 1.5*size*pt && step < max(m.Width, m.Height); {
		step *= 5
	}
	s.line(0.3)
	s.font("", size)
	for l := length.Len(0); l <= s.list.Mat.Width; l += step {
		text := l.Show(s.list.Unit)
		s.pdf.Line(at.x(l), at.top-1.5, at.x(l), at.top)
		s.put(at.x(l)-s.pdf.GetStringWidth(text)/2, at.top-2, text)
	}
	for l := step; l <= s.list.Mat.Height; l += step {
		text := l.Show(s.list.Unit)
		s.pdf.Line(at.left-1.5, at.y(l), at.left, at.y(l))
		s.put(at.left-2-s.pdf.GetStringWidth(text), at.y(l)+0.36*size*pt, text)
	}
}

// rough tells where a rough cut is laid and which pieces it gives.
func (s *sheets) rough(l *queue.Load, i int) {
	r := &l.RoughCuts[i]
	f := &s.list.Fabrics[r.Fabric]
	words := fmt.Sprintf("%s, left edge at %s, top at %s", s.size(r.Width, r.Height), s.show(r.X), s.show(r.Y))
	if more := settings(f); more != "" {
		words += ", " + more
	}
	s.gap(0.2)
	s.need(2 * s.lead(s.body))
	s.swatch(margin, s.y, r.Fabric)
	name := f.Name
	if len(l.RoughCuts) > 1 {
		name = fmt.Sprintf("%d  %s", i+1, name)
	}
	s.textIn("B", margin+10, s.width()-10, name+": "+words)
	counts := make([]int, len(s.list.Lines))
	for _, p := range l.Pieces {
		if p.RoughCut == i {
			counts[p.Line]++
		}
	}
	for line, n := range counts {
		if n > 0 {
			one := s.list.Lines[line]
			one.Count = n
			s.textIn("", margin+10, s.width()-10, fmt.Sprintf("%c: %s", s.letters[line], one.Say()))
		}
	}
}
