package glyph

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

func TestEveryPictureIsARectangle(t *testing.T) {
	for name, f := range map[string]face{"tall": tall, "small": small} {
		for r, p := range f.dots {
			if len(p) != f.height {
				t.Errorf("%s %q: %d rows, want %d", name, r, len(p), f.height)
			}
			for _, row := range p {
				if len(row) != len(p[0]) || strings.Trim(row, ".#") != "" {
					t.Errorf("%s %q: bad row %q", name, r, row)
				}
			}
		}
	}
}

func TestNoTwoPicturesAreAlike(t *testing.T) {
	for name, f := range map[string]face{"tall": tall, "small": small} {
		seen := map[string]rune{}
		for r, p := range f.dots {
			key := strings.Join(p, "|")
			if was, ok := seen[key]; ok && r+was != '0'+'O' && r+was != '/'+'∕' {
				t.Errorf("%s: %q and %q look alike", name, was, r)
			}
			seen[key] = r
		}
	}
}

func TestBothFacesHaveTheSameCharacters(t *testing.T) {
	for r := range tall.dots {
		if small.dots[r] == nil {
			t.Errorf("small has no %q", r)
		}
	}
	if len(tall.dots) != len(small.dots) {
		t.Errorf("tall has %d pictures, small %d", len(tall.dots), len(small.dots))
	}
}

func TestFitTakesTheLargestThatFits(t *testing.T) {
	lastHeight := 0
	for w := 1; w <= 400; w++ {
		lines, ok := Fit(w, w/3, "11 1/2 x 8 7/8")
		if !ok {
			continue
		}
		if lines.W > w || lines.H > w/3 || lines.H != len(lines.Rows) {
			t.Fatalf("%d columns: %d x %d", w, lines.W, lines.H)
		}
		if lines.H < lastHeight {
			t.Fatalf("%d columns: height fell from %d to %d", w, lastHeight, lines.H)
		}
		lastHeight = lines.H
	}
	if lastHeight < 20 {
		t.Errorf("400 columns gave only %d rows", lastHeight)
	}
}

// Of texts that say the same the one on more lines wins where it is larger,
// the first where they are alike.
func TestLargest(t *testing.T) {
	one, two := []string{"11 1/2 x 8 7/8"}, []string{"11 1/2", "x 8 7/8"}
	for _, c := range []struct {
		w, h int
		want []string
	}{
		{55, 8, one},  // one line fits, two would be no larger
		{30, 30, two}, // too narrow for one
		{60, 30, two}, // both fit, two lines twice as large
	} {
		got, ok := Largest(c.w, c.h, one, two)
		want, _ := Fit(c.w, c.h, c.want...)
		if !ok || !slices.Equal(got.Rows, want.Rows) {
			t.Errorf("%d x %d:\n%s\nwant\n%s", c.w, c.h, strings.Join(got.Rows, "\n"), strings.Join(want.Rows, "\n"))
		}
	}
}

func TestWhatHasNoPictureIsRefused(t *testing.T) {
	for _, text := range []string{"", "łąka", "a\x1b[2J"} {
		if _, ok := Fit(1000, 1000, text); ok {
			t.Errorf("%q was drawn", text)
		}
	}
}

func ExampleFit() {
	lines, _ := Fit(40, 4, "2 1/2")
	for _, row := range lines.Rows {
		fmt.Println(strings.TrimRight("|"+row, " "))
	}
	// Output:
	// |▄▀▀▄    ▄█    █
	// |  ▄▀     █   ▄▀ ▀▀█
	// |▄▀      ▀▀▀ █   █▀▀
	// |▀▀▀▀        ▀   ▀▀▀
}
