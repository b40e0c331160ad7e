package real

import (
	"math"
	"math/big"
	"testing"

	"example.org/matside/plan/length"
	"pgregory.net/rapid"
)

// π to 60 places, from memory; the arc tangent series must come to it.
const pi60 = "3.141592653589793238462643383279502884197169399375105820974944"

// close says whether a and b differ by less than 2^-bits.
func close(a, b Real, bits int) bool {
	d := a.Sub(b).value()
	return d.Sign() == 0 || d.MantExp(nil) <= -bits
}

func TestPi(t *testing.T) {
	want, _, err := big.ParseFloat(pi60, 10, prec, big.ToNearestEven)
	if err != nil || !close(Pi, Real{want}, 190) {
		t.Errorf("π = %s", Pi.value().Text('f', 60))
	}
}

func anAngle(t *rapid.T) Real {
	return Degrees(Int(rapid.Int64Range(-720_000_000, 720_000_000).Draw(t, "micro-degrees")).Quo(Int(1_000_000)))
}

func TestSinCos(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := anAngle(t), anAngle(t)
		as, ac := SinCos(a)
		bs, bc := SinCos(b)
		x, _ := a.value().Float64()
		s, _ := as.value().Float64()
		c, _ := ac.value().Float64()
		if math.Abs(s-math.Sin(x)) > 1e-14 || math.Abs(c-math.Cos(x)) > 1e-14 {
			t.Errorf("%v: sine %v, cosine %v", x, s, c)
		}
		if !close(as.Mul(as).Add(ac.Mul(ac)), Int(1), 230) {
			t.Error("sin² + cos² is not 1")
		}
		if sum, _ := SinCos(a.Add(b)); !close(sum, as.Mul(bc).Add(ac.Mul(bs)), 230) {
			t.Error("sin(a+b)")
		}
		if ac.Sign() == 0 && as.Sign() == 0 {
			return
		}
		// The angle of a direction is the angle, but for full turns.
		back, _ := SinCos(Angle(ac, as).Sub(a))
		if !close(back, Int(0), 230) {
			t.Errorf("the angle of %v is another", x)
		}
	})
	for d, want := range map[int64]Real{0: Int(0), 30: Int(1).Half(), 45: Int(2).Sqrt().Half(), 60: Int(3).Sqrt().Half(), 90: Int(1)} {
		if sin, _ := SinCos(Degrees(Int(d))); !close(sin, want, 230) {
			t.Errorf("sine of %d degrees", d)
		}
	}
}

func TestRounding(t *testing.T) {
	tiny := Real{fresh().SetMantExp(big.NewFloat(1), -80)} // less than a hair
	cases := []struct {
		r             Real
		nearest       length.Len
		left, outward length.Len // away from a centre to its right, to its left
	}{
		{Int(7), 7, 7, 7},
		{Int(-7), -7, -7, -7},
		{Int(7).Add(tiny), 7, 7, 7},
		{Int(7).Sub(tiny), 7, 7, 7},
		{Float(7.5), 8, 7, 8},
		{Float(7.5).Sub(tiny), 8, 7, 8},
		{Float(-7.5), -7, -8, -7},
		{Float(-7.5).Sub(tiny), -7, -8, -7},
		{Float(7.25), 7, 7, 8},
		{Float(-7.25), -7, -8, -7},
		{Float(7.75), 8, 7, 8},
		{Real{}, 0, 0, 0},
	}
	for _, c := range cases {
		if n, l, o := c.r.Nearest(), c.r.Outward(Int(100)), c.r.Outward(Int(-100)); n != c.nearest || l != c.left || o != c.outward {
			t.Errorf("%v: nearest %d, left %d, right %d", c.r.value(), n, l, o)
		}
	}
}

func TestArithmetic(t *testing.T) {
	var none Real
	a, b := Int(3), Len(4)
	if a.Hypot(b).Cmp(Int(5)) != 0 || a.Sub(b).Neg().Cmp(Int(1)) != 0 || a.Mul(b).Quo(Int(6)).Cmp(Int(2)) != 0 ||
		a.Min(b).Cmp(a) != 0 || a.Max(b).Cmp(b) != 0 || b.Min(a).Cmp(a) != 0 || b.Max(a).Cmp(b) != 0 {
		t.Error("3 and 4")
	}
	if none.Add(a).Cmp(a) != 0 || none.Sqrt().Sign() != 0 || a.Neg().Sqrt().Sign() != 0 || !none.Less(a) {
		t.Error("the zero value is 0")
	}
	if a.Half().Add(a.Half()).Cmp(Int(3)) != 0 || a.Sign() != 1 {
		t.Error("halves")
	}
}

func BenchmarkSinCos(b *testing.B) {
	a := Degrees(Int(77))
	for b.Loop() {
		SinCos(a)
	}
}
