package length

import "math/bits"

// Wide is a whole number of 128 bits with a sign, two's complement: products of
// two coordinate differences of up to 200 m take 77 bits and their sums a few
// more. Two are equal where == says so.
type Wide struct {
	Hi int64
	Lo uint64
}

// Product is a·b, either of which may be negative.
func Product(a, b Len) Wide {
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	// The unsigned product is 2^64 too large in b for a negative a, and the
	// other way round.
	return Wide{int64(hi) - int64(a>>63&b) - int64(b>>63&a), lo}
}

// Add is a + b.
func (a Wide) Add(b Wide) Wide {
	lo, carry := bits.Add64(a.Lo, b.Lo, 0)
	return Wide{a.Hi + b.Hi + int64(carry), lo}
}

// Sub is a − b.
func (a Wide) Sub(b Wide) Wide {
	lo, borrow := bits.Sub64(a.Lo, b.Lo, 0)
	return Wide{a.Hi - b.Hi - int64(borrow), lo}
}

// Sign is -1, 0 or +1.
func (a Wide) Sign() int {
	switch {
	case a.Hi < 0:
		return -1
	case a.Hi == 0 && a.Lo == 0:
		return 0
	}
	return 1
}

// Cmp is -1, 0 or +1 as a is smaller than, equal to or larger than b.
func (a Wide) Cmp(b Wide) int {
	switch {
	case a == b:
		return 0
	case a.Hi < b.Hi || a.Hi == b.Hi && a.Lo < b.Lo:
		return -1
	}
	return 1
}

// Abs is |a| as an area.
func (a Wide) Abs() Area {
	if a.Hi < 0 {
		a = Wide{}.Sub(a)
	}
	return Area{uint64(a.Hi), a.Lo}
}
