package look

import (
	"math"
	"strings"
	"testing"

	"github.com/muesli/termenv"

	"example.org/matside/tui/canvas"
)

// ratio is WCAG 2.2's "contrast ratio" of two relative luminances
// (w3.org/TR/WCAG22, section 6).
func ratio(a, b float64) float64 { return (max(a, b) + 0.05) / (min(a, b) + 0.05) }

func TestTheFormulaAgainstKnownPairs(t *testing.T) {
	// Black on white is 21:1 and #767676 on white the lightest grey to pass
	// 4.5:1 (WCAG 2.2, understanding success criterion 1.4.3: 4.54).
	for _, c := range []struct {
		hex  string
		want float64
	}{{"#000000", 21}, {"#767676", 4.54}} {
		got := ratio(seen(c.hex, sights["usual"]).luminance(), seen("#ffffff", sights["usual"]).luminance())
		if math.Abs(got-c.want) > 0.01 {
			t.Errorf("%s on white: %.3f, want %.2f", c.hex, got, c.want)
		}
	}
}

func TestEveryColourIsOneOfThe256(t *testing.T) {
	for _, l := range All {
		if !l.Colour {
			continue
		}
		for _, hex := range append(l.ink[:], l.paper[:]...) {
			if index(hex) < 0 {
				t.Errorf("%s: %s is none of them", l.Name, hex)
			}
		}
	}
	for hex, want := range map[string]int{"#000000": 16, "#ffffff": 231, "#5f00af": 55, "#121212": 233, "#eeeeee": 255, "#010203": -1} {
		if got := index(hex); got != want {
			t.Errorf("%s is number %d, want %d", hex, got, want)
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
