package bound_test

import (
	"slices"
	"testing"

	"example.org/matside/plan/bound"
	"example.org/matside/plan/length"
	"pgregory.net/rapid"
)

func TestAreas(t *testing.T) {
	mat := length.Mul(11*length.Inch, 11*length.Inch)
	quarter := length.Mul(42*eighth, 42*eighth).Half().Half() // 5 1/4 in across the long side
	half := length.Mul(31*eighth, 31*eighth).Half()           // 3 7/8 in legs
	cases := []struct {
		name   string
		pieces []bound.Discrete
		want   int
	}{
		{"nothing", nil, 0},
		{"17 quarter-square triangles a mat by area", []bound.Discrete{{Area: quarter, Count: 96}}, 6},
		{"102 just fill six mats", []bound.Discrete{{Area: quarter, Count: 102}}, 6},
		{"16 half-square triangles a mat by area", []bound.Discrete{{Area: half, Count: 100}}, 7},
		{"nine are known to be the most", []bound.Discrete{{Area: half, Count: 100, Most: 9}}, 12},
		{"larger than the mat", []bound.Discrete{{Area: mat.Add(half), Count: 9}}, 0},
		{"two thirds never pair", []bound.Discrete{{Area: length.Mul(9*length.Inch, 9*length.Inch), Count: 5}}, 5},
		{"nor two thirds with a half", []bound.Discrete{
			{Area: length.Mul(9*length.Inch, 9*length.Inch), Count: 5},
			{Area: length.Mul(10*length.Inch, 6*length.Inch), Count: 4}}, 7},
	}
	for _, c := range cases {
		if got := bound.Areas(mat, c.pieces); got != c.want {
			t.Errorf("%s: %d bins proved, want %d", c.name, got, c.want)
		}
	}
}

// TestAreasTrue: never above what a row of the same areas needs, by exhaustion.
func TestAreasTrue(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bin := rapid.IntRange(1, 30).Draw(t, "bin")
		areas := rapid.SliceOfN(rapid.IntRange(1, bin), 1, 6).Draw(t, "areas")
		var pieces []bound.Discrete
		var row []piece
		for _, a := range areas {
			pieces = append(pieces, bound.Discrete{Area: length.Mul(length.Len(a), 1), Count: 1})
			row = append(row, piece{w: a, h: 1})
		}
		want := fewest(bin, 1, row)
		if got := bound.Areas(length.Mul(length.Len(bin), 1), pieces); got > want {
			t.Fatalf("%d bins proved; %d do", got, want)
		}
		slices.Reverse(pieces)
		if a, b := bound.Areas(length.Area{Lo: uint64(bin)}, pieces), want; a > b {
			t.Fatalf("in reverse: %d bins proved; %d do", a, b)
		}
	})
}
