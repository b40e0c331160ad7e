package cutlist

import (
	"slices"
	"strings"

	"example.org/matside/plan/shape"
)

// span is a part of a line, in bytes.
type span struct{ from, to int }

// pieceAttributes are the words behind a comma, written with spaces, and how
// they are told.
var pieceAttributes = map[string]string{
	"lengthwise": "lengthwise", "crosswise": "crosswise", "any grain": "any grain", "left": "left", "right": "right",
	"trimmed": "trimmed", "fussy": "fussy", "by hand": "by hand",
}

var attributesInOrder = []string{"lengthwise", "crosswise", "any grain", "left", "right", "trimmed", "fussy", "by hand"}

// tail reads what stands behind SIZE: `finished`, `for LABEL` and, behind
// commas, attributes. `finished` and `for` may stand behind a comma as well.
func (p *piece) tail(c *cursor) {
	for comma := false; ; {
		switch {
		case c.full(c.line):
			return
		case c.end():
			if comma {
				c.missing("nothing stands behind the comma", "")
			}
			return
		case c.text[c.at] == ',':
			if comma {
				c.missing("nothing stands between the commas", "")
			}
			c.at++
			comma = true
		default:
			p.item(c, comma)
			comma = false
		}
	}
}

// item reads one thing of the tail.
func (p *piece) item(c *cursor, comma bool) {
	c.skip()
	from := c.at
	if c.is("finished") {
		p.say(c, "finished", from)
		return
	}
	if c.is("for") {
		p.label(c, from)
		return
	}
	attribute, ok := phrase(c, pieceAttributes)
	if !ok {
		p.unknown(c, comma)
		return
	}
	if !comma {
		c.wrong(from, "a comma is missing in front of "+ticked(attribute), write(", "+attribute))
	}
	p.say(c, attribute, from)
}

// say keeps an attribute and notes when it was said before.
func (p *piece) say(c *cursor, what string, from int) {
	if _, again := p.said[what]; again {
		c.wrong(from, ticked(what)+" is said twice", "")
		return
	}
	p.said[what] = span{from, c.at}
}

// label reads LABEL.
func (p *piece) label(c *cursor, from int) {
	c.skip()
	start := c.at
	name, ok := c.name("the label behind `for`")
	p.say(c, "for", from)
	if !ok {
		return
	}
	p.Label = name
	if c.text[start] != '"' {
		c.swallowed(start)
	}
}

// swallowed notes when the label read since start ends with an attribute: that
// is a comma forgotten, and would cut the pieces at another size or turn than
// she thinks, without a word.
func (c *cursor) swallowed(start int) {
	label := c.text[start:c.at]
	last, before := 0, 0 // where its last two words start
	for at := range wordsOf(label) {
		before, last = last, at
	}
	for _, at := range []int{last, before} {
		word := strings.ToLower(strings.Join(strings.Fields(label[at:]), " "))
		if at > 0 && slices.Contains(neverEndLabels, word) {
			c.wrong(start+at, "is "+ticked(word)+" a part of the label?",
				write("for "+strings.TrimSpace(label[:at])+", "+word)+"; a label that ends so stands in double quotes")
			return
		}
	}
}

// neverEndLabels are the attributes that say too much to be the end of a label
// by chance; left and right may well be.
var neverEndLabels = []string{"finished", "lengthwise", "crosswise", "any grain", "trimmed", "fussy", "by hand"}

// unknown notes something that is neither an attribute nor `finished` nor `for`.
func (p *piece) unknown(c *cursor, comma bool) {
	from := c.at
	if !comma && p.mistypedFor(c) {
		return
	}
	c.toComma()
	said := strings.TrimSpace(c.text[from:c.at])
	digit := '0' <= said[0] && said[0] <= '9'
	what, hint := "nothing here is called "+ticked(said), ""
	if meant := nearest(said, append([]string{"finished"}, attributesInOrder...)); meant != "" {
		hint = "did you mean " + ticked(meant) + "?"
		p.say(c, meant, from)
	}
	switch {
	case digit && from > 1 && c.text[from-1] == ',' && '0' <= c.text[from-2] && c.text[from-2] <= '9':
		what, hint = "a comma can't stand inside a number", "write a decimal with a point: `2.5`"
	case digit && !comma:
		c.at = from
		c.sizes("", "")
		what, hint = "these numbers are not joined", "write `x` between the numbers of a size: `2 1/2 x 4 1/2`"
	case hint != "":
	case c.onFabric(said):
		hint = "that belongs in the line of the fabric"
	case p.Label != "":
		hint = "a name with a comma stands in double quotes; attributes are " + strings.Join(attributesInOrder, ", ")
	default:
		hint = "attributes are " + strings.Join(attributesInOrder, ", ")
	}
	c.wrong(from, what, hint)
}

// onFabric says whether this is an attribute of fabrics.
func (c *cursor) onFabric(said string) bool {
	_, ok := phrase(&cursor{text: said}, fabricAttributes)
	return ok
}

// mistypedFor reads a word that must be meant for `finished` or `for`, and what
// belongs to it, so that the rest of the line can still be read.
func (p *piece) mistypedFor(c *cursor) bool {
	if c.mistyped("finished") {
		return true
	}
	if !c.mistyped("for") {
		return false
	}
	if !c.end() && c.text[c.at] != ',' {
		p.Label, _ = c.name("the label")
	}
	return true
}

// agree looks whether the attributes go together and with the shape, and takes
// them over.
func (p *piece) agree(c *cursor, known bool) {
	p.exclusive(c, "lengthwise", "crosswise", "any grain")
	p.exclusive(c, "left", "right")
	p.exclusive(c, "by hand", "fussy")
	if known {
		p.hand(c)
		if p.row.kind != shape.Square && p.row.kind != shape.Rectangle {
			p.forbid(c, "by hand", "only squares and rectangles are cut by hand", "leave it out")
		}
	}
	has := func(word string) bool { _, ok := p.said[word]; return ok }
	switch {
	case has("lengthwise"):
		p.Grain = Lengthwise
	case has("crosswise"):
		p.Grain = Crosswise
	case has("any grain"):
		p.Grain = AnyGrain
	}
	if has("by hand") {
		p.Kind = ByHand
	}
	p.Trimmed, p.Fussy = has("trimmed"), has("fussy")
	p.spec.Trimmed, p.spec.Finished, p.spec.Left = p.Trimmed, has("finished"), has("left")
}

// exclusive notes when more than one of the words is said.
func (p *piece) exclusive(c *cursor, words ...string) {
	first := ""
	for _, word := range words {
		if _, ok := p.said[word]; !ok {
			continue
		}
		if first != "" {
			p.forbid(c, word, "a piece can't be "+ticked(first)+" and "+ticked(word), "keep one of the two")
		}
		first = word
	}
}

// hand notes a hand that is missing or one too many.
func (p *piece) hand(c *cursor) {
	_, left := p.said["left"]
	_, right := p.said["right"]
	switch {
	case p.row.handed && !left && !right:
		p.ok = false
		c.add(c.line, p.sizeFrom, p.sizeTo, p.row.plural()+" have a hand", "write `, left` or `, right` behind it")
	case !p.row.handed && p.row.kind == shape.Own:
		const why = "an outline of your own is cut as drawn"
		p.forbid(c, "left", why, "draw another outline for the other hand")
		p.forbid(c, "right", why, "draw another outline for the other hand")
	case !p.row.handed:
		p.forbid(c, "left", p.row.plural()+" have no left or right", "leave it out")
		p.forbid(c, "right", p.row.plural()+" have no left or right", "leave it out")
	}
}

// forbid notes an attribute that is said and must not be.
func (p *piece) forbid(c *cursor, word, what, hint string) {
	if at, ok := p.said[word]; ok {
		p.ok = false
		c.add(c.line, at.from, at.to, what, hint)
	}
}
