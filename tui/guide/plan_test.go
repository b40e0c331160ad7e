package guide

import (
	"testing"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/queue"
	"example.org/matside/tui/words"
)

// TestShort: how much more fabric would do is told in steps as it is sold, and
// that none would where a piece is too wide.
func TestShort(t *testing.T) {
	list := &cutlist.List{Fabrics: []cutlist.Fabric{{Name: "Ink", Stock: []cutlist.Panel{{Width: 18 * length.Inch, Height: 9 * length.Inch}}}},
		Lines: []cutlist.Line{{Count: 9}, {Count: 1, Kind: cutlist.ByHand}}}
	for _, c := range []struct {
		missing []int
		length  length.Len
		want    string
	}{
		{[]int{2, 1}, 10 * length.Inch, "Ink is short: 2 pieces missing, buy 3/8 yd more."},
		{[]int{0, 1}, 10 * length.Inch, "Ink is short: buy 3/8 yd more."},
		{[]int{1, 1}, 0, "Ink is short: 1 piece missing, no length of it would do."},
	} {
		q := &queue.Queue{List: list, Short: []queue.Short{{Missing: c.missing, Length: c.length}}}
		if got := planFabrics(words.English{}, q); len(got) != 1 || got[0].Says != c.want {
			t.Errorf("%+v, want %q", got, c.want)
		}
	}
}
