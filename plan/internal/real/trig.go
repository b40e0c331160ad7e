package real

// Powers summed of a series whose argument is at most a quarter: the arc
// tangent's last term is below 2^-260, the sine's far below that.
const (
	atanPowers = 130
	sinPowers  = 50
)

// Pi is the circle's circumference over its diameter.
var Pi = Atan(Int(1)).Mul(Int(4))

// Atan is the arc tangent of r in radians, for r not negative.
func Atan(r Real) Real {
	// atan r = 2·atan(r / (1 + √(1+r²))), until the series is quick.
	doublings := 0
	for quarter := Int(1).Half().Half(); quarter.Less(r); doublings++ {
		r = r.Quo(Int(1).Add(Int(1).Hypot(r)))
	}
	sum, power, square := r, r, r.Mul(r).Neg()
	for k := int64(1); 2*k+1 < atanPowers; k++ {
		power = power.Mul(square)
		sum = sum.Add(power.Quo(Int(2*k + 1)))
	}
	for range doublings {
		sum = sum.Add(sum)
	}
	return sum
}

// Angle is the angle of the way x, y in radians, from −π/2 up to 3π/2: it grows
// from x towards y, so clockwise to the eye where y runs down. One of x and y is
// not 0.
func Angle(x, y Real) Real {
	switch {
	case x.Sign() > 0 && y.Sign() >= 0:
		return Atan(y.Quo(x))
	case x.Sign() > 0:
		return Atan(y.Neg().Quo(x)).Neg()
	case x.Sign() == 0 && y.Sign() < 0:
		return Pi.Half().Neg()
	}
	return Angle(y, x.Neg()).Add(Pi.Half())
}

// SinCos is the sine and cosine of r radians, r not above a few turns.
func SinCos(r Real) (sin, cos Real) {
	// The series of a 256th of the angle, doubled back eight times by
	// sin 2x = 2·sin x·cos x and cos 2x = cos² x − sin² x.
	const halvings = 8
	for range halvings {
		r = r.Half()
	}
	cos, sin = Int(1), r
	term := r
	for k := int64(2); k < sinPowers; k++ {
		term = term.Mul(r).Quo(Int(k))
		signed := term
		if k%4 >= 2 {
			signed = term.Neg()
		}
		if k%2 == 0 {
			cos = cos.Add(signed)
		} else {
			sin = sin.Add(signed)
		}
	}
	for range halvings {
		sin, cos = sin.Mul(cos).Add(sin.Mul(cos)), cos.Mul(cos).Sub(sin.Mul(sin))
	}
	return sin, cos
}

// Degrees is d degrees in radians.
func Degrees(d Real) Real { return d.Mul(Pi).Quo(Int(180)) }
