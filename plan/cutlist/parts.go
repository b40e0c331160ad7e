package cutlist

import (
	"slices"
	"strings"

	"example.org/matside/plan/cutlist/mistake"
	"example.org/matside/plan/say"
	"example.org/matside/plan/shape"
)

// Says is what kind of statement a line of a cut list holds.
type Says uint8

// The kinds. Nothing is a blank line or a comment alone; Unclear is a line
// whose words are not understood.
const (
	Nothing Says = iota
	SaysQuilt
	SaysUnits
	SaysSetting // seam, allowance, gap, margin or mat
	SaysFabric
	SaysOutline
	SaysCutFrom
	SaysPiece
	SaysStrips
	SaysBinding
	Unclear
)

// Parts is one line of a cut list taken apart, each part in her own words, so
// that one of them can be changed and the line put together again (package
// edit). Only those of its kind are set.
type Parts struct {
	Says  Says
	Name  string   // of the quilt, fabric or outline; the fabric of cut from; a setting's keyword
	Rest  string   // behind a setting's or an outline's keyword and name
	Stock []string // of a fabric: "42 in x 2 yd"
	// Attributes stand behind commas: "one-way", "shrinks 3% x 5%", "by hand",
	// those of a piece in the order of the contract.
	Attributes []string

	Count    string // of pieces and strips
	Shape    string // plain and singular: "half-square triangle"
	Degrees  int    // 45, 60 or 0
	Size     string // "2 1/2 x 4 1/2", "side 3", "2 1/2 around 44 x 52"
	Finished bool
	Label    string

	// From and To are where the words stand in the line, in bytes: before
	// them is indentation, behind them perhaps a comment.
	From, To int
	// Wrong says that the line has a mistake that can be seen without the
	// others; what is set then is what could be read.
	Wrong bool
}

// Apart takes one line of a cut list apart. It needs no other line, so it
// can't tell whether a fabric or outline it names is there, nor whether a
// piece fits the mat.
func Apart(line string) Parts {
	r := newReader("", nil)
	r.lines = []string{strings.TrimRight(line, "\r\n")}
	c := &cursor{notes: &r.notes, line: 1, text: r.lines[0]}
	a := &apart{r: r, c: c}
	if c.readable(); !c.end() {
		a.says()
	}
	a.From = len(c.text) - len(strings.TrimLeft(c.text, " \t"))
	a.To = a.From + len(strings.TrimRight(c.text[a.From:a.end()], " \t"))
	a.Wrong = len(r.found) > 0
	return a.Parts
}

// apart is a line while it is taken apart.
type apart struct {
	Parts
	r *reader
	c *cursor
}

// end is where the statement ends: where the reader came to its comment, or
// where the first # stands that is in no quotation marks.
func (a *apart) end() int {
	c := a.c
	if a.Says != Unclear && c.end() {
		return c.at
	}
	for c.at = 0; c.at < len(c.text) && c.text[c.at] != '#'; c.at++ {
		if c.toComma(); c.at == len(c.text) || c.text[c.at] == '#' {
			break
		}
	}
	return c.at
}

// says reads the first words and the parts behind them.
func (a *apart) says() {
	c := a.c
	if b := c.text[c.at]; '0' <= b && b <= '9' {
		a.piece()
		return
	}
	word, ok := phrase(c, keywords)
	if !ok {
		a.Says = Unclear
		return
	}
	a.Says = word.says
	switch word.says {
	case SaysQuilt, SaysCutFrom:
		a.Name, _ = c.name(mistake.AName)
		c.done(say.Nothing)
	case SaysUnits, SaysSetting:
		a.Name = word.name
		a.rest()
	case SaysFabric:
		a.fabric()
	case SaysOutline:
		a.Name, _ = c.nameTo(mistake.AName, c.outlineNameEnds)
		a.rest()
	case SaysBinding:
		a.binding()
	}
}

// rest takes all that is left, up to a comment.
func (a *apart) rest() {
	from := a.c.at
	for a.c.toComma(); a.c.at < len(a.c.text) && a.c.text[a.c.at] == ','; a.c.toComma() {
		a.c.at++
	}
	a.Rest = strings.TrimSpace(a.c.text[from:a.c.at])
}

// raw is what was read since from.
func (a *apart) raw(from int) string { return strings.TrimSpace(a.c.text[from:a.c.at]) }

func (a *apart) fabric() {
	c := a.c
	a.Name, _ = c.name(mistake.FabricName)
	for !c.end() && c.take(',') {
		c.skip()
		from := c.at
		f, said := Fabric{}, map[string]bool{}
		a.r.fabricItem(c, &f, said)
		switch item := a.raw(from); {
		case len(f.Stock) > 0:
			a.Stock = append(a.Stock, item)
		case item != "":
			a.Attributes = append(a.Attributes, item)
		}
	}
	c.done(say.Nothing)
}

func (a *apart) piece() {
	c := a.c
	s := &second{reader: a.r, fabric: badFabric, cuts: map[string]cutShape{}, absent: map[string]bool{}}
	p := &piece{Line: Line{Number: 1, Fabric: badFabric}, said: map[string]span{}}
	from := c.at
	p.Count, p.ok = s.count(c)
	a.Count = strings.TrimRight(a.raw(from), "xX")
	a.Says = SaysPiece
	switch {
	case c.isPlural("strip"):
		a.Says, a.Shape = SaysStrips, "strip"
		from = c.at
		p.width(c, "strips 2 1/2")
		a.Size = a.raw(from)
	case !p.shape(c):
		a.Says = Unclear
		return
	case p.row.kind == shape.Own:
		a.Shape, a.Name = p.row.name, a.ownName(s, p)
	default:
		a.Shape = p.row.name
		p.size(c)
		a.Degrees, a.Size = p.spec.Degrees, a.raw(min(p.sizeFrom, c.at))
	}
	a.tail(p)
}

// ownName is the name of an outline, which is taken to be there.
func (a *apart) ownName(s *second, p *piece) string {
	a.c.skip()
	from := a.c.at
	name, _ := a.c.nameTo(mistake.OutlineName, func() int { return s.ownNameEnds(a.c) })
	p.sizeFrom, p.sizeTo = from, a.c.at
	return name
}

func (a *apart) binding() {
	c := a.c
	p := &piece{Line: Line{Kind: Binding}, said: map[string]span{}}
	c.skip()
	from := c.at
	const example = "binding 2 1/2 around 44 x 52"
	p.width(c, example)
	if c.is("around") {
		c.size(mistake.QuiltSize, example)
	}
	a.Size = a.raw(from)
	a.tail(p)
}

// tail takes what stands behind SIZE.
func (a *apart) tail(p *piece) {
	p.tail(a.c)
	a.Label = p.Label
	_, a.Finished = p.said["finished"]
	for _, word := range attributesInOrder {
		if _, ok := p.said[word]; ok {
			a.Attributes = append(a.Attributes, word)
		}
	}
}

// Shapes are the names of all shapes, plain and singular, in the order of the
// contract; "outline" stands for those of her own.
func Shapes() []string {
	var out []string
	for _, s := range shapesInOrder {
		out = append(out, s.name)
	}
	return out
}

// ShapeTakes says what a shape's piece line needs: how many numbers its size
// has, whether side or height may be said, whether it takes 45 or 60, and
// whether it has a hand. example is how one writes several of them.
func ShapeTakes(name string) (numbers int, measured, angled, handed bool, example string) {
	s := shapes[strings.ReplaceAll(name, "-", " ")]
	return s.numbers, s.measured, s.angled, s.handed, s.example
}

// PieceAttributes are the words that may stand behind a piece, in the order
// of the contract, and FabricAttributes those behind a fabric's name.
func PieceAttributes() []string { return slices.Clone(attributesInOrder) }

// FabricAttributes are the words that may stand behind a fabric's name.
func FabricAttributes() []string { return slices.Clone(fabricWords) }

// NeedsQuotes says whether a name must stand in double quotes to be read back
// as it is, wherever in a cut list it stands. A name that holds a double quote
// itself can't be written so.
func NeedsQuotes(name string) bool {
	fields := strings.Fields(name)
	if len(fields) == 0 || strings.Join(fields, " ") != name || strings.ContainsAny(name, ",#:=") {
		return true
	}
	for _, w := range fields {
		switch strings.ToLower(w) {
		case "finished", "for", "from":
			return true
		}
	}
	c := &cursor{notes: &notes{lines: []string{name}, onLine: map[int]int{}}, line: 1, text: name, at: len(name)}
	c.swallowed(0)
	return len(c.found) > 0
}
