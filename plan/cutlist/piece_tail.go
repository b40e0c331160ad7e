package cutlist

import (
	"slices"
	"strings"

	"example.org/matside/plan/cutlist/mistake"
	"example.org/matside/plan/say"
	"example.org/matside/plan/shape"
)

// span is a part of a line, in bytes.
type span struct{ from, to int }

var attributesInOrder = []string{"lengthwise", "crosswise", "any grain", "left", "right", "trimmed", "fussy", "by hand"}

// pieceAttributes are the words behind a comma, written with spaces, and how
// they are told.
var pieceAttributes = func() map[string]string {
	told := map[string]string{}
	for _, word := range attributesInOrder {
		told[word] = word
	}
	return told
}()

// tail reads what stands behind SIZE: `finished`, `for LABEL` and, behind
// commas, attributes. `finished` and `for` may stand behind a comma as well.
func (p *piece) tail(c *cursor) {
	for comma := false; ; {
		switch {
		case c.full(c.line):
			return
		case c.end():
			if comma {
				c.missing(mistake.BehindComma.Say(), say.Nothing)
			}
			return
		case c.text[c.at] == ',':
			if comma {
				c.missing(mistake.BetweenCommas.Say(), say.Nothing)
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
		c.wrong(from, mistake.CommaMissingFor.Say(ticked(attribute)), write(", "+attribute))
	}
	p.say(c, attribute, from)
}

// say keeps an attribute and notes when it was said before.
func (p *piece) say(c *cursor, what string, from int) {
	if _, again := p.said[what]; again {
		c.wrong(from, mistake.SaidTwice.Say(ticked(what)), say.Nothing)
		return
	}
	p.said[what] = span{from, c.at}
}

// label reads LABEL.
func (p *piece) label(c *cursor, from int) {
	c.skip()
	start := c.at
	name, ok := c.name(mistake.LabelBehindFor)
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
			c.wrong(start+at, mistake.PartOfLabel.Say(ticked(word)), mistake.QuotedLabel.Say(ticked("for "+strings.TrimSpace(label[:at])+", "+word)))
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
	what, hint := mistake.NothingHere.Say(ticked(said)), say.Nothing
	if meant := nearest(said, append([]string{"finished"}, attributesInOrder...)); meant != "" {
		hint = mistake.DidYouMean.Say(ticked(meant))
		p.say(c, meant, from)
	}
	switch {
	case digit && from > 1 && c.text[from-1] == ',' && '0' <= c.text[from-2] && c.text[from-2] <= '9':
		what, hint = mistake.CommaInNumber.Say(), mistake.DecimalPoint.Say()
	case digit && !comma:
		c.at = from
		c.sizes(mistake.Size, "")
		what, hint = mistake.NumbersApart.Say(), mistake.JoinNumbers.Say()
	case !hint.Silent():
	case c.onFabric(said):
		hint = mistake.OnFabric.Say()
	case p.Label != "":
		hint = mistake.QuotedOr.Say(strings.Join(attributesInOrder, ", "))
	default:
		hint = mistake.Attributes.Say(strings.Join(attributesInOrder, ", "))
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
		p.Label, _ = c.name(mistake.Label)
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
			p.forbid(c, "by hand", mistake.ByHandOnly.Say(), mistake.LeaveOut.Say())
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
			p.forbid(c, word, mistake.NotBoth.Say(ticked(first), ticked(word)), mistake.KeepOne.Say())
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
		c.add(c.line, p.sizeFrom, p.sizeTo, mistake.HandMissing.Say(p.row.said()), mistake.LeftOrRight.Say())
	case !p.row.handed && p.row.kind == shape.Own:
		p.forbid(c, "left", mistake.OutlineNoHand.Say(), mistake.OtherHand.Say())
		p.forbid(c, "right", mistake.OutlineNoHand.Say(), mistake.OtherHand.Say())
	case !p.row.handed:
		p.forbid(c, "left", mistake.NoHand.Say(p.row.said()), mistake.LeaveOut.Say())
		p.forbid(c, "right", mistake.NoHand.Say(p.row.said()), mistake.LeaveOut.Say())
	}
}

// forbid notes an attribute that is said and must not be.
func (p *piece) forbid(c *cursor, word string, what, hint say.Sentence) {
	if at, ok := p.said[word]; ok {
		p.ok = false
		c.add(c.line, at.from, at.to, what, hint)
	}
}
