package paper

import (
	"fmt"
	"strings"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
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
		return "centimetres"
	case length.Mm:
		return "millimetres"
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

// and joins numbers: 1, 2 and 5; three or more in a row are a range.
func and(numbers []int) string {
	var parts []string
	for i := 0; i < len(numbers); {
		k := i
		for k+1 < len(numbers) && numbers[k+1] == numbers[k]+1 {
			k++
		}
		if k-i < 2 {
			k = i
			parts = append(parts, fmt.Sprint(numbers[i]))
		} else {
			parts = append(parts, fmt.Sprintf("%d to %d", numbers[i], numbers[k]))
		}
		i = k + 1
	}
	if len(parts) == 1 {
		return parts[0]
	}
	return strings.Join(parts[:len(parts)-1], ", ") + " and " + parts[len(parts)-1]
}
