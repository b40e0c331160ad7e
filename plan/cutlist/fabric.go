package cutlist

import (
	"errors"
	"slices"
	"strings"

	"example.org/matside/plan/cutlist/mistake"
	"example.org/matside/plan/length"
	"example.org/matside/plan/say"
)

// fabric reads `fabric NAME[, STOCK]…[, ATTRIBUTE]…`.
func (r *reader) fabric(c *cursor) {
	c.skip()
	from := c.at
	name, ok := c.name(mistake.FabricName)
	f := Fabric{Name: name, Line: c.line}
	if before, again := r.fabrics[name]; ok && again {
		c.wrong(from, mistake.FabricTwice.Say(r.list.Fabrics[before].Line), mistake.OwnFabricName.Say())
		ok = false
	}
	said := map[string]bool{}
	for !c.end() && !c.full(c.line) {
		if !c.take(',') {
			at := c.at
			c.toComma()
			c.wrong(at, mistake.CommaMissing.Say(), write(", "+strings.TrimSpace(c.text[at:c.at])))
			continue
		}
		r.fabricItem(c, &f, said)
	}
	if ok {
		r.fabrics[name] = len(r.list.Fabrics)
		r.list.Fabrics = append(r.list.Fabrics, f)
	}
}

// fabricItem reads what stands behind a comma of a fabric: stock or an attribute.
func (r *reader) fabricItem(c *cursor, f *Fabric, said map[string]bool) {
	if c.end() || c.text[c.at] == ',' {
		c.missing(mistake.BehindComma.Say(), say.Nothing)
		return
	}
	from := c.at
	if c.fatQuarters() {
		return
	}
	if _, _, err := length.Scan(c.rest(), c.unit); !errors.Is(err, length.ErrNone) {
		r.stock(c, f)
		return
	}
	attribute, ok := phrase(c, fabricAttributes)
	if !ok {
		c.toComma()
		said := strings.Fields(c.text[from:c.at])
		hint := say.Nothing
		for n := min(2, len(said)); n > 0 && hint.Silent(); n-- {
			hint = didYouMean(strings.Join(said[:n], " "), fabricWords)
		}
		if _, ok := phrase(&cursor{text: strings.Join(said, " ")}, pieceAttributes); ok && hint.Silent() {
			hint = mistake.BehindPiece.Say()
		}
		if hint.Silent() {
			hint = mistake.BehindFabric.Say()
		}
		c.wrong(from, mistake.NoFabricIs.Say(ticked(strings.TrimSpace(c.text[from:c.at]))), hint)
		return
	}
	if said[attribute.name] {
		c.wrong(from, mistake.SaidTwice.Say(ticked(attribute.name)), say.Nothing)
	}
	said[attribute.name] = true
	attribute.read(c, f)
}

// fabricWords are the attributes as they are suggested.
var fabricWords = []string{"one-way", "sheds", "face down", "shrinks", "cutter setting"}

// fatQuarters notes stock told by the trade's word for it, whose size differs
// from shop to shop.
func (c *cursor) fatQuarters() bool {
	from := c.at
	item := strings.TrimSpace(c.text[from:c.stop()])
	n, word, found := strings.Cut(strings.ToLower(item), "fat ")
	if !found || word != "quarter" && word != "quarters" {
		return false
	}
	n = strings.TrimSpace(n)
	if n == "" || strings.Trim(n, "0123456789") != "" {
		n = "1"
	}
	c.at = c.stop()
	c.wrong(from, mistake.FatQuarters.Say(), mistake.YourQuarters.Say(ticked(n+" of 18 x 21")))
	return true
}

// fabricAttribute is a word or two and what they do to a fabric.
type fabricAttribute struct {
	name string
	read func(c *cursor, f *Fabric)
}

var fabricAttributes = map[string]fabricAttribute{
	"one way":   {"one-way", func(_ *cursor, f *Fabric) { f.OneWay = true }},
	"shed":      {"sheds", func(_ *cursor, f *Fabric) { f.Sheds = true }},
	"face down": {"face down", func(_ *cursor, f *Fabric) { f.FaceDown = true }},
	"shrink":    {"shrinks", shrinks},
	"cutter setting": {"cutter setting", func(c *cursor, f *Fabric) {
		f.Setting, _ = c.name(mistake.SettingName)
	}},
}

// stock reads `W x H` or `N of W x H`.
func (r *reader) stock(c *cursor, f *Fabric) {
	from := c.at
	n, ok := c.countOf()
	w, h, good := c.size(mistake.FabricSize, "42 in x 2 yd")
	switch {
	case !good:
		c.toComma()
	case ok && r.panels+n > MaxPanels:
		c.wrong(from, mistake.TooManyPanels.Say(MaxPanels), say.Nothing)
	case ok:
		r.panels += n
		f.Stock = append(f.Stock, slices.Repeat([]Panel{{w, h}}, n)...)
	}
}

// countOf reads `N of`; where it does not stand, N is 1 and nothing is read.
func (c *cursor) countOf() (n int, ok bool) {
	from := c.at
	c.at += len(c.rest()) - len(strings.TrimLeft(c.rest(), "0123456789"))
	of := c.is("of")
	if c.at = from; !of {
		return 1, true
	}
	n, ok = c.whole(mistake.FabricCount, MaxPanels)
	c.is("of")
	return n, ok
}

// shrinks reads `P% x Q%`, across x along.
func shrinks(c *cursor, f *Fabric) {
	var ok bool
	if f.ShrinkAcross, ok = c.percent(); ok && !c.times() {
		c.lacks(mistake.ShrinkageAlong, mistake.HowShrinks.Say())
		ok = false
	}
	if ok {
		f.ShrinkAlong, ok = c.percent()
	}
	if !ok {
		c.toComma()
	}
}

// mostShrink is in millionths. A fabric that lost more than half would leave
// nothing to plan with.
const mostShrink = 500_000

// percent reads a number and its percent sign, in millionths.
func (c *cursor) percent() (int64, bool) {
	c.skip()
	from := c.at
	v, n, err := length.ScanParts(c.rest(), 10_000)
	c.at += n
	switch {
	case n == 0:
		c.lacks(mistake.Shrinkage, mistake.HowShrinks.Say())
	case err != nil:
		c.wrong(from, mistake.Of(safely(err)), mistake.HowShrinks.Say())
	case !c.take('%'):
		c.lacks(mistake.PercentSign, mistake.HowShrinks.Say())
	case v > mostShrink:
		c.wrong(from, mistake.ShrinksTooMuch.Say(), say.Nothing)
	default:
		return v, true
	}
	return 0, false
}
