package cutlist

import (
	"fmt"
	"strings"

	"example.org/matside/plan/cutlist/mistake"
	"example.org/matside/plan/length"
	"example.org/matside/plan/say"
	"example.org/matside/plan/shape"
)

// shape reads SHAPE.
func (p *piece) shape(c *cursor) (known bool) {
	if row, ok := phrase(c, shapes); ok {
		p.row, p.spec.Kind, p.Shape = row, row.kind, row.name
		return true
	}
	from := c.at
	words, ends := c.words()
	if len(words) == 0 {
		c.lacks(mistake.ShapeOfPiece, mistake.WhatToCut.Say())
		return false
	}
	n, hint := p.nearestShape(words)
	c.at = ends[n-1]
	c.wrong(from, mistake.NoShape.Say(ticked(c.text[from:c.at])), hint)
	return false
}

// nearestShape is what a shape nobody knows may be meant for, and how many of
// the words it takes.
func (p *piece) nearestShape(words []string) (n int, hint say.Sentence) {
	for n := len(words); n > 0; n-- {
		said := strings.ToLower(strings.Join(words[:n], " "))
		if hint, ok := otherNames[strings.TrimSuffix(said, "s")]; ok {
			return n, hint
		}
		if hint := didYouMean(said, names(p.Count != 1)); !hint.Silent() {
			return n, hint
		}
	}
	n = 1
	for n < len(words) && !sizeWords[strings.ToLower(words[n])] {
		n++
	}
	return n, mistake.Shapes.Say(strings.Join(names(true), ", "))
}

// sizeWords may stand between a shape and the end of its SIZE.
var sizeWords = map[string]bool{"side": true, "height": true, "finished": true, "for": true}

// size reads SIZE: 45 or 60, side or height, and the numbers.
func (p *piece) size(c *cursor) {
	if p.row.angled {
		p.angle(c)
	}
	c.skip()
	p.sizeFrom = c.at
	measure := c.at
	switch {
	case c.isPlural("side"):
		p.spec.Measure = shape.Side
	case c.isPlural("height"):
		p.spec.Measure = shape.Height
	}
	if p.spec.Measure != shape.Usual && !p.row.measured {
		c.wrong(measure, mistake.ShapeTakesNo.Say(p.row.said(), ticked(strings.TrimSpace(c.text[measure:c.at]))), write(p.row.example))
	}
	p.numbers(c)
	p.sizeTo = c.at
}

// numbers reads the numbers of SIZE and notes when they are too few or many.
// Too few with more numbers behind them is an x forgotten, which tail tells.
func (p *piece) numbers(c *cursor) {
	sizes, from, ok := c.sizes(mistake.Size, p.row.example)
	p.spec.Sizes = sizes
	if p.ok = p.ok && ok; !ok || len(sizes) == p.row.numbers {
		return
	}
	p.ok = false
	if _, _, err := length.Scan(strings.TrimSpace(c.rest()), c.unit); err == nil && len(sizes) < p.row.numbers {
		return
	}
	hint := write(p.row.example)
	if p.row.kind == shape.Square && len(sizes) == 2 {
		hint = mistake.OrOneNumber.Say()
	}
	what := mistake.ShapeHasNumbers.Say(p.row.said(), p.row.numbers, len(sizes))
	if p.row.numbers == 1 {
		what = mistake.ShapeHasOneNumber.Say(p.row.said(), len(sizes))
	}
	c.wrong(from, what, hint)
}

// angle reads 45 or 60, with or without a degree sign.
func (p *piece) angle(c *cursor) {
	c.skip()
	from := c.at
	for _, degrees := range []int{45, 60} {
		if rest, ok := strings.CutPrefix(c.rest(), fmt.Sprint(degrees)); ok && angleEnds(rest) {
			p.spec.Degrees = degrees
			c.at = len(c.text) - len(strings.TrimPrefix(rest, "°"))
			return
		}
	}
	p.ok = false
	if c.otherAngle() {
		c.wrong(from, mistake.AngleIs.Say(), write(p.row.example))
		return
	}
	c.at = from
	c.missing(mistake.AngleMissing.Say(), write(p.row.example))
}

// otherAngle reads a number with a degree sign, or one with another number
// behind it: an angle that is not 45 or 60.
func (c *cursor) otherAngle() bool {
	_, n, err := length.ScanParts(c.rest(), 1)
	if err != nil {
		return false
	}
	c.at += n
	if rest, ok := strings.CutPrefix(c.rest(), "°"); ok {
		c.at = len(c.text) - len(rest)
		return true
	}
	_, _, err = length.Scan(strings.TrimSpace(c.rest()), c.unit)
	return err == nil
}

// angleEnds says whether what follows the digits of an angle is no part of a
// longer number or of a length.
func angleEnds(rest string) bool {
	r := firstRune(rest)
	return r == 0 || r == '°' || r == ' ' || r == '\t' || r == ',' || r == '#'
}

// anySize reads a SIZE of a shape nobody knows, so as to go on behind it.
func (p *piece) anySize(c *cursor) {
	p.ok = false
	for c.isPlural("side") || c.isPlural("height") {
	}
	if _, _, err := length.Scan(strings.TrimSpace(c.rest()), c.unit); err == nil {
		c.sizes(mistake.Size, "squares 2 1/2")
	}
}
