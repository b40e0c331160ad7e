package cutlist

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/width"
)

// The rule of this file: no byte of a cut list reaches a message as it is
// unless it is printable.

// cell is one character as it is shown.
type cell struct {
	at    int // its byte in the line
	show  string
	width int // screen columns
}

// cells are the characters of a line as they are shown; tabs go to the next
// fourth column.
func cells(line string) []cell {
	const tab = 4
	var out []cell
	column := 0
	for i, r := range line {
		_, size := utf8.DecodeRuneInString(line[i:])
		c := cell{i, standIn(r, line[i:i+size]), 0}
		if r == '\t' {
			c.show = strings.Repeat(" ", tab-column%tab)
		}
		for _, s := range c.show {
			c.width += columns(s)
		}
		column += c.width
		out = append(out, c)
	}
	return out
}

// standIn is how one character is shown: itself when it is printable.
func standIn(r rune, raw string) string {
	switch {
	case r == utf8.RuneError && len(raw) == 1:
		return fmt.Sprintf(`\x%02x`, raw[0])
	case unicode.IsPrint(r):
		return raw
	case r < ' ': // the control pictures ␀ to ␟
		return string('␀' + r)
	case r == 0x7f:
		return "␡"
	case unicode.Is(unicode.Zs, r): // spaces of other widths
		return " "
	}
	return fmt.Sprintf("<U+%04X>", r)
}

// columns is how many screen columns a printable character takes, as terminals
// commonly count them: East Asian wide ones (Unicode Standard Annex 11) two,
// marks that sit on the character before none.
func columns(r rune) int {
	if unicode.In(r, unicode.Mn, unicode.Me) {
		return 0
	}
	switch width.LookupRune(r).Kind() {
	case width.EastAsianWide, width.EastAsianFullwidth:
		return 2
	}
	return 1
}

// safe is s with every character shown, where s is not the quilter's own long
// text but a sentence about it.
func safe(s string) string {
	var b strings.Builder
	for _, c := range cells(s[:min(len(s), reach)]) {
		b.WriteString(c.show)
	}
	return b.String()
}

// safely is an error whose text is safe to show.
func safely(err error) error { return safeError{err} }

type safeError struct{ error }

func (e safeError) Error() string { return safe(e.error.Error()) }
func (e safeError) Unwrap() error { return e.error }

// code names a character that can't be shown: U+200B.
func code(r rune) string { return fmt.Sprintf("U+%04X", r) }

// visible is s with every character shown; long text is cut short.
func visible(s string) string {
	const most = 60
	var b strings.Builder
	for i, c := range cells(s[:min(len(s), reach)]) {
		if i == most {
			b.WriteString("…")
			break
		}
		b.WriteString(c.show)
	}
	return b.String()
}

// reach is how many bytes before and behind a place are looked at: more than
// are ever shown, and few enough to keep a mebibyte on one line quick.
const reach = 1024

// ticked is s as it is quoted in a message.
func ticked(s string) string { return "`" + visible(s) + "`" }

// The part of a line that is shown: no wider than window columns, with before
// of them in front of the mark when the line is longer.
const (
	window = 96
	before = 48
)

// excerpt is the line as it is shown, or the part of it around bytes from to
// to, and which of its columns these are.
func excerpt(line string, from, to int) (text string, mark, wide int) {
	skipped := max(0, from-reach)
	for skipped > 0 && !utf8.RuneStart(line[skipped]) {
		skipped--
	}
	all := cells(line[skipped:min(len(line), from+reach)])
	from, to = from-skipped, to-skipped
	marked, start := 0, 0 // the cell under the mark's start, and its column
	for ; marked < len(all) && all[marked].at < from; marked++ {
		start += all[marked].width
	}
	first := 0
	if start > before {
		first = marked
		for n := 0; first > 0 && n+all[first-1].width <= before; first-- {
			n += all[first-1].width
		}
	}
	var b strings.Builder
	if first > 0 || skipped > 0 {
		b.WriteString("…")
		mark = 1
	}
	used := mark
	for i, c := range all[first:] {
		if used += c.width; used > window {
			b.WriteString("…")
			break
		}
		b.WriteString(c.show)
		switch {
		case first+i < marked:
			mark += c.width
		case c.at < to:
			wide += c.width
		}
	}
	return strings.TrimRight(b.String(), " "), mark, max(wide, 1)
}
