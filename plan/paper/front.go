package paper

import "fmt"

// cautions are common practice, with no source but the makers', who come first.
var cautions = []string{
	"The makers' instructions for cutter, blade, mat, iron and adhesive come first, always.",
	"A rotary cutter is sharp: close it whenever you put it down, cut away from yourself, fingers back from the ruler's edge.",
	"Hands off while the cutter's blade moves, fingers away from its rollers.",
	"An iron is hot: back on its rest, away from the mat and from children, and let the fabric cool.",
	"Spray adhesive: open a window, away from flames and sparks, and follow the can.",
}

// front is the first page: the quilt, what to buy, what is used, cautions.
func (s *sheets) front() {
	s.heading(s.list.Quilt, 10, 0)
	pieces := 0
	for _, l := range s.q.Loads {
		pieces += len(l.Pieces)
	}
	what := "Nothing to cut on the mat."
	if pieces > 0 {
		what = count(pieces, "piece") + " on " + count(len(s.q.Loads), "mat load") + "."
	}
	s.text(what + " Sizes are across x along the lengthwise grain, in " + s.unit() + ".")
	s.gap(0.5)
	s.shopping()
	s.have()
	s.missing()
	s.gap(0.5)
	s.heading("Take care", 2, 3*s.lead(s.body))
	for _, c := range cautions {
		s.textIn("", margin, s.width(), "• "+c)
	}
}

func (s *sheets) shopping() {
	s.heading("To buy", 2, s.lead(s.body))
	if len(s.q.Buy) == 0 {
		s.text("Nothing: all of it comes out of what you have.")
	}
	for _, b := range s.q.Buy {
		s.named(b.Fabric, fmt.Sprintf("%s, %s wide%s", s.sold(b.Length), b.Width.FormatUnit(s.list.Unit), s.washed(b.Fabric)))
	}
	s.gap(0.5)
}

func (s *sheets) washed(fabric int) string {
	if f := s.list.Fabrics[fabric]; f.ShrinkAcross == 0 && f.ShrinkAlong == 0 {
		return ""
	}
	return "; wash it before you cut"
}

// have lists the panels that are cut into.
func (s *sheets) have() {
	any := false
	for _, u := range s.q.Stock {
		if len(s.list.Fabrics[u.Fabric].Stock) == 0 {
			continue // it is bought
		}
		if !any {
			s.heading("From what you have", 2, s.lead(s.body))
			any = true
		}
		s.named(u.Fabric, fmt.Sprintf("panel %d, %s, cut into %s down%s", u.Panel, s.size(u.Width, u.Height), s.show(u.Reach()), s.washed(u.Fabric)))
	}
	s.gap(0.5)
}

func (s *sheets) missing() {
	for i, short := range s.q.Short {
		if i == 0 {
			s.heading("Too little fabric: not in the plan", 2, s.lead(s.body))
		}
		more := "."
		if wide, long := short.ToBuy(s.list); long > 0 {
			more = fmt.Sprintf("; %s more, %s wide, would do.", s.sold(long), wide.FormatUnit(s.list.Unit))
		}
		pieces := 0
		for _, n := range short.Missing {
			pieces += n
		}
		s.named(short.Fabric, count(pieces, "piece")+more)
	}
}

// named writes a line about a fabric, with its pattern before it.
func (s *sheets) named(fabric int, words string) {
	s.need(s.lead(s.body))
	s.swatch(margin, s.y, fabric)
	s.textIn("", margin+10, s.width()-10, s.list.Fabrics[fabric].Name+": "+words)
}

// swatch is a little piece of a fabric's pattern, beside a line of text.
func (s *sheets) swatch(x, y float64, fabric int) {
	h := s.body * pt
	square := rectangle(x, y+0.15*h, 8, h)
	s.fill(square, fabric)
	s.line(0.3)
	s.pdf.Polygon(square, "D")
}
