package guide

import (
	"testing"

	"example.org/matside/plan/length"
	"example.org/matside/plan/queue"
	"example.org/matside/session"
	"example.org/matside/tui/internal/fixture"
)

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
