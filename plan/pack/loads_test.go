package pack

import (
	"slices"
	"testing"

	"example.org/matside/plan/length"
	"pgregory.net/rapid"
)

const in = length.Inch

func TestSums(t *testing.T) {
	for _, c := range []struct{ lengths, want []length.Len }{
		{nil, []length.Len{0}},
		{[]length.Len{4}, []length.Len{0, 4, 8}},
		{[]length.Len{7, 4}, []length.Len{0, 4, 7, 8, 11}},
		{[]length.Len{12}, []length.Len{0}},
	} {
		if got := sums(c.lengths, 11); !slices.Equal(got, c.want) {
			t.Errorf("%v within 11: %v, want %v", c.lengths, got, c.want)
		}
	}
}

// (1) Every piece lies on some mat, no more of them; (2) groups lie within
// reach and apart.
func TestLoads(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := draw(t)
		packing, err := j.Start(nil)
		if err != nil {
			t.Fatal(err)
		}
		mats := packing.Improved()
		got := make([]int, len(j.Kinds))
		for _, m := range mats {
			for i, g := range m.Groups {
				for _, p := range g.Parts {
					got[p.Kind]++
				}
				if g.X < j.X || g.Y < j.Y || g.X+g.W > j.X+j.W || g.Y+g.H > j.Y+j.H {
					t.Errorf("a group beyond reach: %+v", g)
				}
				for _, o := range m.Groups[:i] {
					a := j.Apart
					if g.X < o.X+o.W+a && o.X < g.X+g.W+a && g.Y < o.Y+o.H+a && o.Y < g.Y+g.H+a {
						t.Errorf("groups too near: %+v, %+v", g, o)
					}
				}
			}
		}
		if want := j.Counts(); !slices.Equal(got, want) {
			t.Errorf("%v pieces laid, want %v", got, want)
		}
	})
}
