package cutlist

import (
	"strings"

	"example.org/matside/plan/cutlist/mistake"
	"example.org/matside/plan/length"
	"example.org/matside/plan/say"
)

// quilt reads `quilt NAME`.
func (r *reader) quilt(c *cursor) {
	r.once(c, "quilt")
	if name, ok := c.name(mistake.QuiltName); ok && r.list.Quilt == "" {
		r.list.Quilt = name
	}
	c.done(mistake.QuoteComma.Say("`quilt \"Plain, Simple\"`"))
}

// units reads `units in|cm|mm`, which acts on the lines below it; the first
// one is also the unit lengths are printed in.
func (r *reader) units(c *cursor) {
	c.skip()
	from := c.at
	unit, ok := unitNames[strings.ToLower(c.word())]
	switch {
	case ok:
		if _, again := r.said["units"]; !again {
			r.list.Unit = unit
		}
		r.said["units"] = c.line
		r.unit = unit
		c.done(say.Nothing)
	case c.at == from:
		c.lacks(mistake.Unit, mistake.UnitsLine.Say())
	default:
		c.wrong(from, mistake.NotInUnit.Say(ticked(c.text[from:c.at])), mistake.UnitsLine.Say())
	}
}

var unitNames = map[string]length.Unit{
	"in": length.In, "inch": length.In, "inches": length.In, "cm": length.Cm, "mm": length.Mm,
}

// seam, gap and margin read one length each.
func (r *reader) seam(c *cursor) { r.setting(c, "seam", mistake.Seam, "seam 1/4", &r.list.Seam) }
func (r *reader) gap(c *cursor)  { r.setting(c, "gap", mistake.Gap, "gap 1/8", &r.list.Gap) }
func (r *reader) margin(c *cursor) {
	r.setting(c, "margin", mistake.Margin, "margin 1/4", &r.list.Margin)
}

func (r *reader) setting(c *cursor, keyword string, what *say.Kind, example string, to *length.Len) {
	r.once(c, keyword)
	if l, ok := c.length(what, write(example)); ok && r.said[keyword] == c.line {
		*to = l
	}
	c.done(say.Nothing)
}

// allowance reads `allowance exact|ruler`.
func (r *reader) allowance(c *cursor) {
	r.once(c, "allowance")
	c.skip()
	from := c.at
	switch strings.ToLower(c.word()) {
	case "exact":
	case "ruler", "rulers":
		r.list.Ruler = r.list.Ruler || r.said["allowance"] == c.line
	case "":
		c.lacks(mistake.ExactOrRuler, mistake.AllowanceLine.Say())
	default:
		hint := didYouMean(c.text[from:c.at], []string{"exact", "ruler"})
		if hint.Silent() {
			hint = mistake.AllowanceLine.Say()
		}
		c.wrong(from, mistake.NoAllowance.Say(ticked(c.text[from:c.at])), hint)
	}
	c.done(say.Nothing)
}

// mat reads `mat W x H [usable W x H]`.
func (r *reader) mat(c *cursor) {
	const example, rim = "mat 12 x 12 usable 11 x 11", length.Inch / 2
	r.once(c, "mat")
	c.skip()
	from := c.at
	m := Mat{}
	ok, good := false, true
	m.Width, m.Height, ok = c.size(mistake.MatSize, example)
	if c.is("usable") || c.mistyped("usable") {
		c.skip()
		from = c.at
		m.UsableWidth, m.UsableHeight, good = c.size(mistake.UsableSize, example)
		if ok && good && (m.UsableWidth > m.Width || m.UsableHeight > m.Height) {
			c.wrong(from, mistake.UsableTooLarge.Say(), say.Nothing)
			good = false
		}
	} else if m.UsableWidth, m.UsableHeight = m.Width-2*rim, m.Height-2*rim; ok && min(m.UsableWidth, m.UsableHeight) <= 0 {
		c.wrong(from, mistake.NothingUsable.Say(), mistake.SayUsable.Say(ticked(example)))
		good = false
	}
	c.done(write(example))
	switch {
	case !ok || !good:
		r.badMat = true
	case r.said["mat"] == c.line:
		r.list.Mat = m
	}
}
