package cutlist

import (
	"errors"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/matside/plan/cutlist/mistake"
	"example.org/matside/plan/length"
	"example.org/matside/plan/say"
)

// cursor reads one line of the file from left to right. Comments are not cut
// off beforehand, because what # and " mean depends on where they stand: a
// quotation mark behind a number is inches, and a # inside a quoted name is
// part of it.
type cursor struct {
	*notes
	line int
	text string
	at   int // the byte to be read next
	unit length.Unit
}

func (c *cursor) rest() string { return c.text[c.at:] }

// skip goes over white space.
func (c *cursor) skip() {
	c.at = len(c.text) - len(strings.TrimLeftFunc(c.rest(), unicode.IsSpace))
}

// end skips and says whether nothing is left but perhaps a comment.
func (c *cursor) end() bool {
	c.skip()
	return c.at == len(c.text) || c.text[c.at] == '#'
}

// done notes as a mistake what is left on the line.
func (c *cursor) done(hint say.Sentence) {
	if !c.end() {
		from := c.at
		c.at = len(c.text)
		c.wrong(from, mistake.EndHere.Say(), hint)
	}
}

// take reads the byte b, if it stands next behind white space.
func (c *cursor) take(b byte) bool {
	c.skip()
	if c.at < len(c.text) && c.text[c.at] == b {
		c.at++
		return true
	}
	return false
}

// wrong notes that what was read since from is wrong.
func (c *cursor) wrong(from int, what, hint say.Sentence) {
	marked := strings.TrimRightFunc(c.text[from:c.at], unicode.IsSpace)
	c.add(c.line, from, from+len(marked), what, hint)
}

// missing notes that something is missing here.
func (c *cursor) missing(what, hint say.Sentence) {
	at := len(strings.TrimRightFunc(c.text[:c.at], unicode.IsSpace))
	if at < c.at {
		at++ // one space behind what was read last
	}
	c.add(c.line, at, at, what, hint)
}

// lacks notes that a thing is missing here.
func (c *cursor) lacks(what *say.Kind, hint say.Sentence) {
	c.missing(mistake.Missing.Say(what.Say()), hint)
}

// toComma goes to the next comma outside quotation marks, or to the end of
// what the line says.
func (c *cursor) toComma() {
	for quoted := false; c.at < len(c.text); c.at++ {
		switch b := c.text[c.at]; {
		case b == '"' && (quoted || c.opensQuote()):
			quoted = !quoted
		case !quoted && (b == ',' || b == '#'):
			return
		}
	}
}

// opensQuote says whether the quotation mark here can start a name: a space
// stands before it, and behind it the closing mark.
func (c *cursor) opensQuote() bool {
	return c.at > 0 && c.text[c.at-1] == ' ' && strings.Contains(c.text[c.at+1:], `"`)
}

// stop is where the run of text here ends: at the comma, the comment or the end.
func (c *cursor) stop() int {
	if n := strings.IndexAny(c.rest(), ",#"); n >= 0 {
		return c.at + n
	}
	return len(c.text)
}

// word reads a run of letters; "" when none stands next.
func (c *cursor) word() string {
	c.skip()
	w := length.Word(c.rest())
	c.at += len(w)
	return w
}

// is reads the word, in any case, if it stands next.
func (c *cursor) is(word string) bool {
	from := c.at
	if strings.EqualFold(c.word(), word) {
		return true
	}
	c.at = from
	return false
}

// phrase reads the longest of the phrases in table that stands next, in any
// case, singular or plural, with spaces or hyphens between its words. When none
// does, it returns false and reads nothing.
func phrase[T any](c *cursor, table map[string]T) (found T, ok bool) {
	c.skip()
	words, ends := c.words()
	for n := len(words); n > 0; n-- {
		said := strings.ToLower(strings.Join(words[:n], " "))
		for _, form := range []string{said, strings.TrimSuffix(said, "s")} {
			if found, ok = table[form]; ok {
				c.at = ends[n-1]
				return found, true
			}
		}
	}
	return found, false
}

// words are the next few words, joined by spaces or single hyphens, and where
// each of them ends.
func (c *cursor) words() (words []string, ends []int) {
	const most = 4
	for at := c.at; len(words) < most; {
		w := length.Word(c.text[at:])
		if w == "" {
			break
		}
		at += len(w)
		words, ends = append(words, w), append(ends, at)
		if strings.HasPrefix(c.text[at:], "-") {
			at++
		} else {
			at = len(c.text) - len(strings.TrimLeftFunc(c.text[at:], unicode.IsSpace))
		}
	}
	return words, ends
}

// whole reads a whole number written in figures; ok is false, and the mistake
// noted, when it is over most or below 1. what names it.
func (c *cursor) whole(what *say.Kind, most int) (n int, ok bool) {
	c.skip()
	from := c.at
	for c.at < len(c.text) && '0' <= c.text[c.at] && c.text[c.at] <= '9' {
		c.at++
	}
	n, err := strconv.Atoi(c.text[from:c.at])
	switch {
	case c.at == from:
		c.lacks(what, say.Nothing)
	case n < 1 && err == nil:
		c.wrong(from, mistake.AtLeastOne.Say(what.Say()), say.Nothing)
	case err != nil || n > most:
		c.wrong(from, mistake.AtMost.Say(what.Say(), most), say.Nothing)
	default:
		return n, true
	}
	return 0, false
}

// length reads one length. When there is none, or it is at fault, the mistake
// is noted; what is the thing that should stand here, hint what to write instead.
func (c *cursor) length(what *say.Kind, hint say.Sentence) (length.Len, bool) {
	c.skip()
	from := c.at
	l, n, err := length.Scan(c.rest(), c.unit)
	c.at += n
	switch {
	case err == nil:
		c.oddUnit()
		return l, true
	case errors.Is(err, length.ErrNone):
		c.noLength(what, hint)
	default:
		c.wrong(from, mistake.Of(safely(err)), say.Nothing)
	}
	return 0, false
}

// noLength notes that a length should stand here and does not.
func (c *cursor) noLength(what *say.Kind, hint say.Sentence) {
	from := c.at
	if strings.HasPrefix(c.rest(), "-") {
		c.at++
		for _, n, err := length.Scan(c.rest(), c.unit); err == nil && n > 0; n = 0 {
			c.at += n
		}
		c.wrong(from, mistake.BelowZero.Say(), say.Nothing)
		return
	}
	word := c.word()
	if word != "" && !behindLengths[strings.ToLower(word)] {
		c.wrong(from, mistake.NoLength.Say(ticked(word)), hint)
		return
	}
	c.at = from
	c.lacks(what, hint)
}

// oddUnit notes a word behind a length that must be meant for a unit and is
// none: it stands close behind (2ft) or is near one (2 inchs).
func (c *cursor) oddUnit() {
	if rest, dot := strings.CutPrefix(c.rest(), "."); dot && (rest == "" || strings.ContainsAny(rest[:1], " \t,#")) {
		c.at++
		c.wrong(c.at-1, mistake.FullStop.Say(), mistake.LeaveOut.Say())
		return
	}
	back := c.at
	attached := length.Word(c.rest()) != ""
	c.skip()
	from := c.at
	word := strings.ToLower(c.word())
	hint := otherUnits[word]
	if hint.Silent() && len(word) > 2 {
		hint = didYouMean(word, length.UnitWords())
	}
	if word == "" || behindLengths[word] || hint.Silent() && !attached {
		c.at = back
		return
	}
	if hint.Silent() {
		hint = mistake.Units.Say()
	}
	c.wrong(from, mistake.NoUnit.Say(ticked(c.text[from:c.at])), hint)
}

// behindLengths are the words that may well stand behind a length.
var behindLengths = map[string]bool{
	"x": true, "by": true, "of": true, "for": true, "finished": true, "usable": true, "around": true,
}

// otherUnits are units a cut list does not know, and what to write for them.
var otherUnits = map[string]say.Sentence{
	"ft": mistake.FeetAsInches.Say(), "foot": mistake.FeetAsInches.Say(), "feet": mistake.FeetAsInches.Say(),
	"millimeter": write("mm"), "millimeters": write("mm"), "millimetre": write("mm"), "millimetres": write("mm"),
	"centimeter": write("cm"), "centimeters": write("cm"), "centimetre": write("cm"), "centimetres": write("cm"),
	"meter": write("m"), "meters": write("m"), "metre": write("m"), "metres": write("m"),
}

// times reads what stands between the numbers of a size: x, X, × or by. The
// by of `by hand` whose comma was forgotten is none.
func (c *cursor) times() bool {
	c.skip()
	for _, mark := range []string{"x", "X", "×"} {
		if strings.HasPrefix(c.rest(), mark) && length.Word(c.rest()[len(mark):]) == "" {
			c.at += len(mark)
			return true
		}
	}
	if words, _ := c.words(); len(words) > 1 && strings.EqualFold(strings.Join(words[:2], " "), "by hand") {
		return false
	}
	return c.is("by")
}

// size reads L x L, both over zero.
func (c *cursor) size(what *say.Kind, example string) (w, h length.Len, ok bool) {
	sizes, from, ok := c.sizes(what, example)
	if ok && len(sizes) != 2 {
		c.wrong(from, mistake.TwoNumbers.Say(what.Say()), write(example))
		return 0, 0, false
	}
	if !ok {
		return 0, 0, false
	}
	return sizes[0], sizes[1], true
}

// sizes reads one length or several with x between them, each over zero, and
// says where the first starts. ok is false when one of them was at fault.
func (c *cursor) sizes(what *say.Kind, example string) (sizes []length.Len, from int, ok bool) {
	c.skip()
	from, ok = c.at, true
	for {
		c.skip()
		start := c.at
		l, good := c.length(what, write(example))
		if good && l == 0 {
			c.wrong(start, mistake.SizeOverZero.Say(), say.Nothing)
			good = false
		}
		ok = ok && good
		sizes = append(sizes, l)
		if c.at == start || !c.times() {
			return sizes, from, ok
		}
	}
}

// name reads a name: in double quotes, or up to the comma, the comment or the
// end. ok is false, and the mistake noted, when there is none or it holds what
// can't be printed. what says whose name it is.
func (c *cursor) name(what *say.Kind) (name string, ok bool) {
	return c.nameTo(what, c.stop)
}

// nameTo is name with another place for an unquoted name to stop at.
func (c *cursor) nameTo(what *say.Kind, stop func() int) (name string, ok bool) {
	c.skip()
	from := c.at
	if strings.HasPrefix(c.rest(), `"`) {
		name, ok = c.quoted()
	} else {
		c.at = stop()
		name, ok = strings.Join(strings.Fields(c.text[from:c.at]), " "), true
	}
	if ok && strings.TrimSpace(name) == "" {
		c.at = max(from, c.at)
		c.lacks(what, say.Nothing)
		return "", false
	}
	return name, ok && c.printable(from)
}

// quoted reads a name in double quotes.
func (c *cursor) quoted() (string, bool) {
	from := c.at
	c.at++
	n := strings.IndexByte(c.rest(), '"')
	if n < 0 {
		c.at = len(c.text)
		c.wrong(from, mistake.QuoteOpen.Say(), mistake.CloseQuote.Say())
		return "", false
	}
	c.at += n + 1
	return c.text[from+1 : c.at-1], true
}

// printable says whether all read since from can be shown; white space other
// than the space bar's counts outside of quotation marks only, where it has
// become a space already.
func (c *cursor) printable(from int) bool {
	inQuotes := c.text[from] == '"'
	for i, r := range c.text[from:c.at] {
		if unicode.IsPrint(r) || !inQuotes && unicode.IsSpace(r) {
			continue
		}
		at := from + i
		c.add(c.line, at, at+utf8.RuneLen(r), mistake.HiddenCharacter.Say(code(r)), mistake.LeaveOut.Say())
		return false
	}
	return true
}
