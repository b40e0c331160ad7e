package cutlist

import (
	"strings"

	"example.org/matside/plan/cutlist/mistake"
	"example.org/matside/plan/length"
	"example.org/matside/plan/say"
	"example.org/matside/plan/shape"
)

// second is what the second go knows from the lines above.
type second struct {
	*reader
	fabric int // what is cut from: an index, or one of the two below
	pieces int
	cuts   map[string]cutShape
	absent map[string]bool // what was told to be missing
}

const (
	noFabric  = -1 // nothing said yet
	badFabric = -2 // said, but with a mistake that has been told
)

// pieceLines is the second go: piece lines, in the order of the file.
func (r *reader) pieceLines() {
	s := &second{reader: r, fabric: noFabric, cuts: map[string]cutShape{}, absent: map[string]bool{}}
	s.noRoom()
	for _, c := range r.pending {
		switch word := strings.ToLower(length.Word(strings.TrimSpace(c.text))); word {
		case "cut", "cuts":
			s.cutFrom(c)
		case "binding", "bindings":
			s.hasFabric(c)
			s.binding(c)
		default:
			s.hasFabric(c)
			s.pieceLine(c)
		}
	}
}

// noRoom notes that the margin leaves nothing of the mat.
func (s *second) noRoom() {
	w, h := s.room()
	if s.badMat || min(w, h) > 0 {
		return
	}
	s.badMat = true
	line := max(s.said["margin"], s.said["mat"])
	if said, ok := s.said["margin"]; ok {
		line = said
	}
	s.add(line, 0, len(strings.TrimRight(s.lines[line-1], " \t")), mistake.NoRoomInMargin.Say(), mistake.LessMargin.Say())
}

// cutFrom reads the rest of `cut from FABRIC`.
func (s *second) cutFrom(c *cursor) {
	c.skip()
	from := c.at
	s.fabric = badFabric
	name, ok := c.name(mistake.FabricName)
	if !ok {
		return
	}
	i, known := s.fabrics[name]
	switch {
	case known:
		s.fabric = i
	case !s.absent["fabric "+name]:
		s.absent["fabric "+name] = true
		c.wrong(from, mistake.NoFabric.Say(ticked(name)), s.fabricHint(name))
	}
	c.done(mistake.OneFabric.Say())
}

// fabricHint is what to write instead of an unknown fabric.
func (s *second) fabricHint(name string) say.Sentence {
	if len(s.absent) > shown { // nobody will see it
		return say.Nothing
	}
	var known []string
	for _, f := range s.list.Fabrics {
		if strings.HasPrefix(f.Name, name+" ") {
			return mistake.CommaBehind.Say(f.Line, ticked(f.Name), ticked(name))
		}
		known = append(known, f.Name)
	}
	if hint := didYouMean(name, known); !hint.Silent() {
		return hint
	}
	return mistake.OwnLine.Say(ticked("fabric " + name))
}

// hasFabric notes, once, that piece lines stand above any cut from.
func (s *second) hasFabric(c *cursor) {
	if s.fabric != noFabric {
		return
	}
	s.fabric = badFabric
	example := "FABRIC"
	if len(s.list.Fabrics) > 0 {
		example = visible(s.list.Fabrics[0].Name)
	}
	from := len(c.text) - len(strings.TrimLeft(c.text, " \t"))
	c.add(c.line, from, len(c.text), mistake.FromWhatFabric.Say(), mistake.LineAbove.Say(ticked("cut from "+example)))
}

// piece is a piece line while it is read.
type piece struct {
	Line
	row      row
	spec     shape.Spec
	sizeFrom int // where its SIZE stands in the line
	sizeTo   int
	said     map[string]span // attributes and where they stand
	ok       bool            // no mistake that leaves its outline unknown
}

// pieceLine reads `COUNT SHAPE SIZE [finished] [for LABEL][, ATTRIBUTE]…`.
func (s *second) pieceLine(c *cursor) {
	p := &piece{Line: Line{Number: c.line, Fabric: s.fabric}, said: map[string]span{}}
	p.Count, p.ok = s.count(c)
	if c.isPlural("strip") {
		s.strips(c, p)
		return
	}
	c.skip()
	if from := c.at; c.isPlural("binding") {
		c.at = len(c.text)
		c.wrong(from, mistake.BindingNoCount.Say(), write("binding 2 1/2 around 44 x 52"))
		return
	}
	known := p.shape(c)
	switch {
	case known && p.row.kind == shape.Own:
		s.ownOutline(c, p)
	case known:
		p.size(c)
	default:
		p.anySize(c)
	}
	p.tail(c)
	p.agree(c, known)
	if known && p.ok {
		s.finish(c, p)
	}
}

// count reads COUNT and adds it to the pieces of the list.
func (s *second) count(c *cursor) (int, bool) {
	c.skip()
	from := c.at
	n, ok := c.whole(mistake.Count, MaxPieces)
	before := s.pieces
	s.pieces += n
	if before <= MaxPieces && s.pieces > MaxPieces {
		c.wrong(from, mistake.TooManyPieces.Say(MaxPieces, s.pieces), say.Nothing)
	}
	if rest := c.rest(); rest != "" && strings.ContainsAny(rest[:1], "./") || length.IsVulgar(firstRune(rest)) {
		c.at += strings.IndexFunc(rest+" ", func(r rune) bool { return r == ' ' || r == '\t' || r == ',' || r == '#' })
		c.at = min(c.at, len(c.text))
		c.wrong(from, mistake.WholeCount.Say(), say.Nothing)
		return 0, false
	}
	if strings.HasPrefix(strings.ToLower(c.rest()), "x ") { // 24x squares
		c.at++
	}
	return n, ok
}

func firstRune(s string) rune {
	for _, r := range s {
		return r
	}
	return 0
}

// isPlural reads the word in singular or plural, if it stands next.
func (c *cursor) isPlural(word string) bool { return c.is(word) || c.is(word+"s") }
