package check

import (
	"cmp"
	"slices"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// overlaps is the pairs of boxes that share area, by their indexes.
func overlaps(boxes []outline.Box) (pairs [][2]int) {
	order := byStart(boxes, true)
	for k, i := range order {
		for _, j := range order[k+1:] {
			if boxes[j].Min.X >= boxes[i].Max.X {
				break
			}
			if boxes[i].Overlaps(boxes[j]) {
				pairs = append(pairs, [2]int{min(i, j), max(i, j)})
			}
		}
	}
	return pairs
}

// byStart is the indexes of boxes ordered by their left edges, or their top
// edges.
func byStart(boxes []outline.Box, across bool) []int {
	order := make([]int, len(boxes))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(i, j int) int {
		a, _ := extent(boxes[i], across)
		b, _ := extent(boxes[j], across)
		return cmp.Or(cmp.Compare(a, b), cmp.Compare(i, j))
	})
	return order
}

// extent is where a box starts and ends, from left to right or from the top
// down.
func extent(b outline.Box, across bool) (from, to length.Len) {
	if across {
		return b.Min.X, b.Max.X
	}
	return b.Min.Y, b.Max.Y
}

// separable says whether cuts straight across what is left free every one of
// the boxes, which do not overlap.
//
// A cut that is possible is never a mistake: whatever freed the rest before
// still frees each side of it. So all cuts in one direction are made at once,
// then those in the other across each part, until a part is one box or has no
// cut in either direction.
func separable(boxes []outline.Box) bool {
	return partible(boxes, true) || partible(boxes, false)
}

// partible says whether boxes come free when the first cuts run up and down
// (across: they part left from right), or the other way. A single box is free.
func partible(boxes []outline.Box, across bool) bool {
	if len(boxes) < 2 {
		return true
	}
	parts := split(boxes, across)
	if len(parts) == 1 {
		return false
	}
	for _, p := range parts {
		if len(p) > 1 && !partible(p, !across) {
			return false
		}
	}
	return true
}

// split parts boxes wherever a cut meets none of them.
func split(boxes []outline.Box, across bool) (parts [][]outline.Box) {
	var reach length.Len
	for _, i := range byStart(boxes, across) {
		from, to := extent(boxes[i], across)
		if len(parts) == 0 || from >= reach {
			parts = append(parts, nil)
			reach = to
		}
		last := len(parts) - 1
		parts[last] = append(parts[last], boxes[i])
		reach = max(reach, to)
	}
	return parts
}
