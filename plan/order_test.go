package plan

import (
	"slices"
	"testing"

	"example.org/matside/plan/length"
	"example.org/matside/plan/queue"
	"example.org/matside/plan/rect"
	"pgregory.net/rapid"
)

func drawSets(t *rapid.T, most int) [][]int {
	return rapid.SliceOfNDistinct(rapid.Custom(func(t *rapid.T) []int {
		s := rapid.SliceOfNDistinct(rapid.IntRange(0, 5), 1, 3, rapid.ID).Draw(t, "set")
		slices.Sort(s)
		return s
	}), 0, most, func(s []int) string { return string(rune('a'+len(s))) + string(bytesOf(s)) }).Draw(t, "sets")
}

func bytesOf(s []int) (b []byte) {
	for _, v := range s {
		b = append(b, byte(v))
	}
	return b
}

// No order of the sets has fewer new fabrics than route's; and it names each
// set once.
func TestRoute(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sets := drawSets(t, 6)
		before := rapid.SliceOfNDistinct(rapid.IntRange(0, 5), 0, 2, rapid.ID).Draw(t, "before")
		got := route(sets, before)
		least := -1
		var try func(order []int)
		try = func(order []int) {
			if len(order) == len(sets) {
				if c := changes(sets, before, order); least < 0 || c < least {
					least = c
				}
				return
			}
			for i := range sets {
				if !slices.Contains(order, i) {
					try(append(slices.Clone(order), i))
				}
			}
		}
		try(nil)
		if c := changes(sets, before, got); c != least {
			t.Errorf("%v costs %d, the least is %d", got, c, least)
		}
		checkOrder(t, got, len(sets))
	})
}

// With many sets: each once, and never worse than as they come.
func TestLongRoute(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sets := drawSets(t, 25)
		got := moved(sets, nil, nearest(sets, nil))
		checkOrder(t, got, len(sets))
		if c, most := changes(sets, nil, got), changes(sets, nil, nearest(sets, nil)); c > most {
			t.Errorf("%d new fabrics, %d as they come", c, most)
		}
	})
}

func checkOrder(t *rapid.T, order []int, n int) {
	sorted := slices.Sorted(slices.Values(order))
	for i := range n {
		if len(sorted) != n || sorted[i] != i {
			t.Fatalf("%v is no order of %d", order, n)
		}
	}
}

// fabricsOn lists the fabrics of a load, ascending.
func fabricsOn(l *queue.Load) (out []int) {
	for _, r := range l.RoughCuts {
		out = append(out, r.Fabric)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// The laws of the order of loads, read off plans: (1) the loads with pieces of
// the First label are a prefix; (2) in it and behind it, what sheds comes
// last; (3) loads of the same fabrics stand together there; (4) among those,
// the mean piece never gets smaller, and the same drawing stays together.
func TestOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := drawList(t)
		for i := range l.Lines {
			l.Lines[i].Label = rapid.SampledFrom([]string{"A", "B", "C", ""}).Draw(t, "label")
		}
		first := rapid.SampledFrom([]string{"", "A", "B"}).Draw(t, "first")
		q := Make(l, Options{Effort: rect.Quick, First: first})
		class := func(i int) (n int) {
			if !slices.ContainsFunc(q.Loads[i].Pieces, func(p queue.Placement) bool { return first != "" && l.Lines[p.Line].Label == first }) {
				n = 2
			}
			if slices.ContainsFunc(q.Loads[i].RoughCuts, func(r queue.RoughCut) bool { return l.Fabrics[r.Fabric].Sheds }) {
				n++
			}
			return n
		}
		for i := 1; i < len(q.Loads); i++ {
			a, b := &q.Loads[i-1], &q.Loads[i]
			if class(i) < class(i-1) {
				t.Errorf("load %d of class %d after class %d", b.Number, class(i), class(i-1))
			}
			if class(i) != class(i-1) {
				continue
			}
			if !slices.Equal(fabricsOn(a), fabricsOn(b)) {
				for k := range i - 1 {
					if class(k) == class(i) && slices.Equal(fabricsOn(&q.Loads[k]), fabricsOn(b)) {
						t.Errorf("loads %d and %d are of the same fabrics, and apart", k+1, i+1)
					}
				}
				continue
			}
			if meanArea(a)/100 > meanArea(b)/100+1 {
				t.Errorf("load %d has smaller pieces than the one before it", b.Number)
			}
			if a.Layout != b.Layout && slices.ContainsFunc(q.Loads[:i-1], func(o queue.Load) bool {
				return o.Layout == b.Layout && class(o.Number-1) == class(i) && slices.Equal(fabricsOn(&o), fabricsOn(b))
			}) {
				t.Errorf("layout %d is cut again in load %d, after another", b.Layout, b.Number)
			}
		}
	})
}

// meanArea is the mean of a load's pieces, in square tenths of a millimetre.
func meanArea(l *queue.Load) int64 {
	var sum length.Area
	for _, p := range l.Pieces {
		sum = sum.Add(p.Outline.Area())
	}
	return sum.FloorDiv(length.Mul(length.TenthMM, length.TenthMM)) / int64(len(l.Pieces))
}
