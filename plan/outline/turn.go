package outline

import (
	"example.org/matside/plan/internal/real"
	"example.org/matside/plan/length"
)

// Turns are counted in micro-degrees.
const (
	Degree      = 1_000_000
	QuarterTurn = 90 * Degree
	FullTurn    = 360 * Degree
)

// Turn is o turned about 0,0 by a number of micro-degrees counter-clockwise as
// seen on the mat, of any sign. Quarter turns are exact; at any other angle each
// corner is rounded to the nearest nanometre, to the same one on every machine.
//
// (1) Four quarter turns are o. (2) Distances change by less than 2 nm. (3) The
// turn that is a full turn away is the same.
func (o Outline) Turn(microDegrees int) Outline {
	microDegrees = ((microDegrees % FullTurn) + FullTurn) % FullTurn
	turn := quarters(microDegrees / QuarterTurn)
	if microDegrees%QuarterTurn != 0 {
		turn = slanted(microDegrees)
	}
	turned := make(Outline, len(o))
	for i, p := range o {
		turned[i] = turn(p)
	}
	return turned
}

func quarters(n int) func(Point) Point {
	return [...]func(Point) Point{
		func(p Point) Point { return p },
		func(p Point) Point { return Point{p.Y, -p.X} },
		func(p Point) Point { return Point{-p.X, -p.Y} },
		func(p Point) Point { return Point{-p.Y, p.X} },
	}[n]
}

// fine is the power of two that sines are multiplied by: at 100 m what they
// lose comes to less than 2^-24 nm.
const fine = 62

// slanted turns by an angle that is no quarter turn.
func slanted(microDegrees int) func(Point) Point {
	sin, cos := real.SinCos(real.Degrees(real.Int(int64(microDegrees)).Quo(real.Int(Degree))))
	unit := real.Int(1 << fine)
	s, c := sin.Mul(unit).Nearest(), cos.Mul(unit).Nearest()
	return func(p Point) Point {
		return Point{
			scaled(length.Product(p.X, c).Add(length.Product(p.Y, s))),
			scaled(length.Product(p.Y, c).Sub(length.Product(p.X, s))),
		}
	}
}

// scaled is a/2^fine, rounded to the nearest, halves up.
func scaled(a length.Wide) length.Len {
	a = a.Add(length.Wide{Hi: 0, Lo: 1 << (fine - 1)})
	return length.Len(uint64(a.Hi)<<(64-fine) | a.Lo>>fine)
}
