package nest

import (
	"math"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

const inch = length.Inch

var quarters = []int{0, 90_000_000, 180_000_000, 270_000_000}

func in(x float64) length.Len { return length.Len(math.Round(x * float64(inch))) }

// poly is an outline from inches.
func poly(xy ...float64) outline.Outline {
	var o outline.Outline
	for i := 0; i < len(xy); i += 2 {
		o = append(o, outline.Point{X: in(xy[i]), Y: in(xy[i+1])})
	}
	return o
}

func halfSquare(a float64) outline.Outline    { return poly(0, 0, a, 0, 0, a) }
func quarterSquare(a float64) outline.Outline { return poly(0, a/2, a/2, 0, a, a/2) }

// hexagon has its flats level.
func hexagon(side float64) outline.Outline {
	h := side * math.Sqrt(3) / 2
	return poly(side/2, 0, 1.5*side, 0, 2*side, h, 1.5*side, 2*h, side/2, 2*h, 0, h)
}

func circle(d float64, corners int) outline.Outline {
	var xy []float64
	for i := range corners {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(corners))
		xy = append(xy, d/2+d/2*c, d/2+d/2*s)
	}
	return poly(xy...)
}
