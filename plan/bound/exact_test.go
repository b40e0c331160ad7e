package bound_test

import (
	"math/bits"

	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
)

// piece is one rectangle in whole units.
type piece struct {
	w, h int
	turn bool
}

// cells is a bin cut into unit squares, filled in reading order: the first
// free cell is either the corner of a piece or waste. That finds every packing
// on whole units, and pieces of whole sides that pack at all pack so (push
// everything left and up).
type cells struct {
	w, h   int
	full   []bool
	spare  int // cells that may still be wasted
	pieces []piece
}

// packs tells by exhaustion whether the pieces share a w x h bin.
func packs(w, h int, pieces []piece) bool {
	c := cells{w, h, make([]bool, w*h), w * h, pieces}
	for _, p := range pieces {
		c.spare -= p.w * p.h
	}
	return c.spare >= 0 && c.from(0, len(pieces), 0)
}

func (c *cells) from(at, left int, used uint) bool {
	for at < len(c.full) && c.full[at] {
		at++
	}
	if left == 0 {
		return true
	}
	if at == len(c.full) {
		return false
	}
	for i, p := range c.pieces {
		if used&(1<<i) != 0 {
			continue
		}
		if c.lay(at, p.w, p.h, left, used|1<<i) ||
			p.turn && p.w != p.h && c.lay(at, p.h, p.w, left, used|1<<i) {
			return true
		}
	}
	if c.spare == 0 {
		return false
	}
	c.spare--
	ok := c.from(at+1, left, used)
	c.spare++
	return ok
}

func (c *cells) lay(at, w, h, left int, used uint) bool {
	x, y := at%c.w, at/c.w
	if x+w > c.w || y+h > c.h {
		return false
	}
	for i := x; i < x+w; i++ {
		if c.full[y*c.w+i] {
			return false
		}
	}
	c.mark(x, y, w, h, true)
	ok := c.from(at+w, left-1, used)
	c.mark(x, y, w, h, false)
	return ok
}

func (c *cells) mark(x, y, w, h int, full bool) {
	for j := y; j < y+h; j++ {
		for i := x; i < x+w; i++ {
			c.full[j*c.w+i] = full
		}
	}
}

// fewest is the least number of bins for pieces that each fit one, by trying
// all partitions.
func fewest(w, h int, pieces []piece) int {
	all := 1 << len(pieces)
	one := make([]bool, all)
	bins := make([]int, all)
	for m := 1; m < all; m++ {
		one[m] = packs(w, h, pick(pieces, m))
		bins[m] = len(pieces) + 1
		for s := m; s > 0; s = (s - 1) & m {
			if one[s] {
				bins[m] = min(bins[m], 1+bins[m&^s])
			}
		}
	}
	return bins[all-1]
}

func pick(pieces []piece, mask int) (out []piece) {
	for m := mask; m > 0; m &= m - 1 {
		out = append(out, pieces[bits.TrailingZeros(uint(m))])
	}
	return out
}

// sizesOf writes the pieces as sizes, a unit being u.
func sizesOf(pieces []piece, u length.Len) (out []rect.Size) {
	for _, p := range pieces {
		out = append(out, rect.Size{W: length.Len(p.w) * u, H: length.Len(p.h) * u, Turn: p.turn, Count: 1})
	}
	return out
}
