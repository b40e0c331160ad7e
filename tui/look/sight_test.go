package look

import (
	"math"
	"testing"
)

// sights are what eyes make of colours, as matrices on linear RGB: Machado,
// Oliveira and Fernandes, "A Physiologically-based Model for Simulation of
// Color Vision Deficiency", IEEE Transactions on Visualization and Computer
// Graphics 15(6), 2009, doi 10.1109/TVCG.2009.113, table of severity 1.0.
var sights = map[string][3][3]float64{
	"usual":  {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
	"protan": {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}},
	"deutan": {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}},
	"tritan": {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}},
}

type colourSeen [3]float64 // linear RGB

// seen is a colour as eyes see it: WCAG 2.2, "relative luminance", says how
// the linear values come from those written.
func seen(hex string, sight [3][3]float64) (out colourSeen) {
	lin := func(v int) float64 {
		if v := float64(v) / 255; v > 0.04045 {
			return math.Pow((v+0.055)/1.055, 2.4)
		}
		return float64(v) / 255 / 12.92
	}
	r, g, b := rgb(hex)
	in := colourSeen{lin(r), lin(g), lin(b)}
	for i, row := range sight {
		for j, m := range row {
			out[i] += m * in[j]
		}
		out[i] = min(max(out[i], 0), 1)
	}
	return out
}

func (c colourSeen) luminance() float64 { return 0.2126*c[0] + 0.7152*c[1] + 0.0722*c[2] }

// lab is CIE 1976 L*a*b* under D65 (CIE 15, section 8.2; sRGB primaries of
// IEC 61966-2-1).
func (c colourSeen) lab() [3]float64 {
	f := func(t float64) float64 {
		if t > 216.0/24389 {
			return math.Cbrt(t)
		}
		return (24389.0/27*t + 16) / 116
	}
	x := f((0.4124*c[0] + 0.3576*c[1] + 0.1805*c[2]) / 0.95047)
	y := f(c.luminance())
	z := f((0.0193*c[0] + 0.1192*c[1] + 0.9505*c[2]) / 1.08883)
	return [3]float64{116*y - 16, 500 * (x - y), 200 * (y - z)}
}

// apart is the CIE 1976 colour difference.
func apart(a, b colourSeen) float64 {
	x, y := a.lab(), b.lab()
	return math.Sqrt((x[0]-y[0])*(x[0]-y[0]) + (x[1]-y[1])*(x[1]-y[1]) + (x[2]-y[2])*(x[2]-y[2]))
}

func TestSightsKeepGrey(t *testing.T) {
	for name, m := range sights {
		for i, row := range m {
			if sum := row[0] + row[1] + row[2]; math.Abs(sum-1) > 2e-6 {
				t.Errorf("%s: row %d sums to %v, so grey would not stay grey", name, i, sum)
			}
		}
	}
	white := seen("#ffffff", sights["usual"]).lab()
	if math.Abs(white[0]-100) > 0.1 || math.Abs(white[1])+math.Abs(white[2]) > 0.1 {
		t.Errorf("white is %v", white)
	}
}

// eyes calls f for every coloured look and kind of eye. What a look is on a
// terminal of 256 colours is the same (TestEveryColourIsOneOfThe256).
func eyes(f func(l *Look, name string, sight [3][3]float64)) {
	for _, l := range All {
		for name, sight := range sights {
			if l.Colour {
				f(l, name, sight)
			}
		}
	}
}

func TestContrastForAllEyes(t *testing.T) {
	eyes(func(l *Look, name string, sight [3][3]float64) {
		for i, ink := range l.ink {
			want := 7.0
			if uint8(i) == Mark {
				want = 3
			}
			for j, paper := range l.paper {
				if uint8(j) >= Cloth0 && uint8(i) != Strong && uint8(i) != Mark {
					continue
				}
				if got := ratio(seen(ink, sight).luminance(), seen(paper, sight).luminance()); got < want {
					t.Errorf("%s, %s eyes: ink %d %s on paper %d %s is %.2f:1, want %v:1", l.Name, name, i, ink, j, paper, got, want)
				}
			}
		}
	})
}

// Fabrics are told apart by letter and pattern first; by colour as well, but
// in high contrast, where all cloths are black. 2.3 is a just noticeable
// difference (Mahy, Van Eycken and Oosterlinck, Color Research and
// Application 19(2), 1994); from two steps away we ask for over six of it.
func TestClothsAreToldApartByAllEyes(t *testing.T) {
	const far = 15
	eyes(func(l *Look, name string, sight [3][3]float64) {
		if l == &High {
			return
		}
		for i := Cloth0; i < papers; i++ {
			for j := Sheet; j < i; j++ {
				want := float64(far)
				if j < Cloth0 {
					want = far / 3 // an edge is drawn between cloth and mat
				}
				if got := apart(seen(l.paper[i], sight), seen(l.paper[j], sight)); got < want {
					t.Errorf("%s, %s eyes: papers %d %s and %d %s are %.1f apart, want %v", l.Name, name, i, l.paper[i], j, l.paper[j], got, want)
				}
			}
		}
	})
}
