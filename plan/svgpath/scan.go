package svgpath

import (
	"math"
	"strconv"
	"strings"

	"example.org/matside/plan/internal/real"
)

// scanner reads the numbers of an attribute. Once something can't be read it
// is bad and gives zeros.
type scanner struct {
	text string
	bad  bool
}

// gap skips white space and commas.
func (s *scanner) gap() { s.text = strings.TrimLeft(s.text, " \t\r\n\f,") }

// done says whether nothing is left to read.
func (s *scanner) done() bool {
	s.gap()
	return s.bad || s.text == ""
}

// biggest is the largest number taken, in any unit: 100 m are 10^5 mm.
const biggest = 1e9

// number reads one number; `1-2` and `.5.5` are two each.
func (s *scanner) number() real.Real {
	s.gap()
	n := numberLength(s.text)
	x, err := strconv.ParseFloat(s.text[:n], 64)
	if err != nil || math.Abs(x) > biggest {
		s.bad = true
		return real.Real{}
	}
	s.text = s.text[n:]
	return real.Float(x)
}

// numberLength is how long the number is that t begins with.
func numberLength(t string) int {
	n := 0
	digits := func() {
		for n < len(t) && '0' <= t[n] && t[n] <= '9' {
			n++
		}
	}
	if n < len(t) && (t[n] == '+' || t[n] == '-') {
		n++
	}
	digits()
	if n < len(t) && t[n] == '.' {
		n++
		digits()
	}
	if n < len(t) && (t[n] == 'e' || t[n] == 'E') {
		mantissa := n
		n++
		if n < len(t) && (t[n] == '+' || t[n] == '-') {
			n++
		}
		exponent := n
		if digits(); n == exponent {
			return mantissa // the e begins something else
		}
	}
	return n
}

// flag reads a 0 or a 1, which may be written without a gap behind it.
func (s *scanner) flag() bool {
	s.gap()
	if s.text == "" || s.text[0] != '0' && s.text[0] != '1' {
		s.bad = true
		return false
	}
	set := s.text[0] == '1'
	s.text = s.text[1:]
	return set
}

// letter reads a path command, 0 where there is a number instead.
func (s *scanner) letter() byte {
	if s.done() {
		return 0
	}
	c := s.text[0]
	if c|0x20 < 'a' || c|0x20 > 'z' {
		return 0
	}
	s.text = s.text[1:]
	return c
}
