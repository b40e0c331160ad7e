package real

import (
	"math/big"

	"example.org/matside/plan/length"
)

// prec is the precision in bits: squares of 100 m in nm² take 74 of them.
const prec = 256

// Real is a number; the zero value is 0.
type Real struct{ f *big.Float }

// Int is a whole number.
func Int(n int64) Real { return Real{fresh().SetInt64(n)} }

// Len is a length in nanometres.
func Len(l length.Len) Real { return Int(int64(l)) }

// Float is a float64 as it stands; x is finite.
func Float(x float64) Real { return Real{fresh().SetFloat64(x)} }

func fresh() *big.Float { return new(big.Float).SetPrec(prec) }

// value is the number behind r, not to be changed.
func (r Real) value() *big.Float {
	if r.f == nil {
		return fresh()
	}
	return r.f
}

// Add is r + s.
func (r Real) Add(s Real) Real { return Real{fresh().Add(r.value(), s.value())} }

// Sub is r − s.
func (r Real) Sub(s Real) Real { return Real{fresh().Sub(r.value(), s.value())} }

// Mul is r·s.
func (r Real) Mul(s Real) Real { return Real{fresh().Mul(r.value(), s.value())} }

// Quo is r/s; s is not 0.
func (r Real) Quo(s Real) Real { return Real{fresh().Quo(r.value(), s.value())} }

// Neg is −r.
func (r Real) Neg() Real { return Real{fresh().Neg(r.value())} }

// Half is r/2, exactly.
func (r Real) Half() Real { return Real{fresh().SetMantExp(r.value(), -1)} }

// Sqrt is the square root of r, or 0 where r is negative (which here means
// that a difference of equals came out a little below 0).
func (r Real) Sqrt() Real {
	if r.Sign() <= 0 {
		return Real{}
	}
	return Real{fresh().Sqrt(r.value())}
}

// Sign is -1, 0 or +1 as r is negative, 0 or positive.
func (r Real) Sign() int { return r.value().Sign() }

// Cmp is -1, 0 or +1 as r is smaller than, equal to or larger than s.
func (r Real) Cmp(s Real) int { return r.value().Cmp(s.value()) }

// Less says whether r is smaller than s.
func (r Real) Less(s Real) bool { return r.Cmp(s) < 0 }

// Min is the smaller of r and s.
func (r Real) Min(s Real) Real {
	if s.Less(r) {
		return s
	}
	return r
}

// Max is the larger of r and s.
func (r Real) Max(s Real) Real {
	if r.Less(s) {
		return s
	}
	return r
}

// Hypot is √(r² + s²).
func (r Real) Hypot(s Real) Real { return r.Mul(r).Add(s.Mul(s)).Sqrt() }

// hair is what two reckonings of one number may differ by: 2^-64 nm.
var hair = Real{fresh().SetMantExp(big.NewFloat(1), -64)}

// floor is the largest whole number not above r.
func (r Real) floor() int64 {
	n, acc := r.value().Int64() // towards zero
	if acc == big.Above {       // r is negative and not whole
		n--
	}
	return n
}

// Nearest is r rounded to the nearest nanometre; a half, or what lies within a
// hair of it, goes up. r is far inside int64.
func (r Real) Nearest() length.Len {
	return length.Len(r.Add(Int(1).Half()).Add(hair).floor())
}

// Outward is r rounded away from the centre c to a whole nanometre; what lies
// within a hair of one is taken to be it.
func (r Real) Outward(c Real) length.Len {
	if r.Less(c) {
		return length.Len(r.Add(hair).floor())
	}
	return -length.Len(r.Neg().Add(hair).floor())
}
