package bound

import (
	"slices"

	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
)

// problem is what the methods work on: the pieces that fit, equal ones
// together, in small whole units. Whatever packs in the bin of lengths packs
// in the problem's bin, so a bound for the problem is a bound for the lengths.
type problem struct {
	w, h   int64 // the bin
	kinds  []kind
	square bool // w == h: the bin turned is the same bin

	turning bool  // every kind turns or is itself square
	x, y    *axis // lengths along the width and the height
	at      []place
}

// kind is a size, count times. A kind that turns has w >= h.
type kind struct {
	w, h  int64
	turn  bool
	count int64
}

// maxGrid caps the bin's sides in units, so that sums of a few thousand
// products of two scaled lengths stay well inside 128 bits.
const maxGrid = 1 << 20

// newProblem drops what does not fit, changes to the coarsest unit that is
// exact (the greatest common divisor along each axis) and merges equal sizes.
func newProblem(w, h length.Len, sizes []rect.Size) *problem {
	p := &problem{w: int64(w), h: int64(h), square: w == h}
	for _, s := range sizes {
		if !fits(w, h, s) {
			continue
		}
		k := kind{int64(s.W), int64(s.H), s.Turn, int64(s.Count)}
		p.kinds = append(p.kinds, k.settle(p.w, p.h))
	}
	p.coarsen()
	p.merge()
	p.locate()
	return p
}

// settle fixes the turn of a piece that fits one way only or is square.
func (k kind) settle(w, h int64) kind {
	upright := k.w <= w && k.h <= h
	turned := k.turn && k.h <= w && k.w <= h
	if !upright {
		k.w, k.h = k.h, k.w
	}
	k.turn = upright && turned && k.w != k.h
	if k.turn && k.w < k.h {
		k.w, k.h = k.h, k.w
	}
	return k
}

// coarsen measures each axis in the greatest common divisor of the piece
// sides that may lie along it, dropping what the bin has beyond a whole number
// of them. Axes that share a turning piece share the unit. A bin still longer
// than maxGrid is rounded: x becomes floor(x*maxGrid/side), which is
// superadditive, so that sides that fit in a row still do.
func (p *problem) coarsen() {
	if len(p.kinds) == 0 {
		return
	}
	var gw, gh int64
	shared := p.square
	for _, k := range p.kinds {
		gw, gh = gcd(gw, k.w), gcd(gh, k.h)
		shared = shared || k.turn
	}
	unitW, unitH := unit{p.w, gw}, unit{p.h, gh}
	if shared {
		unitW = unit{max(p.w, p.h), gcd(gw, gh)}
		unitH = unitW
	}
	for i, k := range p.kinds {
		p.kinds[i].w, p.kinds[i].h = unitW.of(k.w), unitH.of(k.h)
	}
	p.w, p.h = unitW.of(p.w), unitH.of(p.h)
	p.square = p.w == p.h
}

// unit changes lengths along an axis of the given side.
type unit struct{ side, gcd int64 }

func (u unit) of(x int64) int64 {
	if u.side/u.gcd <= maxGrid {
		return x / u.gcd
	}
	return product(x, maxGrid).FloorDiv(length.Area{Lo: uint64(u.side)})
}

// merge puts equal kinds together, larger ones first, and drops what rounding
// left without a side.
func (p *problem) merge() {
	slices.SortFunc(p.kinds, compareKinds)
	out := p.kinds[:0]
	for _, k := range p.kinds {
		if k.w == 0 || k.h == 0 {
			continue
		}
		if n := len(out); n > 0 && compareKinds(out[n-1], k) == 0 {
			out[n-1].count += k.count
		} else {
			out = append(out, k)
		}
	}
	p.kinds = out
}

// locate lists the lengths of the axes and finds each kind's among them.
func (p *problem) locate() {
	p.x, p.y = p.axes()
	p.turning = true
	for _, k := range p.kinds {
		p.turning = p.turning && (k.turn || k.w == k.h)
		p.at = append(p.at, place{p.x.index(k.w), p.y.index(k.h), p.x.index(k.h), p.y.index(k.w)})
	}
}

func compareKinds(a, b kind) int {
	for _, d := range []int64{b.w*b.h - a.w*a.h, b.w - a.w, b.h - a.h} {
		if d != 0 {
			return sign(d)
		}
	}
	switch {
	case a.turn == b.turn:
		return 0
	case a.turn:
		return -1
	}
	return 1
}

func sign(d int64) int {
	if d < 0 {
		return -1
	}
	return 1
}

// product is a times b in 128 bits; neither is negative.
func product(a, b int64) length.Area { return length.Mul(length.Len(a), length.Len(b)) }

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
