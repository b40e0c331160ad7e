package svgpath

import (
	"strings"

	"example.org/matside/plan/internal/real"
)

// transform reads a transform attribute: a list of functions, the last of
// which is done first.
func transform(text string) (matrix, error) {
	m := unmoved
	for {
		text = strings.TrimLeft(text, " \t\r\n\f,")
		if text == "" {
			return m, nil
		}
		name, rest, ok := strings.Cut(text, "(")
		inside, after, closed := strings.Cut(rest, ")")
		if !ok || !closed {
			return m, ErrTransform
		}
		s := scanner{text: inside}
		var args []real.Real
		for !s.done() && len(args) <= 6 {
			args = append(args, s.number())
		}
		f, ok := function(strings.TrimSpace(name), args)
		if s.bad || !ok {
			return m, ErrTransform
		}
		m, text = m.after(f), after
	}
}

// function is one transform function, if it has that many arguments.
func function(name string, a []real.Real) (matrix, bool) {
	switch n := len(a); {
	case name == "matrix" && n == 6:
		return matrix{vector{a[0], a[1]}, vector{a[2], a[3]}, vector{a[4], a[5]}}, true
	case name == "translate" && n == 1:
		return shift(a[0], zero), true
	case name == "translate" && n == 2:
		return shift(a[0], a[1]), true
	case name == "scale" && n == 1:
		return stretch(a[0], a[0]), true
	case name == "scale" && n == 2:
		return stretch(a[0], a[1]), true
	case name == "rotate" && n == 1:
		return turn(reduced(a[0])), true
	case name == "rotate" && n == 3:
		return shift(a[1], a[2]).after(turn(reduced(a[0]))).after(shift(a[1].Neg(), a[2].Neg())), true
	case (name == "skewX" || name == "skewY") && n == 1:
		sin, cos := real.SinCos(real.Degrees(reduced(a[0])))
		if cos.Sign() == 0 {
			return unmoved, false
		}
		m := unmoved
		if name == "skewX" {
			m.v.x = sin.Quo(cos)
		} else {
			m.u.y = sin.Quo(cos)
		}
		return m, true
	}
	return unmoved, false
}

// reduced is an angle in degrees less its full turns.
func reduced(degrees real.Real) real.Real {
	full := real.Int(360)
	turns := real.Int(int64(degrees.Quo(full).Nearest()))
	return degrees.Sub(turns.Mul(full))
}
