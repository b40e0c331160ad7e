package cutlist

import (
	"strings"

	"example.org/matside/plan/length"
)

// quilt reads `quilt NAME`.
func (r *reader) quilt(c *cursor) {
	r.once(c, "quilt")
	if name, ok := c.name("the quilt's name"); ok && r.list.Quilt == "" {
		r.list.Quilt = name
	}
	c.done("write a name with a comma in double quotes: `quilt \"Plain, Simple\"`")
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
		c.done("")
	case c.at == from:
		c.missing("the unit is missing", "write `units in`, `units cm` or `units mm`")
	default:
		c.wrong(from, "a cut list can't be in "+ticked(c.text[from:c.at]), "write `units in`, `units cm` or `units mm`")
	}
}

var unitNames = map[string]length.Unit{
	"in": length.In, "inch": length.In, "inches": length.In, "cm": length.Cm, "mm": length.Mm,
}

// seam, gap and margin read one length each.
func (r *reader) seam(c *cursor)   { r.setting(c, "seam", "seam 1/4", &r.list.Seam) }
func (r *reader) gap(c *cursor)    { r.setting(c, "gap", "gap 1/8", &r.list.Gap) }
func (r *reader) margin(c *cursor) { r.setting(c, "margin", "margin 1/4", &r.list.Margin) }

func (r *reader) setting(c *cursor, what, example string, to *length.Len) {
	r.once(c, what)
	if l, ok := c.length("the "+what+" is missing", write(example)); ok && r.said[what] == c.line {
		*to = l
	}
	c.done("")
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
		c.missing("`exact` or `ruler` is missing", "write `allowance exact` or `allowance ruler`")
	default:
		hint := didYouMean(c.text[from:c.at], []string{"exact", "ruler"})
		if hint == "" {
			hint = "write `allowance exact` or `allowance ruler`"
		}
		c.wrong(from, "no allowance is called "+ticked(c.text[from:c.at]), hint)
	}
	c.done("")
}

// mat reads `mat W x H [usable W x H]`.
func (r *reader) mat(c *cursor) {
	const example, rim = "mat 12 x 12 usable 11 x 11", length.Inch / 2
	r.once(c, "mat")
	c.skip()
	from := c.at
	m := Mat{}
	ok, good := false, true
	m.Width, m.Height, ok = c.size("the mat's size", example)
	if c.is("usable") || c.mistyped("usable") {
		c.skip()
		from = c.at
		m.UsableWidth, m.UsableHeight, good = c.size("the usable size", example)
		if ok && good && (m.UsableWidth > m.Width || m.UsableHeight > m.Height) {
			c.wrong(from, "the usable part is larger than the mat", "")
			good = false
		}
	} else if m.UsableWidth, m.UsableHeight = m.Width-2*rim, m.Height-2*rim; ok && min(m.UsableWidth, m.UsableHeight) <= 0 {
		c.wrong(from, "nothing of so small a mat is usable, less 1/2 in on each side", "say how much is: "+ticked(example))
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
