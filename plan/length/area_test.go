package length

import (
	"math"
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

func (a Area) big() *big.Int {
	b := new(big.Int).SetUint64(a.Hi)
	return b.Lsh(b, 64).Or(b, new(big.Int).SetUint64(a.Lo))
}

// anyArea draws sizes evenly over the bits, up to 2^100.
func anyArea() *rapid.Generator[Area] {
	return rapid.Custom(func(t *rapid.T) Area {
		bits := rapid.UintRange(0, 100).Draw(t, "bits")
		a := Area{rapid.Uint64().Draw(t, "hi"), rapid.Uint64().Draw(t, "lo")}
		for range 128 - bits {
			a = a.Half()
		}
		return a
	})
}

// TestAreaArithmetic checks every operation against math/big.
func TestAreaArithmetic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := anyArea().Draw(t, "a"), anyArea().Draw(t, "b")
		n := rapid.IntRange(0, 1<<25).Draw(t, "n")
		same := func(what string, got Area, want *big.Int) {
			if got.big().Cmp(want) != 0 {
				t.Fatalf("%s of %v, %v, %d is %v; want %v", what, a.big(), b.big(), n, got.big(), want)
			}
		}
		same("sum", a.Add(b), new(big.Int).Add(a.big(), b.big()))
		same("multiple", a.Times(n), new(big.Int).Mul(a.big(), big.NewInt(int64(n))))
		root := a.Root()
		if Mul(root, root).Cmp(a) > 0 || Mul(root+1, root+1).Cmp(a) <= 0 {
			t.Fatalf("root of %v is %v", a.big(), root)
		}
		same("half", a.Half(), new(big.Int).Rsh(a.big(), 1))
		if a.Cmp(b) != a.big().Cmp(b.big()) || a.Less(b) != (a.big().Cmp(b.big()) < 0) {
			t.Fatalf("%v compared with %v is %d", a.big(), b.big(), a.Cmp(b))
		}
		if !a.Less(b) {
			same("difference", a.Sub(b), new(big.Int).Sub(a.big(), b.big()))
		}
		if b.IsZero() {
			return
		}
		q, r := new(big.Int).QuoRem(a.big(), b.big(), new(big.Int))
		sameCount(t, "floor", a.FloorDiv(b), q)
		if r.Sign() > 0 {
			q.Add(q, big.NewInt(1))
		}
		sameCount(t, "ceil", a.CeilDiv(b), q)
	})
}

func sameCount(t *rapid.T, what string, got int64, want *big.Int) {
	if !want.IsInt64() {
		want = big.NewInt(math.MaxInt64)
	}
	if big.NewInt(got).Cmp(want) != 0 {
		t.Fatalf("%s is %d; want %v", what, got, want)
	}
}

func TestMul(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := anyLen().Draw(t, "a"), anyLen().Draw(t, "b")
		if got, want := Mul(a, b).big(), new(big.Int).Mul(big.NewInt(int64(a)), big.NewInt(int64(b))); got.Cmp(want) != 0 {
			t.Fatalf("%d x %d is %v; want %v", a, b, got, want)
		}
	})
}

// TestAreaOfAMat: 16 squares of 2 3/4 in fill 11 x 11 in to the nanometre.
func TestAreaOfAMat(t *testing.T) {
	mat, square := Mul(11*Inch, 11*Inch), Mul(11*Inch/4, 11*Inch/4)
	if n := mat.CeilDiv(square); n != 16 || square.Times(16) != mat || square.Times(16).PerMille(mat) != 1000 {
		t.Errorf("a mat holds %d squares, full to %d per mille", n, square.Times(16).PerMille(mat))
	}
	if n := mat.Add(Area{0, 1}).CeilDiv(square); n != 17 {
		t.Errorf("one square nanometre more takes %d squares; want 17", n)
	}
	if f := mat.Float(); f < 7.8e16 || f > 7.81e16 { // 279.4 mm squared
		t.Errorf("a mat is about %g nm²", f)
	}
}

func TestAreaPanics(t *testing.T) {
	full := Area{math.MaxUint64, math.MaxUint64}
	for name, slip := range map[string]func(){
		"negative": func() { Mul(-1, 1) }, "below zero": func() { Area{}.Sub(Area{0, 1}) }, "no area": func() { full.CeilDiv(Area{}) },
		"overflow": func() { full.Add(full) }, "times": func() { full.Times(2) }, "minus one": func() { full.Times(-1) },
	} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%s: no panic", name)
				}
			}()
			slip()
		}()
	}
}
