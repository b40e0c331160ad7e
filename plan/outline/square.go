package outline

import (
	"math/bits"

	"example.org/matside/plan/length"
)

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
