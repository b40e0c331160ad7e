package paper

import (
	"fmt"
	"strings"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/report"
)

func (s *sheets) show(l length.Len) string { return l.Show(s.list.Unit) }

func (s *sheets) size(w, h length.Len) string { return s.show(w) + " x " + s.show(h) }

// sold is a length of fabric as a shop cuts it.
func (s *sheets) sold(l length.Len) string {
	if s.list.Unit == length.In {
		return l.Yards()
	}
	return l.FormatUnit(s.list.Unit)
}

func (s *sheets) unit() string {
	switch s.list.Unit {
	case length.Cm:
		return "centimeters"
	case length.Mm:
		return "millimeters"
	}
	return "inches"
}

// stack is how a line's pieces are called: "A: 24 squares 2 1/2, Ink", and what
// they are for, where the letter doesn't say so.
func (s *sheets) stack(line int) string {
	return fmt.Sprintf("%c: %s", s.letters[line], s.stackWords(line))
}

func (s *sheets) stackWords(line int) string {
	l := s.list.Lines[line]
	words := l.Say() + ", " + s.list.Fabrics[l.Fabric].Name
	if l.Label != "" && l.Label != string(s.letters[line]) {
		words += ", for " + l.Label
	}
	if l.Kind != cutlist.OnMat {
		words += ", cut by hand"
	}
	return words
}

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// and lists numbers as one says them: 1, 3 to 5 and 9.
func and(numbers []int) string {
	s := report.Numbers(numbers)
	if i := strings.LastIndex(s, ", "); i >= 0 {
		return s[:i] + " and " + s[i+2:]
	}
	return s
}
