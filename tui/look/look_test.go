package look

import (
	"math"
	"strings"
	"testing"

	"github.com/muesli/termenv"

	"example.org/matside/tui/canvas"
)

// luminance and ratio are WCAG 2.2's "relative luminance" and "contrast
// ratio" (w3.org/TR/WCAG22, section 6, terms of those names).
func luminance(r, g, b float64) float64 {
	lin := func(v float64) float64 {
		if v <= 0.04045 {
			return v / 12.92
		}
		return math.Pow((v+0.055)/1.055, 2.4)
	}
	return 0.2126*lin(r) + 0.7152*lin(g) + 0.0722*lin(b)
}

func ratio(a, b float64) float64 { return (max(a, b) + 0.05) / (min(a, b) + 0.05) }

// shown is the luminance of a colour as a terminal of that kind shows it.
func shown(p termenv.Profile, hex string) float64 {
	c := termenv.ConvertToRGB(p.Color(hex))
	return luminance(c.R, c.G, c.B)
}

func TestTheFormulaAgainstKnownPairs(t *testing.T) {
	// Black on white is 21:1 and #767676 on white the lightest grey to pass
	// 4.5:1 (WCAG 2.2, understanding success criterion 1.4.3: 4.54).
	for _, c := range []struct {
		hex  string
		want float64
	}{{"#000000", 21}, {"#767676", 4.54}} {
		got := ratio(shown(termenv.TrueColor, c.hex), shown(termenv.TrueColor, "#ffffff"))
		if math.Abs(got-c.want) > 0.01 {
			t.Errorf("%s on white: %.3f, want %.2f", c.hex, got, c.want)
		}
	}
}

func TestContrast(t *testing.T) {
	for _, p := range []termenv.Profile{termenv.TrueColor, termenv.ANSI256} {
		for _, l := range All {
			if !l.Colour {
				continue
			}
			for i, ink := range l.ink {
				want := 7.0
				if uint8(i) == Mark {
					want = 3
				}
				for j, paper := range l.paper {
					if uint8(j) >= Cloth0 && uint8(i) != Strong && uint8(i) != Mark {
						continue
					}
					if got := ratio(shown(p, ink), shown(p, paper)); got < want {
						t.Errorf("%s, %d colours: ink %d %s on paper %d %s is %.2f:1, want %v:1", l.Name, p, i, ink, j, paper, got, want)
					}
				}
			}
		}
	}
}

func TestNoColourKeepsBoldAndReverse(t *testing.T) {
	for _, p := range []termenv.Profile{termenv.Ascii, termenv.ANSI, termenv.TrueColor} {
		paint := Plain.Painter(p)
		if got := paint(canvas.Style{Ink: Warn, Paper: Band, Bold: true}); got != "\x1b[0;1m" {
			t.Errorf("bold: %q", got)
		}
		if got := paint(canvas.Style{Reverse: true}); got != "\x1b[0;7m" {
			t.Errorf("reverse: %q", got)
		}
		if got := paint(canvas.Style{Ink: Warn}); got != "" {
			t.Errorf("plain text is painted: %q", got)
		}
	}
}

func TestChoose(t *testing.T) {
	for _, c := range []struct {
		env  string
		dark bool
		look *Look
		p    termenv.Profile
	}{
		{"TERM=xterm-256color", true, &Dark, termenv.ANSI256},
		{"TERM=xterm-256color", false, &Light, termenv.ANSI256},
		{"TERM=xterm-256color COLORTERM=truecolor", true, &Dark, termenv.TrueColor},
		{"TERM=screen COLORTERM=truecolor", true, &Dark, termenv.ANSI256},
		{"TERM=xterm NO_COLOR=1", true, &Plain, termenv.ANSI},
		{"TERM=linux", true, &Dark, termenv.ANSI},
		{"TERM=dumb", true, &Plain, termenv.Ascii},
		{"TERM=vt100", true, &Plain, termenv.Ascii},
		{"", true, &Plain, termenv.Ascii},
	} {
		env := map[string]string{}
		for _, pair := range strings.Fields(c.env) {
			name, value, _ := strings.Cut(pair, "=")
			env[name] = value
		}
		l, p := Choose(func(name string) string { return env[name] }, c.dark)
		if l != c.look || p != c.p {
			t.Errorf("%q: %s, profile %d; want %s, %d", c.env, l.Name, p, c.look.Name, c.p)
		}
	}
}
