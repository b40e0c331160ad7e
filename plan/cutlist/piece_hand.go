package cutlist

import (
	"example.org/matside/plan/cutlist/mistake"
	"example.org/matside/plan/length"
	"example.org/matside/plan/say"
)

// What is cut by hand from strips across the fabric.

// strips reads the rest of `COUNT strips A [for LABEL]`.
func (s *second) strips(c *cursor, p *piece) {
	p.Kind, p.Shape = Strips, "strip"
	width, ok := p.width(c, "strips 2 1/2")
	if c.times() {
		from := c.at
		c.sizes(mistake.Size, "strips 2 1/2")
		c.wrong(from, mistake.StripsAcross.Say(), mistake.WidthAlone.Say())
		ok = false
	}
	ok = s.plainTail(c, p, mistake.StripsPlain) && ok
	p.StripWidth, p.Size = width, width.Show(s.list.Unit)
	if ok && p.ok {
		s.list.Lines = append(s.list.Lines, p.Line)
	}
}

// binding reads the rest of `binding A around W x H [for LABEL]`.
func (s *second) binding(c *cursor) {
	const example = "binding 2 1/2 around 44 x 52"
	p := &piece{Line: Line{Number: c.line, Fabric: s.fabric, Kind: Binding, Shape: "binding"}, said: map[string]span{}}
	width, ok := p.width(c, example)
	if c.end() {
		if ok {
			c.lacks(mistake.SizeOfQuilt, write(example))
		}
		return
	}
	if !c.is("around") && !c.mistyped("around") {
		c.lacks(mistake.Around, write(example))
		ok = false
	}
	w, h, good := c.size(mistake.QuiltSize, example)
	ok = s.plainTail(c, p, mistake.BindingPlain) && ok && good
	unit := s.list.Unit
	p.StripWidth, p.Length = width, 2*(w+h)+bindingSpare
	p.Size = width.Show(unit) + " around " + w.Show(unit) + " x " + h.Show(unit)
	if ok {
		s.list.Lines = append(s.list.Lines, p.Line)
	}
}

// width reads the one number of a strip, over zero.
func (p *piece) width(c *cursor, example string) (length.Len, bool) {
	c.skip()
	from := c.at
	width, ok := c.length(mistake.StripWidth, write(example))
	if ok && width == 0 {
		c.wrong(from, mistake.SizeOverZero.Say(), say.Nothing)
		ok = false
	}
	return width, ok
}

// plainTail reads a tail that may hold `for LABEL` and nothing else.
func (s *second) plainTail(c *cursor, p *piece, are *say.Kind) bool {
	p.tail(c)
	ok := true
	for _, word := range append([]string{"finished"}, attributesInOrder...) {
		if _, said := p.said[word]; said {
			p.forbid(c, word, are.Say(), mistake.LeaveWordOut.Say(ticked(word)))
			ok = false
		}
	}
	return ok
}
