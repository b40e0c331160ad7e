package chart

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.org/matside/tui/canvas"
)

func draw(w, h int, f func(*canvas.Canvas)) string {
	c := canvas.New(w, h, canvas.Style{})
	f(c)
	return strings.Join(c.Lines(), "\n")
}

func TestBars(t *testing.T) {
	bars := []Bar{{"Mar 7", 20, 3, "20 pieces"}, {"Mar 8", 10, 0, "10 pieces"}, {"Mar 12", 0, 0, "none"}, {"Mar 13", 1, 1, "1"}}
	got := draw(37, 5, func(c *canvas.Canvas) {
		if n := Bars(c, bars, Style{}); n != 4 {
			t.Errorf("%d rows", n)
		}
	})
	want := `Mar 7  █████████████████╳╳╳ 20 pieces
Mar 8  ██████████ 10 pieces
Mar 12  none
Mar 13 ╳ 1
`
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	if got := draw(37, 2, func(c *canvas.Canvas) { Bars(c, bars, Style{}) }); !strings.HasPrefix(got, "Mar 12") {
		t.Errorf("the last two are not shown:\n%s", got)
	}
}

func TestCurve(t *testing.T) {
	k := Curve{Chances: []float64{0.05, 0.12, 0.22, 0.35, 0.5, 0.65, 0.78, 0.88, 0.94, 0.97}, Here: 3, Due: 6}
	got := draw(46, 10, func(c *canvas.Canvas) {
		if !k.Draw(c, Style{}) {
			t.Error("nothing is drawn")
		}
	})
	for _, says := range []string{"100%│", " 50%│", "  0%│", "┃", "╎", "10"} {
		if !strings.Contains(got, says) {
			t.Errorf("no %q in\n%s", says, got)
		}
	}
	// Read off: the highest dot of each column never falls.
	rows := strings.Split(got, "\n")[:8]
	last := len(rows)
	for x := 5; x < 45; x++ {
		for y, row := range rows {
			if r := []rune(row); x < len(r) && r[x] > 0x2800 && r[x] < 0x2900 {
				if y > last {
					t.Errorf("the curve falls at column %d\n%s", x, got)
				}
				last = y
				break
			}
		}
	}
	if last > 1 {
		t.Errorf("97 %% ends in row %d\n%s", last, got)
	}
}

func TestAnyChartFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.IntRange(0, 60).Draw(t, "w"), rapid.IntRange(0, 20).Draw(t, "h")
		k := Curve{Chances: rapid.SliceOfN(rapid.Float64Range(0, 1), 0, 40).Draw(t, "chances"), Here: rapid.IntRange(0, 50).Draw(t, "here"), Due: rapid.IntRange(0, 50).Draw(t, "due")}
		_ = draw(w, h, func(c *canvas.Canvas) { k.Draw(c, Style{}) })
		var bars []Bar
		for range rapid.IntRange(0, 10).Draw(t, "bars") {
			n := rapid.IntRange(0, 1000).Draw(t, "n")
			bars = append(bars, Bar{rapid.String().Draw(t, "label"), n, rapid.IntRange(0, n).Draw(t, "part"), rapid.String().Draw(t, "says")})
		}
		_ = draw(w, h, func(c *canvas.Canvas) { Bars(c, bars, Style{}) })
	})
}
