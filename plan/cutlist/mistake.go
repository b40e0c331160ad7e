package cutlist

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.org/matside/plan/cutlist/mistake"
	"example.org/matside/plan/say"
)

// Mistake is one thing that is wrong with a cut list, and where. Every string
// in it is safe to print: what could move a cursor or hide text is shown by a
// stand-in such as ␛ or <U+202E>.
type Mistake struct {
	File   string
	Line   int          // from 1
	Column int          // from 1, in characters
	What   say.Sentence // what is wrong
	Hint   say.Sentence // what to write instead; may be silent
	Text   string       // the line itself, tabs expanded, cut short around the mark when it is long
	Mark   int          // how many screen columns of Text stand before the mark
	Width  int          // how many screen columns the mark is wide, at least 1
	Whole  bool         // it is about the file as a whole, and no fault of its line
}

// String is the mistake as it is told: where and what, the line with a mark
// under the place, and the hint.
func (m Mistake) String() string {
	return m.In(say.Sentence.String)
}

// In is the same in a language, which puts its sentences into words.
func (m Mistake) In(language func(say.Sentence) string) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s:%d:%d: %s\n", m.File, m.Line, m.Column, language(m.What))
	if m.Text != "" {
		fmt.Fprintf(&b, "    %s\n", m.Text)
		fmt.Fprintf(&b, "    %s%s\n", strings.Repeat(" ", m.Mark), strings.Repeat("^", m.Width))
	}
	if !m.Hint.Silent() {
		fmt.Fprintf(&b, "    %s\n", language(m.Hint))
	}
	return b.String()
}

// Mistakes are all the mistakes of one file, in the order of the file. It is
// the error that Read returns for a file that can be read but not followed.
type Mistakes []Mistake

// shown is how many mistakes Error tells; whoever has more has handed in
// something that is no cut list.
const shown = 100

// Error tells the mistakes one after another, the first hundred of them, and
// says how many more there are. It ends without a line break.
func (ms Mistakes) Error() string { return ms.In(say.Sentence.String) }

// In is the same in a language.
func (ms Mistakes) In(language func(say.Sentence) string) string {
	var b strings.Builder
	for _, m := range ms[:min(shown, len(ms))] {
		b.WriteString(m.In(language))
	}
	switch more := len(ms) - shown; {
	case more == 1:
		b.WriteString(language(mistake.OneMore.Say()))
	case more > 0:
		b.WriteString(language(mistake.More.Say(more)))
	}
	return strings.TrimSuffix(b.String(), "\n")
}

// mistakesOnALine is how many mistakes of one line are kept: behind so many
// there is no line left to put right.
const mistakesOnALine = 10

// notes gathers mistakes while a file is read.
type notes struct {
	file   string
	lines  []string
	found  Mistakes
	onLine map[int]int
}

// add notes that text from byte from to byte to of a line is wrong.
func (n *notes) add(line, from, to int, what, hint say.Sentence) {
	if n.full(line) {
		return
	}
	n.onLine[line]++
	text := ""
	if line <= len(n.lines) {
		text = n.lines[line-1]
	}
	m := Mistake{File: n.file, Line: line, What: what, Hint: hint}
	m.Column = len([]rune(text[:from])) + 1
	m.Text, m.Mark, m.Width = excerpt(text, from, to)
	n.found = append(n.found, m)
}

// whole says of the mistake noted last that it is about the whole file.
func (n *notes) whole() {
	if len(n.found) > 0 {
		n.found[len(n.found)-1].Whole = true
	}
}

// full says whether a line has so many mistakes that no more are kept.
func (n *notes) full(line int) bool { return n.onLine[line] >= mistakesOnALine }

// err is nil, or all that was found, in the order of the file.
func (n *notes) err() error {
	if len(n.found) == 0 {
		return nil
	}
	slices.SortStableFunc(n.found, func(a, b Mistake) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	return n.found
}

// count is n things: "1 mistake", "2 mistakes".
func count(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}
