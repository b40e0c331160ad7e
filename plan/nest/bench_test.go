package nest

import (
	"testing"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/rect"
)

// A job is a list as quilters have them: outlines of a fabric, on mats of one size.
type job struct {
	name  string
	side  length.Len
	gap   length.Len
	items []Item
	loads int // no more than these
}

// equilateral and diamond have one side level; tumbler is wider below.
func equilateral(a float64) outline.Outline { return poly(0, 0.8660254*a, a/2, 0, a, 0.8660254*a) }
func diamond(a float64) outline.Outline {
	return poly(0, 0, a, 0, 1.5*a, 0.8660254*a, a/2, 0.8660254*a)
}
func tumbler(top, below, h float64) outline.Outline {
	d := (below - top) / 2
	return poly(d, 0, below-d, 0, below, h, 0, h)
}

func pieces(n int, o outline.Outline) Item { return Item{Outline: o, Turns: quarters, Count: n} }

// The three jobs of one shape.
var equalJobs = []job{
	{"half-square triangles", in(11), 0, []Item{pieces(100, halfSquare(3.875))}, 8},
	{"quarter-square triangles", in(11), 0, []Item{pieces(96, quarterSquare(5.25))}, 6},
	{"hexagons", in(11.5), 0, []Item{pieces(200, hexagon(1.2887))}, 9},
}

var mixedJobs = []job{
	{"two half-squares", in(11.5), 0, []Item{pieces(120, halfSquare(3.875)), pieces(180, halfSquare(2.375))}, 12},
	{"two half-squares, gap", in(11.5), inch / 16, []Item{pieces(120, halfSquare(3.875)), pieces(180, halfSquare(2.375))}, 14},
	{"tumblers and triangles", in(11.5), 0, []Item{pieces(60, tumbler(2, 3, 3.5)), pieces(90, equilateral(2.5))}, 7},
	{"diamonds and hexagons", in(11.5), 0, []Item{pieces(150, diamond(2)), pieces(50, hexagon(1.5))}, 8},
	{"six kinds", in(11.5), inch / 16, []Item{
		pieces(50, halfSquare(3.875)), pieces(50, quarterSquare(5.25)), pieces(50, hexagon(1.2887)),
		pieces(50, diamond(2)), pieces(50, tumbler(2, 3, 3.5)), pieces(50, equilateral(2.5)),
	}, 17},
}

func BenchmarkEqual(b *testing.B) { benchmark(b, equalJobs) }
func BenchmarkMixed(b *testing.B) { benchmark(b, mixedJobs) }

func benchmark(b *testing.B, jobs []job) {
	for _, j := range jobs {
		for _, e := range []struct {
			name   string
			effort rect.Effort
		}{{"quick", rect.Quick}, {"usual", rect.Usual}} {
			b.Run(j.name+"/"+e.name, func(b *testing.B) {
				loads := 0
				for b.Loop() {
					loads = j.fill(b, e.effort)
				}
				b.ReportMetric(float64(loads), "loads")
			})
		}
	}
}
