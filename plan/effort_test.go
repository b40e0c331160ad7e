package plan

import (
	"os"
	"slices"
	"testing"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/rect"
)

// easier is a list on which the search with usual effort, left to itself,
// ends with a load more than with little.
const easier = `quilt Easier
gap 3 mm
fabric Oat, face down
fabric Fern, 42 x 9, 1 of 42 x 36, 42 x 9, face down, one-way, sheds
fabric Rust, 42 x 9
cut from Oat
20 parallelograms 60 3 1/2 x 3, left
cut from Fern
binding 2 1/2 around 38 1/2 x 45 1/2
cut from Rust
3 squares 1 3/8, lengthwise, fussy
31 equilateral triangles height 1 1/2 finished
1 quarter-square triangle 4 finished, lengthwise, fussy
3 half hexagons height 1 41/64 finished
`

// More effort never takes more loads.
func TestEffortPays(t *testing.T) {
	efforts := []rect.Effort{rect.Quick, rect.Usual}
	if os.Getenv("MATSIDE_LONG") == "1" {
		efforts = append(efforts, rect.Thorough)
	}
	for _, text := range []string{easier, mixedText(106), mixedText(148)} {
		l, err := cutlist.Read("effort", []byte(text), nil)
		if err != nil {
			t.Fatal(err)
		}
		var loads []int
		for _, e := range efforts {
			loads = append(loads, len(Make(l, Options{Effort: e}).Loads))
		}
		if !slices.IsSortedFunc(loads, func(a, b int) int { return b - a }) {
			t.Errorf("%v loads with more and more effort in\n%s", loads, text)
		}
	}
}
