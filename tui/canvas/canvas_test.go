package canvas

import (
	"strings"
	"testing"
	"unicode"

	"github.com/charmbracelet/x/ansi"
	"pgregory.net/rapid"
)

func TestNothingSteersTheTerminal(t *testing.T) {
	for _, nasty := range []string{
		"\x1b]52;c;ZWNobw==\x07", "\x1b]0;title\x07", "\x1b[2J", "\u009b2J", "\a", "\r\n", "a\x7fb",
		"abc\u202ecba", "\u2028", "\xff\xfe", "e\u0301\x1b[31m", "👩\u200d🔧",
	} {
		c := New(40, 1, Style{})
		c.Text(0, 0, nasty, Style{})
		out := c.Render(func(Style) string { return "" })
		for _, r := range out {
			if unicode.IsControl(r) || r == '\u202e' || r == '\u2028' || r == unicode.ReplacementChar {
				t.Errorf("%q let %q through: %q", nasty, r, out)
			}
		}
		if got := ansi.StringWidth(out); got != 40 {
			t.Errorf("%q: line is %d wide", nasty, got)
		}
	}
}

// Any character by itself, behind others and before them keeps to the line,
// whatever the tables of a terminal make of its width.
func TestEveryCharacterKeepsToTheLine(t *testing.T) {
	for r := ' '; r <= unicode.MaxRune; r++ {
		switch r {
		case 0x3400, 0xac00, 0x20000: // ideographs, syllables and what nobody uses are all alike
			r = map[rune]rune{0x3400: 0x9ff0, 0xac00: 0xd790, 0x20000: 0xe0000}[r]
		case 0xe1000:
			return
		}
		for _, text := range []string{"3" + string(r), "é" + string(r) + "x", "漢" + string(r), string(r) + string(r)} {
			c := New(14, 1, Style{})
			c.Text(1, 0, text, Style{})
			out := c.Render(func(Style) string { return "" })
			if got := ansi.StringWidth(out); got != 14 {
				t.Fatalf("%+q: the line is %d wide", text, got)
			}
		}
	}
}

// Whatever is drawn wherever, every line is exactly as wide as the canvas.
func TestEveryLineIsAsWideAsTheCanvas(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.IntRange(0, 12).Draw(t, "w"), rapid.IntRange(0, 4).Draw(t, "h")
		c := New(w, h, Style{})
		for range rapid.IntRange(0, 12).Draw(t, "n") {
			x, y := rapid.IntRange(-4, 14).Draw(t, "x"), rapid.IntRange(-2, 5).Draw(t, "y")
			text := rapid.OneOf(rapid.String(), rapid.SampledFrom([]string{"漢字", "½ yd", "e\u0301", "👩\u200d🔧x", "🇵🇱", "\u0600A\u0903", "3\U00016ff0"})).Draw(t, "text")
			s := Style{Ink: uint8(rapid.IntRange(0, 2).Draw(t, "ink"))}
			switch rapid.IntRange(0, 3).Draw(t, "kind") {
			case 0:
				c.Text(x, y, text, s)
			case 1:
				c.Fill(x, y, w, h, '▒', s)
			case 2:
				c.Over(x, y, 'A', s)
			case 3:
				o := New(5, 2, s)
				o.Text(0, 0, text, s)
				c.Draw(x, y, o)
			}
		}
		lines := strings.Split(c.Render(func(s Style) string {
			return []string{"", "\x1b[0;1m", "\x1b[0;7m"}[s.Ink]
		}), "\n")
		if len(lines) != max(h, 1) {
			t.Fatalf("%d lines, want %d", len(lines), h)
		}
		for i, line := range lines {
			if got := ansi.StringWidth(line); got != w && h > 0 {
				t.Fatalf("line %d is %d wide, want %d: %q", i, got, w, line)
			}
		}
	})
}

func TestWrap(t *testing.T) {
	for _, c := range []struct {
		text string
		w    int
		want string
	}{
		{"Smooth from the middle outward.", 12, "Smooth from|the middle|outward."},
		{"11 1/2 in", 4, "11|1/2|in"},
		{"cut 11 1/2, 3 in", 8, "cut|11 1/2,|3 in"},
		{"4 squares 2 1/2 x 5", 11, "4 squares|2 1/2 x 5"},
		{"1 of 2 1/4", 8, "1 of|2 1/4"},
		{"abcdefgh ij", 3, "abc|def|gh|ij"},
		{"漢字漢字", 5, "漢字|漢字"},
		{"", 5, ""},
		{"a\nb", 5, "a|b"},
		{"11\u00a01/2 in", 7, "11\u00a01/2|in"},
	} {
		if got := strings.Join(Wrap(c.text, c.w), "|"); got != c.want {
			t.Errorf("Wrap(%q, %d) = %q, want %q", c.text, c.w, got, c.want)
		}
	}
}

func TestWrapLosesNothingAndFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(rapid.SampledFrom([]string{"a", "b", " ", "½", "漢", "e\u0301"}), 0, 40).Draw(t, "text"), "")
		w := rapid.IntRange(2, 10).Draw(t, "w")
		lines := Wrap(text, w)
		for _, line := range lines {
			if Width(line) > w {
				t.Fatalf("%q is wider than %d", line, w)
			}
		}
		squeeze := func(s string) string { return strings.ReplaceAll(s, " ", "") }
		if got, want := squeeze(strings.Join(lines, "")), squeeze(text); got != want {
			t.Fatalf("%q became %q", want, got)
		}
	})
}

func TestFit(t *testing.T) {
	for _, c := range []struct {
		text string
		w    int
		want string
	}{{"Harbour", 7, "Harbour"}, {"Harbour", 6, "Harbo…"}, {"漢字漢", 4, "漢…"}, {"ab", 1, "…"}, {"ab", 0, ""}} {
		if got := Fit(c.text, c.w); got != c.want {
			t.Errorf("Fit(%q, %d) = %q, want %q", c.text, c.w, got, c.want)
		}
	}
}
