package cutlist

import (
	"iter"
	"slices"
	"strings"

	"example.org/matside/plan/cutlist/mistake"
	"example.org/matside/plan/say"
)

// ownOutline reads the NAME of `outline NAME`. An unquoted name ends at the
// comma, or before `finished` or `for`; where a name holds these words, the
// longest one that is declared is meant.
func (s *second) ownOutline(c *cursor, p *piece) {
	c.skip()
	p.sizeFrom = c.at
	name, ok := c.nameTo(mistake.OutlineName, func() int { return s.ownNameEnds(c) })
	p.sizeTo = c.at
	mine, known := s.outlines[name]
	if ok && !known && !s.absent["outline "+name] {
		s.absent["outline "+name] = true
		c.wrong(p.sizeFrom, mistake.NoOutline.Say(ticked(name)), s.outlineHint(name))
	}
	p.Shape, p.spec.Own = name, mine.points
	p.ok = p.ok && ok && known && mine.points != nil
}

// ownNameEnds is where an unquoted name of an outline ends.
func (s *second) ownNameEnds(c *cursor) int {
	ends := keywordsIn(c.text[c.at:c.stop()])
	for _, end := range slices.Backward(ends) {
		if _, ok := s.outlines[strings.Join(strings.Fields(c.text[c.at:c.at+end]), " ")]; ok {
			return c.at + end
		}
	}
	return c.at + ends[0]
}

// keywordsIn are the places in s where the words `finished` and `for` start,
// the first few of them, and its end; a name can't start with one.
func keywordsIn(s string) (places []int) {
	const most = 8
	for at, w := range wordsOf(s) {
		if at > 0 && len(places) < most && (strings.EqualFold(w, "finished") || strings.EqualFold(w, "for")) {
			places = append(places, at)
		}
	}
	return append(places, len(s))
}

// wordsOf are the words of s between white space, and where each starts.
func wordsOf(s string) iter.Seq2[int, string] {
	return func(yield func(int, string) bool) {
		at := 0
		for w := range strings.FieldsSeq(s) {
			at += strings.Index(s[at:], w)
			if !yield(at, w) {
				return
			}
			at += len(w)
		}
	}
}

// outlineHint is what to write instead of an unknown outline.
func (s *second) outlineHint(name string) say.Sentence {
	if len(s.absent) > shown { // nobody will see it
		return say.Nothing
	}
	if hint := didYouMean(name, s.outlineNames); !hint.Silent() {
		return hint
	}
	return mistake.OwnLine.Say(ticked("outline " + name + ": 0,0 3,0 3,2"))
}
