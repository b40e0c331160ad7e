package pack

import (
	"testing"

	"example.org/matside/plan/length"
	"pgregory.net/rapid"
)

// thing is what a grid may lay, for the test of it.
type thing struct {
	w, h  length.Len
	worth int64
}

// best is the most worth in w x h, by every straight cut at every whole length.
func best(things []thing, w, h length.Len, known map[[2]length.Len]int64) int64 {
	most, ok := known[[2]length.Len{w, h}]
	if ok {
		return most
	}
	for _, t := range things {
		if t.w <= w && t.h <= h {
			most = max(most, t.worth)
		}
	}
	for x := length.Len(1); x <= w/2; x++ {
		most = max(most, best(things, x, h, known)+best(things, w-x, h, known))
	}
	for y := length.Len(1); y <= h/2; y++ {
		most = max(most, best(things, w, y, known)+best(things, w, h-y, known))
	}
	known[[2]length.Len{w, h}] = most
	return most
}

// (1) A grid finds the most worth there is by straight cuts; (2) what it lays
// is worth that, lies in the box and shares no area.
func TestGrid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := length.Len(rapid.IntRange(1, 20).Draw(t, "w")), length.Len(rapid.IntRange(1, 20).Draw(t, "h"))
		var things []thing
		var ws, hs []length.Len
		for range rapid.IntRange(1, 4).Draw(t, "things") {
			o := thing{length.Len(rapid.IntRange(1, int(w)).Draw(t, "across")), length.Len(rapid.IntRange(1, int(h)).Draw(t, "down")),
				rapid.Int64Range(0, 50).Draw(t, "worth")}
			things, ws, hs = append(things, o), append(ws, o.w), append(hs, o.h)
		}
		g := newGrid(newAxis(sums(distinct(ws), w)), newAxis(sums(distinct(hs), h)))
		for n, o := range things {
			g.put(g.x.ceil(o.w), g.y.ceil(o.h), o.worth, n)
		}
		g.solve()
		if want := best(things, w, h, map[[2]length.Len]int64{}); g.most() != want {
			t.Fatalf("(1) worth %d, there is %d", g.most(), want)
		}
		var sum int64
		var laid []box
		g.each(len(g.x.at)-1, len(g.y.at)-1, 0, 0, func(_, _, n int, x, y length.Len) {
			b := box{x, y, things[n].w, things[n].h}
			sum += things[n].worth
			if !(box{0, 0, w, h}).contains(b) {
				t.Errorf("(2) %v lies outside", b)
			}
			for _, o := range laid {
				if b.x < o.x+o.w && o.x < b.x+b.w && b.y < o.y+o.h && o.y < b.y+b.h {
					t.Errorf("(2) %v lies on %v", b, o)
				}
			}
			laid = append(laid, b)
		})
		if sum != g.most() {
			t.Errorf("(2) worth %d laid of %d", sum, g.most())
		}
	})
}
