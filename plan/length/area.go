package length

import (
	"math"
	"math/bits"
)

// Area is an area in square nanometres, 128 bits: a square of 3.04 m already
// overflows int64. The zero value is no area.
//
// An area is never negative. Sums are safe: a hundred thousand squares of
// MaxLen are 2^90 nm². Overflow, taking more than there is, and dividing by no
// area are our own mistakes and panic.
type Area struct{ Hi, Lo uint64 }

// Mul is the area of an a by b rectangle; neither may be negative.
func Mul(a, b Len) Area {
	if a < 0 || b < 0 {
		panic("length: area of a negative length")
	}
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	return Area{hi, lo}
}

// Add is a and b together.
func (a Area) Add(b Area) Area {
	lo, carry := bits.Add64(a.Lo, b.Lo, 0)
	hi, carry := bits.Add64(a.Hi, b.Hi, carry)
	if carry != 0 {
		panic("length: area overflow")
	}
	return Area{hi, lo}
}

// Sub is a less b; b is no larger than a.
func (a Area) Sub(b Area) Area {
	lo, borrow := bits.Sub64(a.Lo, b.Lo, 0)
	hi, borrow := bits.Sub64(a.Hi, b.Hi, borrow)
	if borrow != 0 {
		panic("length: area below zero")
	}
	return Area{hi, lo}
}

// Times is n of a; n is not negative.
func (a Area) Times(n int) Area {
	if n < 0 {
		panic("length: area times a negative number")
	}
	carry, lo := bits.Mul64(a.Lo, uint64(n))
	over, hi := bits.Mul64(a.Hi, uint64(n))
	hi, c := bits.Add64(hi, carry, 0)
	if over != 0 || c != 0 {
		panic("length: area overflow")
	}
	return Area{hi, lo}
}

// Half is half of a, rounded down to a whole square nanometre: shoelace sums
// are twice an area.
func (a Area) Half() Area { return Area{a.Hi >> 1, a.Hi<<63 | a.Lo>>1} }

// Cmp is -1, 0 or +1 as a is smaller than, equal to or larger than b.
func (a Area) Cmp(b Area) int {
	switch {
	case a == b:
		return 0
	case a.Hi < b.Hi || a.Hi == b.Hi && a.Lo < b.Lo:
		return -1
	}
	return 1
}

// Less says whether a is smaller than b.
func (a Area) Less(b Area) bool { return a.Cmp(b) < 0 }

// IsZero says whether a is no area at all.
func (a Area) IsZero() bool { return a == Area{} }

// CeilDiv is the smallest n for which n of b are at least a: how many b it
// takes to hold a. A quotient beyond MaxInt64 is MaxInt64.
//
// (1) b.Times(n) ≥ a. (2) n == 0 or b.Times(n-1) < a.
func (a Area) CeilDiv(b Area) int64 {
	q, r := a.divMod(b)
	if q < math.MaxInt64 && !r.IsZero() {
		q++
	}
	return int64(min(q, math.MaxInt64))
}

// FloorDiv is how many whole b are in a, at most MaxInt64.
func (a Area) FloorDiv(b Area) int64 {
	q, _ := a.divMod(b)
	return int64(min(q, math.MaxInt64))
}

// divMod is a/b and what is left; a quotient beyond 64 bits is MaxUint64.
func (a Area) divMod(b Area) (q uint64, r Area) {
	if b.IsZero() {
		panic("length: divided by no area")
	}
	if b.Hi == 0 {
		if a.Hi >= b.Lo {
			return math.MaxUint64, Area{}
		}
		q, lo := bits.Div64(a.Hi, a.Lo, b.Lo)
		return q, Area{0, lo}
	}
	// Hacker's Delight 9-5: divide half of a by the leading 64 bits of b; the
	// guess is right or one too large, so take one off and look again.
	n := uint(bits.LeadingZeros64(b.Hi))
	lead := b.Hi<<n | b.Lo>>(64-n)
	half := a.Half()
	q, _ = bits.Div64(half.Hi, half.Lo, lead)
	q >>= 63 - n
	if q > 0 {
		q--
	}
	r = a.Sub(b.timesU(q))
	if r.Cmp(b) >= 0 {
		q, r = q+1, r.Sub(b)
	}
	return q, r
}

// timesU is q of b where that is known to fit.
func (a Area) timesU(q uint64) Area {
	carry, lo := bits.Mul64(a.Lo, q)
	return Area{a.Hi*q + carry, lo}
}

// Root is the side of a square as large as a, rounded down: found bit by bit,
// so that it rounds alike on every machine. a is less than 2^126 nm².
func (a Area) Root() Len {
	var root Len
	for bit := Len(1) << 62; bit > 0; bit >>= 1 {
		if try := root | bit; Mul(try, try).Cmp(a) <= 0 {
			root = try
		}
	}
	return root
}

// PerMille is how many thousandths a is of whole, rounded down: for showing
// how full a mat is.
func (a Area) PerMille(whole Area) int { return int(a.Times(1000).FloorDiv(whole)) }

// Float is a in square nanometres, about: for showing and for heuristics, never
// for deciding.
func (a Area) Float() float64 { return float64(a.Hi)*(1<<64) + float64(a.Lo) }
