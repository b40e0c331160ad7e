package rect

// way is a cut that divides a region in two: a kind of cut and where it bends.
// The zero way is none.
type way struct {
	cut     cut
	a, b, c int16 // edges
}

// cut names the cuts by the directions taken. The first two go around an L's
// inner corner, the four from downLeftDown on start at it; corner divides any
// region, and in two rectangles where it runs straight; steps and stairs divide
// rectangles only.
type cut uint8

const (
	noCut cut = iota
	leftUp
	rightDown
	corner
	downLeftDown
	downRightDown
	leftDownLeft
	leftUpLeft
	steps
	stairs
)

// part is one of the two regions a cut leaves: an ell at x, y, mirrored left
// to right if left, top to bottom if up.
type part struct {
	ell
	x, y     int64
	left, up bool
}

// ways lists the cuts of a region until told to stop. Bends lie on edges
// within the region; a cut through an outline, or along it, is a straight one.
func (p *pallet) ways(l ell, yes func(way) bool) {
	type span struct{ lo, hi int16 }
	grid := func(c cut, as, bs span) bool {
		for a := as.lo; a <= as.hi; a++ {
			for b := bs.lo; b <= bs.hi; b++ {
				if !yes(way{c, a, b, 0}) {
					return false
				}
			}
		}
		return true
	}
	if !grid(corner, span{0, l.w}, span{0, l.h}) {
		return
	}
	if l.w != l.W {
		_ = grid(leftUp, span{l.w, l.W}, span{0, l.h}) &&
			grid(rightDown, span{0, l.w}, span{l.h, l.H}) &&
			grid(downLeftDown, span{0, l.w}, span{0, l.h}) &&
			grid(downRightDown, span{l.w, l.W}, span{0, l.h}) &&
			grid(leftDownLeft, span{0, l.w}, span{0, l.h}) &&
			grid(leftUpLeft, span{0, l.w}, span{l.h, l.H})
		return
	}
	for a := range l.W {
		for c := a + 1; c < l.W; c++ {
			for b := int16(1); b < l.H; b++ {
				if !yes(way{steps, a, b, c}) {
					return
				}
			}
		}
	}
	for b := range l.H {
		for c := b + 1; c < l.H; c++ {
			for a := int16(1); a < l.W; a++ {
				if !yes(way{stairs, a, b, c}) {
					return
				}
			}
		}
	}
}

// parts gives the two regions that a cut leaves of l. With the origin at the
// lower left and l's inner corner at w, h:
func (p *pallet) parts(l ell, v way) (one, two part) {
	W, H, w, h, a, b, c := l.W, l.H, l.w, l.h, v.a, v.b, v.c
	x := func(i int16) int64 { return p.at[i] }
	less := func(i, j int16) int16 { return p.less[i][j] }
	switch v.cut {
	case leftUp: // in from the right arm's top at a, down to b, left and out
		return part{ell{a, less(H, b), w, less(h, b)}, 0, x(b), false, false},
			part{ell{W, h, less(W, a), b}, x(W), 0, true, false}
	case rightDown: // its mirror in the diagonal
		return part{ell{less(W, a), b, less(w, a), h}, x(a), 0, false, false},
			part{ell{w, H, a, less(H, b)}, 0, x(H), false, true}
	case corner: // an L of arms a and b along the left and the lower edge
		return part{ell{less(W, a), less(H, b), less(w, a), less(h, b)}, x(a), x(b), false, false},
			part{ell{W, H, a, b}, 0, 0, false, false}
	case downLeftDown: // from the inner corner
		return part{ell{w, H, a, less(H, b)}, 0, x(H), false, true},
			part{ell{less(W, a), h, less(W, w), b}, x(W), 0, true, false}
	case downRightDown:
		return part{ell{a, H, w, b}, 0, 0, false, false},
			part{ell{less(W, w), h, less(W, a), less(h, b)}, x(W), x(h), true, true}
	case leftDownLeft:
		return part{ell{W, h, less(W, a), b}, x(W), 0, true, false},
			part{ell{w, less(H, b), a, less(H, h)}, 0, x(H), false, true}
	case leftUpLeft:
		return part{ell{W, b, a, h}, 0, 0, false, false},
			part{ell{w, less(H, h), less(w, a), less(H, b)}, x(w), x(H), true, true}
	case steps: // down from the top at a to b, right to c, down
		return part{ell{c, H, a, b}, 0, 0, false, false},
			part{ell{less(W, a), H, less(W, c), less(H, b)}, x(W), x(H), true, true}
	default: // stairs: in from the left at b, right to a, up to c, right
		return part{ell{W, c, less(W, a), b}, x(W), 0, true, false},
			part{ell{W, less(H, b), a, less(H, c)}, 0, x(H), false, true}
	}
}
