package canvas

import (
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
	"github.com/rivo/uniseg"
)

// Hidden stands for a character that must not reach the terminal.
const Hidden = "·"

// Clean returns text without anything that could steer a terminal or hide
// from the eye: control characters, format characters (bidirectional
// overrides among them), line separators and invalid bytes become a dot. A
// joiner inside a grapheme is kept.
func Clean(text string) string {
	if !strings.ContainsFunc(text, steers) {
		return text
	}
	var b strings.Builder
	for _, r := range text {
		if steers(r) {
			b.WriteString(Hidden)
		} else {
			b.WriteRune(r)
		}
	}
	return b.String()
}

// steers reports what must not reach a terminal, or is no character at all.
func steers(r rune) bool {
	const joiner, nonJoiner = '\u200d', '\u200c'
	return r == utf8.RuneError || r != joiner && r != nonJoiner && unicode.In(r, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp, unicode.Co, unicode.Cs)
}

// widest is how many columns a character takes at most. What counts as more
// is one with a wide mark behind it, which terminals draw each in its own way.
const widest = 2

// next splits the first character off text: what to draw, its columns, and
// the rest.
func next(text string) (one string, width int, rest string) {
	if c := text[0]; c >= ' ' && c < 0x7f && (len(text) == 1 || text[1] < utf8.RuneSelf) {
		return text[:1], 1, text[1:]
	}
	one, rest, _, _ = uniseg.FirstGraphemeClusterInString(text, -1)
	if one[0] < utf8.RuneSelf && strings.ContainsFunc(one, tone) || ansi.StringWidth(one) > widest {
		_, n := utf8.DecodeRuneInString(one) // no face or letter to go with: by itself
		one, rest = text[:n], text[n:]
	}
	if i := strings.IndexFunc(one, steers); i > 0 {
		one, rest = text[:i], text[i:]
	} else if i == 0 {
		_, n := utf8.DecodeRuneInString(one)
		return Hidden, 1, text[n:]
	}
	if width = ansi.StringWidth(one); joins(one, width) {
		return Hidden, 1, rest
	}
	return one, width, rest
}

// joins reports a character, w columns wide, that would join what is drawn before or behind
// it, or its like, and so change its width.
func joins(one string, w int) bool {
	if r, _ := utf8.DecodeRuneInString(one); tone(r) || unicode.In(r, unicode.Mn, unicode.Me, unicode.Mc) {
		return true
	}
	const other = "─" // ASCII is measured in a way of its own
	return ansi.StringWidth(other+one) != w+1 || ansi.StringWidth(one+other) != w+1 || ansi.StringWidth(one+one) != 2*w
}

// tone reports an emoji modifier (Unicode Technical Standard 51).
func tone(r rune) bool {
	const lightest, darkest = 0x1f3fb, 0x1f3ff
	return r >= lightest && r <= darkest
}

// Width is the number of columns text takes.
func Width(text string) int {
	n := 0
	for text != "" {
		var width int
		_, width, text = next(text)
		n += width
	}
	return n
}

// Fit returns text in at most w columns, the end of a longer one replaced by
// an ellipsis.
func Fit(text string, w int) string {
	if Width(text) <= w {
		return text
	}
	if w < 1 {
		return ""
	}
	var b strings.Builder
	for n := 0; text != ""; {
		one, width, rest := next(text)
		if n+width > w-1 {
			break
		}
		b.WriteString(one)
		n, text = n+width, rest
	}
	return b.String() + "…"
}

// Wrap breaks text into lines of at most w columns, at blanks where it can.
// A line feed starts a new line. A no-break space keeps its words together, and
// so does the blank of a number such as 5 1/4: half of it would be another.
func Wrap(text string, w int) []string {
	var lines []string
	for paragraph := range strings.SplitSeq(text, "\n") {
		lines = append(lines, wrap(paragraph, max(w, 1))...)
	}
	return lines
}

func wrap(text string, w int) []string {
	var lines []string
	line, used := "", 0
	for _, word := range unbroken(text, w) {
		width := Width(word)
		if used > 0 && used+1+width <= w {
			line, used = line+" "+word, used+1+width
			continue
		}
		if used > 0 {
			lines = append(lines, line)
		}
		for width > w { // a word wider than the line is broken where it must be
			head := cut(word, w)
			if head == "" {
				break
			}
			lines, word = append(lines, head), word[len(head):]
			width = Width(word)
		}
		line, used = word, width
	}
	return append(lines, line)
}

// unbroken is text in words, a number and the fraction behind it being one where
// w columns hold both.
func unbroken(text string, w int) []string {
	var all []string
	for _, word := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' }) {
		if last := len(all) - 1; last >= 0 && whole.MatchString(all[last]) && fraction.MatchString(word) {
			if number := all[last] + " " + word; Width(number) <= w {
				all[last] = number
				continue
			}
		}
		all = append(all, word)
	}
	return all
}

// whole ends with a whole number, fraction begins with a fraction.
var (
	whole    = regexp.MustCompile(`(^|\D)\d+$`)
	fraction = regexp.MustCompile(`^\d+/\d+(\D|$)`)
)

// cut returns as much of the start of word as w columns hold.
func cut(word string, w int) string {
	rest, n := word, 0
	for rest != "" {
		_, width, after := next(rest)
		if n+width > w {
			break
		}
		n, rest = n+width, after
	}
	return word[:len(word)-len(rest)]
}

// drawn has the text of every character of the box, block and Braille range,
// so that drawing them makes no garbage.
var drawn = func() (t [0x400]string) {
	for i := range t {
		t[i] = string(rune(0x2500 + i))
	}
	return t
}()

const asciiText = " !\"#$%&'()*+,-./0123456789:;<=>?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[\\]^_`abcdefghijklmnopqrstuvwxyz{|}~"

// oneColumn is the text of a character drawn by code.
func oneColumn(r rune) string {
	switch {
	case r >= ' ' && r < 0x7f:
		return asciiText[r-' ' : r-' '+1]
	case r >= 0x2500 && r < 0x2900:
		return drawn[r-0x2500]
	}
	return Clean(string(r))
}
