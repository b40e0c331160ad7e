package blade

import (
	"cmp"
	"flag"
	"math"
	"os"
	"slices"
	"testing"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
	"pgregory.net/rapid"
)

// TestMain keeps the random laws quick, unless asked for the long form.
func TestMain(m *testing.M) {
	if os.Getenv("MATSIDE_LONG") == "1" {
		if err := flag.Set("rapid.checks", "5000"); err != nil {
			panic(err)
		}
	}
	os.Exit(m.Run())
}

func at(x, y length.Len) outline.Point { return outline.Point{X: x, Y: y} }

func TestRuns(t *testing.T) {
	square := func(x, y length.Len) outline.Outline { return outline.Rect(x, y, 10, 10) }
	for _, c := range []struct {
		name  string
		edges [][]Edge
		want  []Run
	}{
		{"a square alone", [][]Edge{Edges(square(0, 0), 0, 0)}, []Run{
			{at(0, 0), at(0, 10), 0, 0, false, true}, {at(10, 0), at(10, 10), 0, 0, false, true},
			{at(0, 0), at(10, 0), 0, 0, false, true}, {at(0, 10), at(10, 10), 0, 0, false, true}}},
		{"two side by side share a cut, and their long sides are one each", [][]Edge{Edges(square(0, 0), 0, 0), Edges(square(10, 0), 0, 0)}, []Run{
			{at(0, 0), at(0, 10), 0, 0, false, true}, {at(10, 0), at(10, 10), 0, 0, true, false}, {at(20, 0), at(20, 10), 0, 0, false, true},
			{at(0, 0), at(20, 0), 0, 0, false, true}, {at(0, 10), at(20, 10), 0, 0, false, true}}},
		{"staggered: the shared line is inner in part", [][]Edge{Edges(square(0, 0), 0, 0), Edges(square(10, 4), 0, 1)}, []Run{
			{at(0, 0), at(0, 10), 0, 0, false, true}, {at(10, 0), at(10, 14), 0, 1, true, true}, {at(20, 4), at(20, 14), 0, 1, false, true},
			{at(0, 0), at(10, 0), 0, 0, false, true}, {at(10, 4), at(20, 4), 0, 1, false, true},
			{at(0, 10), at(10, 10), 0, 0, false, true}, {at(10, 14), at(20, 14), 0, 1, false, true}}},
		{"two fabrics: the later one has what they share", [][]Edge{Edges(square(0, 0), 0, 0), Edges(square(10, 4), 1, 1)}, []Run{
			{at(0, 0), at(0, 10), 0, 0, false, true}, {at(10, 0), at(10, 4), 0, 0, false, true}, {at(10, 4), at(10, 14), 1, 1, true, true},
			{at(20, 4), at(20, 14), 1, 1, false, true}, {at(0, 0), at(10, 0), 0, 0, false, true}, {at(10, 4), at(20, 4), 1, 1, false, true},
			{at(0, 10), at(10, 10), 0, 0, false, true}, {at(10, 14), at(20, 14), 1, 1, false, true}}},
		{"a nanometre apart are two cuts", [][]Edge{{{at(0, 0), at(9, 0), 0, 0}}, {{at(9, 1), at(0, 1), 0, 0}}}, []Run{
			{at(0, 0), at(9, 0), 0, 0, false, true}, {at(0, 1), at(9, 1), 0, 0, false, true}}},
		{"slanted, in part", [][]Edge{{{at(0, 0), at(30, 20), 0, 0}}, {{at(60, 40), at(15, 10), 0, 0}}}, []Run{
			{at(0, 0), at(60, 40), 0, 0, true, true}}},
	} {
		var all []Edge
		for _, e := range c.edges {
			all = append(all, e...)
		}
		got := Runs(all)
		slices.SortFunc(got, fromTheLeft)
		slices.SortFunc(c.want, fromTheLeft)
		if len(got) != len(c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
			continue
		}
		for i := range got {
			if got[i] != c.want[i] {
				t.Errorf("%s: run %d is %v, want %v", c.name, i, got[i], c.want[i])
			}
		}
	}
}

func fromTheLeft(a, b Run) int {
	return cmp.Or(cmp.Compare(a.A.X, b.A.X), cmp.Compare(a.A.Y, b.A.Y), cmp.Compare(a.B.X, b.B.X), cmp.Compare(a.B.Y, b.B.Y))
}

// drawEdges makes up edges on a small grid, so that many lie on one line; on
// the grid every place of a line can be looked at one by one.
func drawEdges(t *rapid.T) []Edge {
	var edges []Edge
	point := func() outline.Point {
		return at(length.Len(rapid.IntRange(-6, 6).Draw(t, "x")), length.Len(rapid.IntRange(-6, 6).Draw(t, "y")))
	}
	for range rapid.IntRange(1, 12).Draw(t, "edges") {
		a, b := point(), point()
		if a != b {
			edges = append(edges, Edge{a, b, rapid.IntRange(0, 2).Draw(t, "group"), rapid.IntRange(0, 3).Draw(t, "part")})
		}
	}
	return edges
}

// covers says whether the segment from a to b has the point (x, y)/n on it.
func covers(a, b outline.Point, x, y, n int64) bool {
	ax, ay, bx, by := n*int64(a.X), n*int64(a.Y), n*int64(b.X), n*int64(b.Y)
	return (bx-ax)*(y-ay) == (by-ay)*(x-ax) && min(ax, bx) <= x && x <= max(ax, bx) && min(ay, by) <= y && y <= max(ay, by)
}

// The laws of Run, looked at place by place: along each edge and each run, at
// points so close that none of another line's lie between them.
func TestRunLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edges := drawEdges(t)
		runs := Runs(edges)
		// A twelfth of 1..12 steps never leaves the grid of 1/27720 = 1/lcm(1..12).
		const parts, n = 48, 27720 * 4
		walk := func(a, b outline.Point, f func(x, y int64)) {
			for i := int64(1); i < 2*parts; i += 2 {
				f(int64(a.X)*n+int64(b.X-a.X)*n*i/(2*parts), int64(a.Y)*n+int64(b.Y-a.Y)*n*i/(2*parts))
			}
		}
		parallel := func(a, b, c, d outline.Point) bool { return outline.Cross(b.Sub(a), d.Sub(c)) == 0 }
		for _, e := range edges { // (1) every edge is covered
			walk(e.A, e.B, func(x, y int64) {
				for _, r := range runs {
					if parallel(e.A, e.B, r.A, r.B) && covers(r.A, r.B, x, y, n) {
						return
					}
				}
				t.Fatalf("%v is not covered by %v", e, runs)
			})
		}
		for i, r := range runs { // (1) and nothing else, (2), (3)
			group := false
			walk(r.A, r.B, func(x, y int64) {
				best := -1
				for _, e := range edges {
					if parallel(e.A, e.B, r.A, r.B) && covers(e.A, e.B, x, y, n) {
						best = max(best, e.Group)
					}
				}
				if best < 0 {
					t.Fatalf("%v covers what is no edge of %v", r, edges)
				}
				group = group || best == r.Group
			})
			if !group {
				t.Fatalf("%v belongs to another group: %v", r, edges)
			}
			if !r.Inner && !r.Outer {
				t.Fatalf("%v is neither", r)
			}
			for k, o := range runs {
				if k == i || !parallel(r.A, r.B, o.A, o.B) {
					continue
				}
				walk(r.A, r.B, func(x, y int64) {
					if covers(o.A, o.B, x, y, n) {
						t.Fatalf("%v and %v overlap", r, o)
					}
				})
				if r.Group == o.Group && r.B == o.A {
					t.Fatalf("%v and %v are one run", r, o)
				}
			}
		}
	})
}

// TestOrder: the order the edges come in changes nothing.
func TestOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edges := drawEdges(t)
		a, b := Runs(edges), Runs(rapid.Permutation(edges).Draw(t, "order"))
		if len(a) != len(b) {
			t.Fatalf("%v, then %v", a, b)
		}
		for i := range a {
			if a[i] != b[i] {
				t.Fatalf("%v, then %v", a, b)
			}
		}
	})
}

// TestLength: 25 squares of 2 in as one block take 12 cuts of 10 in.
func TestLength(t *testing.T) {
	var pieces []queue.Placement
	for i := range length.Len(25) {
		pieces = append(pieces, queue.Placement{Outline: outline.Rect(i%5*2*length.Inch, i/5*2*length.Inch, 2*length.Inch, 2*length.Inch)})
	}
	if got := Length(pieces); got != 120*length.Inch {
		t.Errorf("got %s, want 120 in", got)
	}
}

// TestWay holds the square root to the nearest nanometre below.
func TestWay(t *testing.T) {
	if got := Way(at(0, 0), at(3_000_000_000, -4_000_000_000)); got != 5_000_000_000 {
		t.Errorf("got %d", got)
	}
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Int64Range(-int64(length.MaxLen), int64(length.MaxLen)).Draw(t, "x")
		y := rapid.Int64Range(-int64(length.MaxLen), int64(length.MaxLen)).Draw(t, "y")
		want := math.Hypot(float64(x), float64(y))
		if got := float64(Way(at(0, 0), at(length.Len(x), length.Len(y)))); got > want+1e-3 || got < want-1.001 {
			t.Fatalf("the way to %d, %d is %f, not %f", x, y, want, got)
		}
	})
}
