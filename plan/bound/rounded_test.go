package bound

import (
	"testing"

	"pgregory.net/rapid"
)

// Boxes that hold all pieces between them, full or not, hold all of each cut.
func TestCutsHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := &cloth{kinds: make([]Piece, rapid.IntRange(1, 4).Draw(t, "kinds"))}
		boxes := make([]box, rapid.IntRange(1, 5).Draw(t, "boxes"))
		used := make([]int64, len(boxes))
		for i := range boxes {
			used[i] = rapid.Int64Range(0, 9).Draw(t, "used")
			for k := range c.kinds {
				n := rapid.IntRange(0, 5).Draw(t, "holds")
				boxes[i].holds = append(boxes[i].holds, int64(n))
				for range used[i] {
					c.kinds[k].Count += rapid.IntRange(0, n).Draw(t, "held")
				}
			}
		}
		for n, count := range c.round(boxes) {
			var all int64
			for i := range boxes {
				all += used[i] * boxes[i].holds[len(c.kinds)+n]
			}
			if all < count {
				t.Errorf("cut %d: %d boxes are said to be used, there are %d", n, count, all)
			}
		}
	})
}

// Five pieces, two to a box, take three boxes; six take no more.
func TestCutsSayMore(t *testing.T) {
	for count, want := range map[int]int{5: 1, 6: 0} {
		c := &cloth{kinds: []Piece{{Count: count}}}
		boxes := []box{{holds: []int64{2}}}
		got := c.round(boxes)
		if len(got) != want || want == 1 && (got[0] != 3 || boxes[0].holds[1] != 1) {
			t.Errorf("%d pieces: %v, %v", count, got, boxes)
		}
	}
}
