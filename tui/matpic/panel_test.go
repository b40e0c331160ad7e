package matpic

import (
	"regexp"
	"strings"
	"testing"

	"example.org/matside/plan/length"
	"example.org/matside/tui/canvas"
	"example.org/matside/tui/ruler"
)

// At no size does a rough cut's number run into its height: 1 and 10 1/2
// would be read as one.
func TestANumberKeepsClearOfSizes(t *testing.T) {
	p := Panel{Width: 18 * in, Height: 21 * in, Say: func(l length.Len) string { return l.Show(length.In) },
		Boxes: []PanelBox{{Box: ruler.Box{W: 21 * in / 2, H: 21 * in / 2}, When: Now, Number: 1}}}
	joined := regexp.MustCompile(`\d {1,2}\d+ \d+/\d|\d/\d {0,1}\d`)
	numbered := 0
	for w := 12; w <= 90; w++ {
		for h := 5; h <= 50; h++ {
			cols, rows := p.Size(w, h)
			drawn := text(p.Draw(cols, rows))
			if joined.MatchString(drawn) {
				t.Fatalf("%d x %d:\n%s", cols, rows, drawn)
			}
			if strings.Contains(drawn, " 1 ") {
				numbered++
			}
		}
	}
	if numbered < 1000 {
		t.Errorf("a number at %d sizes only", numbered)
	}
}

func text(c *canvas.Canvas) string {
	var b strings.Builder
	for y := range c.H {
		for x := range c.W {
			b.WriteString(c.At(x, y))
		}
		b.WriteByte('\n')
	}
	return b.String()
}
