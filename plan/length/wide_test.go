package length

import (
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

func (a Wide) big() *big.Int {
	b := new(big.Int).Lsh(big.NewInt(a.Hi), 64)
	return b.Add(b, new(big.Int).SetUint64(a.Lo))
}

// TestWide checks every operation on products against math/big.
func TestWide(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var n [4]Len
		for i := range n {
			n[i] = Len(rapid.Int64Range(-1<<62, 1<<62).Draw(t, "factor"))
		}
		if rapid.Bool().Draw(t, "same") {
			n[2], n[3] = n[1], n[0]
		}
		product := func(a, b Len) *big.Int { return new(big.Int).Mul(big.NewInt(int64(a)), big.NewInt(int64(b))) }
		a, b := Product(n[0], n[1]), Product(n[2], n[3])
		x, y := product(n[0], n[1]), product(n[2], n[3])
		for what, c := range map[string][2]*big.Int{
			"product": {a.big(), x}, "sum": {a.Add(b).big(), new(big.Int).Add(x, y)}, "difference": {a.Sub(b).big(), new(big.Int).Sub(x, y)},
			"size": {a.Abs().big(), new(big.Int).Abs(x)},
		} {
			if c[0].Cmp(c[1]) != 0 {
				t.Errorf("%s of %v: %v, want %v", what, n, c[0], c[1])
			}
		}
		if a.Sign() != x.Sign() || a.Cmp(b) != x.Cmp(y) || (a == b) != (x.Cmp(y) == 0) {
			t.Errorf("%v: sign %d, compared %d", n, a.Sign(), a.Cmp(b))
		}
	})
}
