package svgpath

import (
	"strings"

	"example.org/matside/plan/internal/real"
	"example.org/matside/plan/length"
)

// scale takes the units of a drawing to nanometres: SVG 2, chapter 8. Where the
// drawing ends up on the page doesn't matter.
func scale(svg map[string]string) (matrix, error) {
	w, wok := physical(svg["width"])
	h, hok := physical(svg["height"])
	if !wok && !hok {
		return matrix{}, ErrNoSize
	}
	box, ok := viewBox(svg["viewBox"])
	if !ok { // user units are CSS pixels, 96 to the inch
		px := real.Len(length.Inch).Quo(real.Int(96))
		return stretch(px, px), nil
	}
	x, y := w.Quo(box[2]), h.Quo(box[3])
	switch {
	case !wok:
		x = y
	case !hok:
		y = x
	case strings.HasPrefix(svg["preserveAspectRatio"], "none"):
	case strings.Contains(svg["preserveAspectRatio"], "slice"):
		x = x.Max(y)
		y = x
	default:
		x = x.Min(y)
		y = x
	}
	return stretch(x, y), nil
}

// viewBox is the four numbers of a view box, its width and height above 0.
func viewBox(text string) (box [4]real.Real, ok bool) {
	s := scanner{text: text}
	for i := range box {
		box[i] = s.number()
	}
	return box, !s.bad && s.done() && box[2].Sign() > 0 && box[3].Sign() > 0
}

// physical is a length with a unit of the world, in nanometres. Pixels are none:
// programs disagree about how large one is.
func physical(text string) (real.Real, bool) {
	units := []struct {
		name string
		unit real.Real
	}{
		{"in", real.Len(length.Inch)},
		{"mm", real.Len(length.Millimetre)},
		{"cm", real.Len(length.Centimetre)},
		{"pt", real.Len(length.Inch).Quo(real.Int(72))},
		{"pc", real.Len(length.Inch).Quo(real.Int(6))},
	}
	for _, u := range units {
		if digits, found := strings.CutSuffix(strings.ToLower(text), u.name); found {
			s := scanner{text: strings.TrimSpace(digits)}
			n := s.number()
			return n.Mul(u.unit), !s.bad && s.done() && n.Sign() > 0
		}
	}
	return real.Real{}, false
}
