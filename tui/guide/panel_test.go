package guide

import (
	"strings"
	"testing"

	"example.org/matside/plan/length"
	"example.org/matside/plan/queue"
	"example.org/matside/session"
	"example.org/matside/tui/internal/fixture"
	"example.org/matside/tui/matpic"
	"example.org/matside/tui/ruler"
	"example.org/matside/tui/words"
)

// Cuts that repeat the one before are said together; a cut as long in another
// piece is not.
func TestStraightCuts(t *testing.T) {
	const strip = 2 * length.Inch
	p := matpic.Panel{Say: func(l length.Len) string { return l.Show(length.In) }}
	hand := ruler.Box{W: 40 * length.Inch, H: 30 * length.Inch}
	for range 3 {
		p.Cuts = append(p.Cuts, ruler.Cut{Hand: hand, Across: true, At: strip})
		hand.Y, hand.H = hand.Y+strip, hand.H-strip
	}
	p.Cuts = append(p.Cuts, ruler.Cut{Hand: hand, At: strip})
	hand.X, hand.W = hand.X+strip, hand.W-strip
	p.Cuts = append(p.Cuts, ruler.Cut{Hand: hand, At: strip})
	hand.W = strip // the part cut off, not what is left
	p.Cuts = append(p.Cuts, ruler.Cut{Hand: hand, At: strip}, ruler.Cut{Hand: hand, Across: true, At: strip})
	got := strings.Join(StraightCuts(words.English{}, p), "|")
	const want = "Cuts 1 to 3: across, each 2 below the top edge.|Cuts 4 to 5: along, each 2 from the left edge.|" +
		"Cut 6: along, 2 from the left edge.|Cut 7: across, 2 below the top edge."
	if got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

// A strip of two rough cuts side by side: the cuts that free the first one
// free the other too, but only once they are made.
func TestReady(t *testing.T) {
	list, plan := fixture.LampRoom()
	const side = 10 * length.Inch
	rough := []queue.RoughCut{{Fabric: 0, Panel: 1, Width: side, Height: side}}
	q := &session.Quilt{
		Editions: []session.Edition{{List: list}},
		Stock: []queue.PanelUse{{Fabric: 0, Panel: 1, Width: 2 * side, Height: 2 * side, RoughCuts: []queue.FromPanel{
			{Load: 1, X: 0, Y: 0, Width: side, Height: side},
			{Load: 2, X: side, Y: 0, Width: side, Height: side},
		}}},
	}
	for id := 1; id <= 2; id++ {
		load := plan.Loads[0]
		load.Number, load.RoughCuts = id, rough
		q.Loads = append(q.Loads, session.Load{Load: load, ID: id})
	}
	state := &session.State{}
	for _, c := range []struct {
		current int
		done    []int
		want    bool
	}{
		{1, nil, false},
		{2, nil, false}, // she cuts the second load first
		{2, []int{1}, true},
		{1, []int{2}, true},
	} {
		q.Current = c.current
		for i := range q.Loads {
			q.Loads[i].Done = false
		}
		for _, id := range c.done {
			q.Load(id).Done = true
		}
		if got := Of(state, q, length.In).Ready(0); got != c.want {
			t.Errorf("load %d in hand, %v done: ready is %v", c.current, c.done, got)
		}
	}
}
