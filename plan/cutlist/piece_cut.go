package cutlist

import (
	"fmt"
	"strings"

	"example.org/matside/plan/cutlist/mistake"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/say"
	"example.org/matside/plan/shape"
)

// finish makes the line's outline and looks whether the mat has room for it.
func (s *second) finish(c *cursor, p *piece) {
	p.spec.Seam, p.spec.Ruler = s.list.Seam, s.list.Ruler && p.spec.Finished
	if s.hugeCurve(p) {
		c.add(c.line, p.sizeFrom, p.sizeTo, mistake.NoRoomForCurve.Say(), mistake.Smaller.Say())
		return
	}
	cut := s.cut(p)
	if cut.err != nil {
		c.add(c.line, p.sizeFrom, p.sizeTo, mistake.Of(safely(cut.err)), say.Nothing)
		return
	}
	p.Outline, p.Size = cut.outline, p.sizeText(cut.sizes, s.list.Unit)
	if p.Kind == OnMat && !cut.fits && !s.badMat {
		c.add(c.line, p.sizeFrom, p.sizeTo, s.tooLarge(p), s.smaller(p))
	}
	s.list.Lines = append(s.list.Lines, p.Line)
}

// hugeCurve says whether a circle or a part of one is so much larger than the
// mat that its outline, thousands of corners, is not worth working out.
func (s *second) hugeCurve(p *piece) bool {
	w, h := s.room()
	curved := p.row.kind == shape.Circle || p.row.kind == shape.QuarterCircle
	return curved && !s.badMat && p.spec.Sizes[0] > w+h
}

// cutShape is a shape ready to be cut and whether the mat has room for it, or
// what is wrong with it.
type cutShape struct {
	outline outline.Outline
	sizes   []length.Len
	fits    bool
	err     error
}

// cut is the shape as it lies on the mat, worked out once for all lines that
// ask for the same.
func (s *second) cut(p *piece) cutShape {
	key := fmt.Sprint(p.row.kind, p.Shape, p.spec.Sizes, p.spec.Measure, p.spec.Degrees, p.spec.Left, p.spec.Finished, p.spec.Trimmed, p.Grain, s.oneWay(p))
	known, ok := s.cuts[key]
	if ok {
		return known
	}
	cut, err := p.spec.Cut()
	known = cutShape{outline: cut.Outline, sizes: cut.Sizes, err: err}
	if err == nil {
		if p.Grain == Crosswise {
			known.outline = cut.Outline.Turn(90_000_000).Normalise()
		}
		w, h := s.room()
		known.fits = Fits(known.outline, p.Grain, s.oneWay(p), w, h)
	}
	s.cuts[key] = known
	return known
}

// room is how much of the mat a piece has.
func (s *second) room() (w, h length.Len) { return s.list.Mat.Inside(s.list.Margin) }

// oneWay says whether the piece's fabric may not be turned at all.
func (s *second) oneWay(p *piece) bool { return p.Fabric >= 0 && s.list.Fabrics[p.Fabric].OneWay }

// tooLarge tells both sizes of a piece that the mat has no room for.
func (s *second) tooLarge(p *piece) say.Sentence {
	unit, b := s.list.Unit, p.Outline.Bounds()
	w, h := s.room()
	what := mistake.TooLarge
	if m := s.list.Mat; w < m.UsableWidth || h < m.UsableHeight {
		what = mistake.TooLargeInMargin
	}
	return what.Say(over(b.Width(), w, unit), over(b.Height(), h, unit), unit, say.Number(w.Format(unit)), say.Number(h.Format(unit)), unit)
}

// over shows a length, exactly where it is over most and rounding would hide it.
func over(l, most length.Len, unit length.Unit) say.Number {
	if l > most && l.Show(unit) == most.Show(unit) {
		return say.Number(l.Format(unit))
	}
	return say.Number(l.Show(unit))
}

// smaller is what to do about a piece that the mat has no room for.
func (s *second) smaller(p *piece) say.Sentence {
	hint := mistake.Smaller.Say()
	if p.row.kind == shape.Square || p.row.kind == shape.Rectangle {
		hint = mistake.ByHand.Say()
	}
	w, h := s.room()
	switch turned := Fits(p.Outline, QuarterTurns, false, w, h); {
	case turned && s.oneWay(p):
		hint = mistake.TurnWouldFit.Say(hint)
	case turned:
		hint = mistake.WithoutItFits.Say(hint, ticked(grainWords[p.Grain]))
	}
	return hint
}

var grainWords = map[Grain]string{Lengthwise: "lengthwise", Crosswise: "crosswise"}

// sizeText is the line's cut size as she would say it.
func (p *piece) sizeText(sizes []length.Len, unit length.Unit) string {
	var b strings.Builder
	if p.row.angled {
		fmt.Fprintf(&b, "%d° ", p.spec.Degrees)
	}
	switch p.spec.Measure {
	case shape.Side:
		b.WriteString("side ")
	case shape.Height:
		b.WriteString("height ")
	}
	for i, l := range sizes {
		if i > 0 {
			b.WriteString(" x ")
		}
		b.WriteString(l.Show(unit))
	}
	if p.row.handed && p.spec.Left {
		b.WriteString(", left")
	} else if p.row.handed {
		b.WriteString(", right")
	}
	return b.String()
}
