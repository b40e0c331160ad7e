package cutlist

import (
	"bytes"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/matside/plan/cutlist/mistake"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/say"
)

// The limits of a cut list.
const (
	MaxBytes      = 1 << 20
	MaxStatements = 10_000
	MaxPieces     = 100_000
	MaxPanels     = 10_000 // single panels of stock, all fabrics together
)

// Read reads a cut list. file names it in messages; open gives the contents of
// a file that an outline statement names, and may be nil when there are none.
//
// The error is Mistakes, every mistake of the file, or nil. It reads in two
// goes, so that it does not matter where in the file a fabric, an outline or a
// setting stands: first what is declared, then the piece lines. Only `units`
// and `cut from` act on the lines below them.
//
// (1) Nothing in text makes it panic or hang; (2) the same text gives the same
// list or the same mistakes; (3) every string of the list and of the mistakes
// is free of control characters.
func Read(file string, text []byte, open func(name string) ([]byte, error)) (*List, error) {
	r := newReader(safe(file), open)
	if len(text) > MaxBytes {
		r.add(1, 0, 0, mistake.TooManyBytes.Say(), say.Nothing)
		return nil, r.err()
	}
	r.lines = split(text)
	if utf16(text) {
		r.add(1, 0, 0, mistake.FileNotUTF8.Say(), mistake.SavePlain.Say())
		return nil, r.err()
	}
	r.statements()
	r.pieceLines()
	r.needed()
	if err := r.err(); err != nil {
		return nil, err
	}
	return r.list, nil
}

// reader is a cut list while it is read.
type reader struct {
	notes
	list         *List
	open         func(string) ([]byte, error)
	unit         length.Unit    // of bare lengths from here on
	said         map[string]int // the settings said so far, and on which line
	fabrics      map[string]int // index into list.Fabrics
	outlines     map[string]own
	outlineNames []string  // in the order of the file
	pending      []*cursor // cut from and piece lines, for the second go, their first word read unless it is a count
	badMat       bool      // the mat's size is unknown: nothing is known to fit or not
	panels       int
}

// own is an outline of hers; points is nil when there is a mistake in it.
type own struct {
	line   int
	points outline.Outline
}

func newReader(file string, open func(string) ([]byte, error)) *reader {
	return &reader{
		notes: notes{file: file, onLine: map[int]int{}},
		list: &List{
			Seam: length.Inch / 4, Margin: length.Inch / 4,
			Mat: Mat{12 * length.Inch, 12 * length.Inch, 11 * length.Inch, 11 * length.Inch},
		},
		open: open, said: map[string]int{}, fabrics: map[string]int{}, outlines: map[string]own{},
	}
}

// split cuts the text into lines, without a byte-order mark and line ends.
func split(text []byte) []string {
	text = bytes.TrimPrefix(text, []byte("\ufeff"))
	lines := strings.Split(string(text), "\n")
	for i, line := range lines {
		lines[i] = strings.TrimRight(line, "\r")
	}
	return lines
}

// utf16 says whether the text starts with the byte-order mark of UTF-16.
func utf16(text []byte) bool {
	return bytes.HasPrefix(text, []byte{0xff, 0xfe}) || bytes.HasPrefix(text, []byte{0xfe, 0xff})
}

// statements is the first go.
func (r *reader) statements() {
	n := 0
	for i, line := range r.lines {
		c := &cursor{notes: &r.notes, line: i + 1, text: line, unit: r.unit}
		if !c.readable() || c.end() {
			continue
		}
		if n++; n > MaxStatements {
			r.add(i+1, 0, 0, mistake.TooManyStatements.Say(MaxStatements), say.Nothing)
			return
		}
		r.statement(c)
	}
}

// readable says whether the line can be read. What is no text in it is noted
// and left out, so that a stray character does not hide the line; where there
// are several, it is no line of a cut list at all.
func (c *cursor) readable() bool {
	const few = 2
	text := []byte(c.text)
	strays := 0
	for i, ch := range c.text {
		_, size := utf8.DecodeRuneInString(c.text[i:])
		var what, hint say.Sentence
		switch {
		case ch == utf8.RuneError && size == 1:
			what, hint = mistake.NotUTF8.Say(), mistake.SaveFilePlain.Say()
		case unicode.IsControl(ch) && ch != '\t':
			what, hint = mistake.ControlCharacter.Say(code(ch)), mistake.LeaveOut.Say()
		default:
			continue
		}
		if strays++; strays > few {
			return false
		}
		c.add(c.line, i, i+size, what, hint)
		copy(text[i:], "  "[:size])
	}
	c.text = string(text)
	return true
}

// statement reads the line's first words and hands over to what reads the rest.
func (r *reader) statement(c *cursor) {
	if b := c.text[c.at]; '0' <= b && b <= '9' {
		r.later(c)
		return
	}
	from := c.at
	word, ok := phrase(c, keywords)
	if !ok {
		r.noKeyword(c)
		return
	}
	if c.take(':') || c.take('=') {
		c.wrong(c.at-1, mistake.SignBehind.Say(ticked(strings.TrimSpace(c.text[from:c.at-1]))), mistake.LeaveOut.Say())
	}
	word.read(r, c)
}

// keyword is how a statement starts that doesn't start with a count.
type keyword struct {
	name string
	says Says
	read func(*reader, *cursor)
}

// keywords are all of them, in the singular, and keywordsInOrder as they are
// suggested.
var (
	keywords        = map[string]keyword{}
	keywordsInOrder []string
)

func init() { // here, because the functions come back to the table
	for _, k := range []keyword{
		{"quilt", SaysQuilt, (*reader).quilt}, {"units", SaysUnits, (*reader).units}, {"seam", SaysSetting, (*reader).seam},
		{"allowance", SaysSetting, (*reader).allowance}, {"gap", SaysSetting, (*reader).gap}, {"margin", SaysSetting, (*reader).margin},
		{"mat", SaysSetting, (*reader).mat}, {"fabric", SaysFabric, (*reader).fabric}, {"outline", SaysOutline, (*reader).outline},
		{"cut from", SaysCutFrom, (*reader).later}, {"binding", SaysBinding, (*reader).later},
	} {
		keywords[strings.TrimSuffix(k.name, "s")] = k
		keywordsInOrder = append(keywordsInOrder, k.name)
	}
}

// later keeps a line for the second go.
func (r *reader) later(c *cursor) { r.pending = append(r.pending, c) }

// noKeyword notes that the line starts with nothing a line starts with.
func (r *reader) noKeyword(c *cursor) {
	from := c.at
	if _, ok := numbers[strings.ToLower(c.word())]; ok {
		c.wrong(from, mistake.CountInFigures.Say(), write(numbers[strings.ToLower(c.text[from:c.at])]))
		return
	}
	c.at = from
	if c.isPlural("strip") {
		c.wrong(from, mistake.HowManyStrips.Say(), mistake.CountFirst.Say("`3 strips 2 1/2`"))
		return
	}
	if row, ok := phrase(c, shapes); ok {
		c.wrong(from, mistake.HowMany.Say(row.said()), mistake.CountFirst.Say(ticked("24 "+row.example)))
		return
	}
	words, ends := c.words()
	for n := min(2, len(words)); n > 0; n-- {
		c.at = ends[n-1]
		if hint := didYouMean(strings.Join(words[:n], " "), keywordsInOrder); !hint.Silent() {
			c.wrong(from, mistake.NoLineStarts.Say(ticked(c.text[from:c.at])), hint)
			return
		}
	}
	if len(words) == 0 {
		_, size := utf8.DecodeRuneInString(c.rest())
		c.at += size
	}
	c.wrong(from, mistake.NoLineStarts.Say(ticked(c.text[from:c.at])), mistake.LineStarts.Say(strings.Join(keywordsInOrder, ", ")))
}

// numbers are counts in words.
var numbers = map[string]string{
	"a": "1", "an": "1", "one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "seven": "7",
	"eight": "8", "nine": "9", "ten": "10", "eleven": "11", "twelve": "12", "sixteen": "16", "twenty": "20",
}

// needed notes what the file should say and does not.
func (r *reader) needed() {
	clean := len(r.found) == 0
	if _, ok := r.said["quilt"]; !ok {
		r.add(1, 0, 0, mistake.NoQuilt.Say(), mistake.QuiltLine.Say())
		r.whole()
	}
	if clean && len(r.list.Lines) == 0 {
		last := len(r.lines)
		for last > 1 && strings.TrimSpace(r.lines[last-1]) == "" {
			last--
		}
		r.add(last, 0, 0, mistake.NothingToCut.Say(), mistake.PieceLines.Say())
		r.whole()
	}
}

// once notes that a setting was said before, unless this is the first time.
func (r *reader) once(c *cursor, setting string) {
	if line, ok := r.said[setting]; ok {
		c.wrong(0, mistake.SaidOnLine.Say(setting, line), mistake.KeepOne.Say())
		return
	}
	r.said[setting] = c.line
}
