package nest

import (
	"math"

	"example.org/matside/plan/length"
)

// Most lays as many of one piece as it can in a container of w x h, up to its
// count (0: as many as there is room for).
func Most(w, h, gap length.Len, item Item, opt Options) []Placed {
	if item.Count == 0 {
		item.Count = math.MaxInt
	}
	item.Value = 0
	return Fill(w, h, gap, []Item{item}, opt)
}
