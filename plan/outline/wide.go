package outline

import (
	"math/bits"

	"example.org/matside/plan/length"
)

// wide is a whole number of 128 bits, two's complement: products of two
// coordinate differences of up to 200 m take 77 bits and their sums a few more.
type wide struct {
	hi int64
	lo uint64
}

// mul is a·b.
func mul(a, b length.Len) wide {
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	// The unsigned product is 2^64 too large in b for a negative a, and the
	// other way round.
	return wide{int64(hi) - int64(a>>63&b) - int64(b>>63&a), lo}
}

func (a wide) add(b wide) wide {
	lo, carry := bits.Add64(a.lo, b.lo, 0)
	return wide{a.hi + b.hi + int64(carry), lo}
}

func (a wide) sub(b wide) wide {
	lo, borrow := bits.Sub64(a.lo, b.lo, 0)
	return wide{a.hi - b.hi - int64(borrow), lo}
}

// sign is -1, 0 or +1.
func (a wide) sign() int {
	switch {
	case a.hi < 0:
		return -1
	case a.hi == 0 && a.lo == 0:
		return 0
	}
	return 1
}

// abs is |a| as an area.
func (a wide) abs() length.Area {
	if a.hi < 0 {
		a = wide{}.sub(a)
	}
	return length.Area{Hi: uint64(a.hi), Lo: a.lo}
}

// squareAtLeast says whether a² ≥ b·c: the 256-bit products that exact distances
// come to.
func squareAtLeast(a, b, c length.Area) bool {
	l, r := mul256(a, a), mul256(b, c)
	for i := 3; i >= 0; i-- {
		if l[i] != r[i] {
			return l[i] > r[i]
		}
	}
	return true
}

// mul256 is a·b, the lowest 64 bits first.
func mul256(a, b length.Area) (p [4]uint64) {
	x, y := [2]uint64{a.Lo, a.Hi}, [2]uint64{b.Lo, b.Hi}
	for i, u := range x {
		var carry uint64
		for j, v := range y {
			hi, lo := bits.Mul64(u, v)
			var c uint64
			p[i+j], c = bits.Add64(p[i+j], lo, 0)
			hi += c // hi is at most 2^64-2
			p[i+j], c = bits.Add64(p[i+j], carry, 0)
			carry = hi + c
		}
		p[i+2] = carry
	}
	return p
}
