package nest

import (
	"math"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

const rightAngle = 90_000_000 // micro-degrees

// turned is o turned; see outline.
func turned(o outline.Outline, microDegrees int) outline.Outline {
	t := ((microDegrees % (4 * rightAngle)) + 4*rightAngle) % (4 * rightAngle)
	out := make(outline.Outline, len(o))
	sin, cos := math.Sincos(float64(t) / rightAngle * math.Pi / 2)
	for i, p := range o {
		switch t {
		case 0:
			out[i] = p
		case rightAngle:
			out[i] = outline.Point{X: -p.Y, Y: p.X}
		case 2 * rightAngle:
			out[i] = outline.Point{X: -p.X, Y: -p.Y}
		case 3 * rightAngle:
			out[i] = outline.Point{X: p.Y, Y: -p.X}
		default:
			x, y := float64(p.X), float64(p.Y)
			out[i] = outline.Point{X: length.Len(math.Round(x*cos - y*sin)), Y: length.Len(math.Round(x*sin + y*cos))}
		}
	}
	return out
}
