package shape

import "example.org/matside/plan/internal/real"

// family is what the shapes of one kind have in common.
type family struct {
	numbers int // of its SIZE
	// draw is the shape's figure in a SIZE, where it says left or right the way
	// it is drawn; corners from the top left one clockwise, the top at y = 0.
	draw func(s Spec, size []real.Real) figure
	// measure is the SIZE of a grown figure, nil where it is no longer a shape
	// of this kind.
	measure func(s Spec, f figure) []real.Real
	// legsOnGrain says that trimmed tips are cut square to the side on the grain.
	legsOnGrain bool
}

var families = map[Kind]family{
	Square:        {1, drawSquare, width, false},
	Rectangle:     {2, drawRectangle, widthHeight, false},
	HalfSquare:    {1, drawHalfSquare, width, true},
	QuarterSquare: {1, drawQuarterSquare, width, true},
	HalfRectangle: {2, drawHalfRectangle, widthHeight, true},
	Equilateral:   {1, drawEquilateral, sideOrHeight, false},
	Hexagon:       {1, drawHexagon, sideOrHeight, false},
	HalfHexagon:   {1, drawHalfHexagon, nil, false},
	Octagon:       {1, drawOctagon, sideOrHeight, false},
	Diamond:       {1, drawDiamond, sideOrHeight, false},
	Parallelogram: {2, drawParallelogram, baseHeight, false},
	Trapezoid:     {3, drawTrapezoid, longShortHeight, false},
	Circle:        {1, drawCircle, width, false},
	QuarterCircle: {1, drawQuarterCircle, nil, false},
	Own:           {0, nil, nil, false},
}

var zero, one, two = real.Int(0), real.Int(1), real.Int(2)

func drawSquare(_ Spec, n []real.Real) figure    { return rectangle(n[0], n[0]) }
func drawRectangle(_ Spec, n []real.Real) figure { return rectangle(n[0], n[1]) }

func rectangle(w, h real.Real) figure {
	return straight(zero, zero, w, zero, w, h, zero, h)
}

func drawHalfSquare(_ Spec, n []real.Real) figure    { return cornered(n[0], n[0]) }
func drawHalfRectangle(_ Spec, n []real.Real) figure { return cornered(n[0], n[1]) }

// cornered is a triangle with its square corner bottom left.
func cornered(w, h real.Real) figure {
	return straight(zero, zero, w, h, zero, h)
}

func drawQuarterSquare(_ Spec, n []real.Real) figure {
	return standing(n[0], zero, n[0].Half())
}

// standing is a symmetrical figure on its long side: a triangle where the short
// side on top is 0.
func standing(long, short, h real.Real) figure {
	left, right := long.Sub(short).Half(), long.Add(short).Half()
	if short.Sign() == 0 {
		return straight(left, zero, long, h, zero, h)
	}
	return straight(left, zero, right, zero, long, h, zero, h)
}

func drawTrapezoid(_ Spec, n []real.Real) figure { return standing(n[0], n[1], n[2]) }

func drawEquilateral(s Spec, n []real.Real) figure {
	a := s.side(n[0])
	return standing(a, zero, a.Mul(s.rise()))
}

func drawHalfHexagon(s Spec, n []real.Real) figure {
	a := s.side(n[0])
	return standing(a.Mul(two), a, a.Mul(s.rise()))
}

func drawHexagon(s Spec, n []real.Real) figure {
	a := s.side(n[0])
	h := a.Mul(s.rise())
	return straight(a.Half(), zero, a.Add(a.Half()), zero, a.Mul(two), h.Half(),
		a.Add(a.Half()), h, a.Half(), h, zero, h.Half())
}

func drawOctagon(s Spec, n []real.Real) figure {
	a := s.side(n[0])
	h := a.Mul(s.rise())
	near := h.Sub(a).Half() // from a corner of the square round it
	far := near.Add(a)
	return straight(near, zero, far, zero, h, near, h, far, far, h, near, h, zero, far, zero, near)
}

func drawDiamond(s Spec, n []real.Real) figure {
	a := s.side(n[0])
	return leaning(s, a, a.Mul(s.rise()))
}

func drawParallelogram(s Spec, n []real.Real) figure { return leaning(s, n[0], n[1]) }

// leaning is a figure that leans right at the Spec's angle.
func leaning(s Spec, base, h real.Real) figure {
	lean := h // at 45 degrees
	if s.Degrees == 60 {
		lean = h.Quo(real.Int(3).Sqrt())
	}
	return straight(lean, zero, lean.Add(base), zero, base, h, zero, h)
}

func drawCircle(_ Spec, n []real.Real) figure {
	r := n[0].Half()
	c := &place{r, r}
	return figure{
		{place{r, zero}, c}, {place{n[0], r}, c}, {place{r, n[0]}, c}, {place{zero, r}, c},
	}
}

// drawQuarterCircle has its corner bottom left.
func drawQuarterCircle(_ Spec, n []real.Real) figure {
	corner := place{zero, n[0]}
	return figure{{place{zero, zero}, &corner}, {place{n[0], n[0]}, nil}, {corner, nil}}
}

// rise is the height of a shape whose sides are 1.
func (s Spec) rise() real.Real {
	root2, root3 := two.Sqrt(), real.Int(3).Sqrt()
	switch {
	case s.Kind == Hexagon:
		return root3
	case s.Kind == Octagon:
		return one.Add(root2)
	case s.Kind == Diamond && s.Degrees == 45:
		return root2.Half()
	}
	return root3.Half()
}

// byHeight says whether the number of the SIZE is the height, else a side.
func (s Spec) byHeight() bool {
	if s.Measure == Usual {
		return s.Kind == Equilateral || s.Kind == Octagon
	}
	return s.Measure == Height
}

// side is the side of a shape whose SIZE is n.
func (s Spec) side(n real.Real) real.Real {
	if s.byHeight() {
		return n.Quo(s.rise())
	}
	return n
}

func width(_ Spec, f figure) []real.Real {
	w, _ := f.size()
	return []real.Real{w}
}

func widthHeight(_ Spec, f figure) []real.Real {
	w, h := f.size()
	return []real.Real{w, h}
}

func sideOrHeight(s Spec, f figure) []real.Real {
	_, h := f.size()
	if s.byHeight() {
		return []real.Real{h}
	}
	return []real.Real{h.Quo(s.rise())}
}

func baseHeight(_ Spec, f figure) []real.Real {
	_, h := f.size()
	return []real.Real{f.corner(0).distance(f.corner(1)), h}
}

// longShortHeight measures a trapezoid, whose corners run from the top left.
func longShortHeight(_ Spec, f figure) []real.Real {
	_, h := f.size()
	return []real.Real{f.corner(2).distance(f.corner(3)), f.corner(0).distance(f.corner(1)), h}
}
