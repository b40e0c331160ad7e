package cutting

import (
	"slices"
	"testing"

	"example.org/matside/plan/length"
	"example.org/matside/plan/queue"
	"example.org/matside/plan/stock"
	"pgregory.net/rapid"
)

const in = length.Inch

func box(x, y, w, h length.Len) stock.Box {
	return stock.Box{X: x * in, Y: y * in, W: w * in, H: h * in}
}

// panel is a queue of one panel out of which the boxes come: rough cuts by
// turns with pieces cut by hand.
func panel(w, h length.Len, wares ...stock.Box) *queue.Queue {
	u := queue.PanelUse{Panel: 1, Width: w * in, Height: h * in}
	for i, b := range wares {
		if i%2 == 0 {
			u.RoughCuts = append(u.RoughCuts, queue.FromPanel{Load: 1 + i, X: b.X, Y: b.Y, Width: b.W, Height: b.H})
		} else {
			u.ByHand = append(u.ByHand, queue.HandCut{Copy: 1 + i, X: b.X, Y: b.Y, Width: b.W, Height: b.H})
		}
	}
	return &queue.Queue{Stock: []queue.PanelUse{u}}
}

// TestOrder: two strips of a panel, the first of them cut into a rough cut, a
// piece by hand and what is left over; below them what is left stays whole.
func TestOrder(t *testing.T) {
	got := Order(panel(40, 30, box(0, 0, 10, 8), box(10, 0, 12, 8), box(0, 8, 40, 3), box(0, 12, 20, 18), box(20, 12, 20, 18)))
	step := func(depth int, b stock.Box, across bool, at length.Len) Step {
		return Step{Panel: 1, Depth: depth, Left: b.X, Top: b.Y, Width: b.W, Height: b.H, Across: across, At: at * in}
	}
	want := []Step{
		step(0, box(0, 0, 40, 8), true, 8),
		step(1, box(0, 0, 10, 8), false, 10), // load 1
		step(1, box(10, 0, 12, 8), false, 12),
		step(0, box(0, 8, 40, 3), true, 3), // load 3
		step(0, box(0, 11, 40, 1), true, 1),
		step(1, box(0, 12, 20, 18), false, 20),
		step(1, box(20, 12, 20, 18), false, 0), // load 5: what is left
	}
	want[1].Load, want[2].Copy, want[3].Load, want[4].Offcut, want[5].Copy, want[6].Load = 1, 2, 3, true, 4, 5
	if !slices.Equal(got, want) {
		t.Errorf("got\n%+v\nwant\n%+v", got, want)
	}
}

// TestStripsFirst: where both would do, strips across come first, and then
// pieces of strips.
func TestStripsFirst(t *testing.T) {
	steps := Order(panel(20, 20, box(0, 0, 10, 8), box(10, 0, 10, 8), box(0, 8, 10, 12), box(10, 8, 10, 12)))
	if len(steps) != 5 || !steps[0].Across || steps[1].Across || steps[1].At != 10*in {
		t.Errorf("%+v", steps)
	}
}

// TestOrderLaws cuts panels apart as told: (1) each cut runs from edge to edge
// of what lies on the table, at so much from its top or left edge; (2) every
// box is set free exactly once, and lies there alone then; (3) nothing comes
// out of what is said to be left over.
func TestOrderLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var wares []stock.Box
		split(t, box(0, 0, 40, 40), 4, &wares)
		q := panel(40, 40, wares...)
		table := []stock.Box{box(0, 0, 40, 40)}
		freed := map[stock.Box]int{}
		for _, s := range Order(q) {
			table = cutOff(t, table, s)
			if s.Load+s.Copy > 0 {
				freed[s.box()]++
			}
			if s.Offcut && slices.ContainsFunc(wares, func(w stock.Box) bool { return inside(w, s.box()) }) {
				t.Errorf("%+v: something comes out of it", s)
			}
		}
		for _, w := range wares {
			if freed[w] != 1 || !slices.Contains(table, w) {
				t.Errorf("%v is set free %d times", w, freed[w])
			}
		}
		if len(freed) != len(wares) {
			t.Errorf("%d set free of %d", len(freed), len(wares))
		}
	})
}

// split cuts a box by straight cuts into boxes that are wanted and others that
// aren't.
func split(t *rapid.T, b stock.Box, depth int, wares *[]stock.Box) {
	across := rapid.Bool().Draw(t, "across")
	side := b.W
	if across {
		side = b.H
	}
	if depth == 0 || side < 2*in || rapid.IntRange(0, 3).Draw(t, "stop") == 0 {
		if rapid.IntRange(0, 2).Draw(t, "wanted") > 0 {
			*wares = append(*wares, b)
		}
		return
	}
	at := length.Len(rapid.IntRange(1, int(side/in)-1).Draw(t, "at")) * in
	one, other := b, b
	if across {
		one.H, other.Y, other.H = at, b.Y+at, b.H-at
	} else {
		one.W, other.X, other.W = at, b.X+at, b.W-at
	}
	split(t, one, depth-1, wares)
	split(t, other, depth-1, wares)
}

// cutOff does a step with what lies on the table.
func cutOff(t *rapid.T, table []stock.Box, s Step) []stock.Box {
	b := s.box()
	for i, r := range table {
		rest := r
		switch {
		case s.At == 0:
			if r == b {
				return table
			}
			continue
		case s.Across:
			rest.Y, rest.H, r.H = r.Y+s.At, r.H-s.At, s.At
		default:
			rest.X, rest.W, r.W = r.X+s.At, r.W-s.At, s.At
		}
		if r == b && rest.W > 0 && rest.H > 0 {
			return append(slices.Delete(table, i, i+1), b, rest)
		}
	}
	t.Fatalf("%+v: nothing of the kind lies on the table: %v", s, table)
	return nil
}

func inside(w, b stock.Box) bool {
	return w.X >= b.X && w.Y >= b.Y && w.X+w.W <= b.X+b.W && w.Y+w.H <= b.Y+b.H
}

// TestStuck: what straight cuts can't free is no plan.
func TestStuck(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("no panic")
		}
	}()
	Order(panel(3, 3, box(0, 0, 2, 1), box(2, 0, 1, 2), box(1, 2, 2, 1), box(0, 1, 1, 2)))
}
