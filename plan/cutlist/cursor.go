package cutlist

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/matside/plan/length"
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
func (c *cursor) done(hint string) {
	if !c.end() {
		from := c.at
		c.at = len(c.text)
		c.wrong(from, "the line should end here", hint)
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
func (c *cursor) wrong(from int, what, hint string) {
	marked := strings.TrimRightFunc(c.text[from:c.at], unicode.IsSpace)
	c.add(c.line, from, from+len(marked), what, hint)
}

// missing notes that something is missing here.
func (c *cursor) missing(what, hint string) {
	at := len(strings.TrimRightFunc(c.text[:c.at], unicode.IsSpace))
	if at < c.at {
		at++ // one space behind what was read last
	}
	c.add(c.line, at, at, what, hint)
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
func (c *cursor) whole(what string, most int) (n int, ok bool) {
	c.skip()
	from := c.at
	for c.at < len(c.text) && '0' <= c.text[c.at] && c.text[c.at] <= '9' {
		c.at++
	}
	n, err := strconv.Atoi(c.text[from:c.at])
	switch {
	case c.at == from:
		c.missing(what+" is missing", "")
	case n < 1 && err == nil:
		c.wrong(from, what+" is at least 1", "")
	case err != nil || n > most:
		c.wrong(from, fmt.Sprintf("%s is at most %d", what, most), "")
	default:
		return n, true
	}
	return 0, false
}

// length reads one length. When there is none, or it is at fault, the mistake
// is noted; missing is what to say, hint what to write instead.
func (c *cursor) length(missing, hint string) (length.Len, bool) {
	c.skip()
	from := c.at
	l, n, err := length.Scan(c.rest(), c.unit)
	c.at += n
	switch {
	case err == nil:
		c.oddUnit()
		return l, true
	case errors.Is(err, length.ErrNone):
		c.noLength(missing, hint)
	default:
		c.wrong(from, plain(err), "")
	}
	return 0, false
}

// noLength notes that a length should stand here and does not.
func (c *cursor) noLength(missing, hint string) {
	from := c.at
	if strings.HasPrefix(c.rest(), "-") {
		c.at++
		for _, n, err := length.Scan(c.rest(), c.unit); err == nil && n > 0; n = 0 {
			c.at += n
		}
		c.wrong(from, "a length is never below zero", "")
		return
	}
	word := c.word()
	if word != "" && !behindLengths[strings.ToLower(word)] {
		c.wrong(from, ticked(word)+" is no length", hint)
		return
	}
	c.at = from
	c.missing(missing, hint)
}

// oddUnit notes a word behind a length that must be meant for a unit and is
// none: it stands close behind (2ft) or is near one (2 inchs).
func (c *cursor) oddUnit() {
	if rest, dot := strings.CutPrefix(c.rest(), "."); dot && (rest == "" || strings.ContainsAny(rest[:1], " \t,#")) {
		c.at++
		c.wrong(c.at-1, "no full stop belongs behind a length", "leave it out")
		return
	}
	back := c.at
	attached := length.Word(c.rest()) != ""
	c.skip()
	from := c.at
	word := strings.ToLower(c.word())
	hint := otherUnits[word]
	if hint == "" && len(word) > 2 {
		hint = didYouMean(word, length.UnitWords())
	}
	if word == "" || behindLengths[word] || hint == "" && !attached {
		c.at = back
		return
	}
	if hint == "" {
		hint = "units are `in`, `yd`, `mm`, `cm` and `m`"
	}
	c.wrong(from, "there is no unit "+ticked(c.text[from:c.at]), hint)
}

// behindLengths are the words that may well stand behind a length.
var behindLengths = map[string]bool{
	"x": true, "by": true, "of": true, "for": true, "finished": true, "usable": true, "around": true,
}

// otherUnits are units a cut list does not know, and what to write for them.
var otherUnits = map[string]string{
	"ft": "write feet as inches: `12 in`", "foot": "write feet as inches: `12 in`", "feet": "write feet as inches: `12 in`",
	"millimeter": "write `mm`", "millimeters": "write `mm`", "millimetre": "write `mm`", "millimetres": "write `mm`",
	"centimeter": "write `cm`", "centimeters": "write `cm`", "centimetre": "write `cm`", "centimetres": "write `cm`",
	"meter": "write `m`", "meters": "write `m`", "metre": "write `m`", "metres": "write `m`",
}

// plain is an error of plan/length as it is told here.
func plain(err error) string {
	switch {
	case errors.Is(err, length.ErrTooLong):
		return "a length is at most 100 m"
	case errors.Is(err, length.ErrDigits):
		return "this number has too many digits"
	}
	return safe(strings.TrimSuffix(err.Error(), ": "+length.ErrFraction.Error()))
}

// times reads what stands between the numbers of a size: x, X, × or by.
func (c *cursor) times() bool {
	c.skip()
	for _, mark := range []string{"x", "X", "×"} {
		if strings.HasPrefix(c.rest(), mark) && length.Word(c.rest()[len(mark):]) == "" {
			c.at += len(mark)
			return true
		}
	}
	return c.is("by")
}

// size reads L x L, both over zero.
func (c *cursor) size(what, example string) (w, h length.Len, ok bool) {
	sizes, from, ok := c.sizes(what, example)
	if ok && len(sizes) != 2 {
		c.wrong(from, what+" has two numbers", write(example))
		return 0, 0, false
	}
	if !ok {
		return 0, 0, false
	}
	return sizes[0], sizes[1], true
}

// sizes reads one length or several with x between them, each over zero, and
// says where the first starts. ok is false when one of them was at fault.
func (c *cursor) sizes(what, example string) (sizes []length.Len, from int, ok bool) {
	c.skip()
	from, ok = c.at, true
	for {
		c.skip()
		start := c.at
		l, good := c.length(what+" is missing", write(example))
		if good && l == 0 {
			c.wrong(start, "a size is more than 0", "")
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
func (c *cursor) name(what string) (name string, ok bool) {
	return c.nameTo(what, c.stop)
}

// nameTo is name with another place for an unquoted name to stop at.
func (c *cursor) nameTo(what string, stop func() int) (name string, ok bool) {
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
		c.missing(what+" is missing", "")
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
		c.wrong(from, "this quotation mark is never closed", "put a `\"` behind the name")
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
		c.add(c.line, at, at+utf8.RuneLen(r), fmt.Sprintf("a name can't hold the character U+%04X, which doesn't show", r), "leave it out")
		return false
	}
	return true
}
