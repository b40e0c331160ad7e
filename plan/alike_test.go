package plan

import (
	"os"
	"path/filepath"
	"testing"

	"example.org/matside/plan/check"
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/queue"
	"example.org/matside/plan/rect"
	"pgregory.net/rapid"
)

// apartAndAlike plans a list as Make does, without and with its loads laid
// alike.
func apartAndAlike(l *cutlist.List, opt Options) (m *maker, apart, alike *attempt) {
	m = newMaker(l, opt)
	apart = m.cutOut(m.best())
	return m, apart, m.laidAlike(apart)
}

func layoutsOf(q *queue.Queue) (n int) {
	for i := range q.Loads {
		n = max(n, q.Loads[i].Layout)
	}
	return n
}

// Laws (1) and (2) of laidAlike, and the plan is without fault.
func TestLaidAlike(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := drawList(t)
		m, a, b := apartAndAlike(l, Options{Effort: drawEffort(t)})
		if len(b.mats) != len(a.mats) || b.missing > a.missing {
			t.Errorf("%d loads and %d missing, before %d and %d", len(b.mats), b.missing, len(a.mats), a.missing)
		}
		for f, table := range m.tables {
			if now, before := m.cost(table, b.spread[f]), m.cost(table, a.spread[f]); now > before {
				t.Errorf("fabric %d: %d of it, before %d", f, now, before)
			}
			if now, before := b.roughArea(f), a.roughArea(f); now > before+before/mostMore {
				t.Errorf("fabric %d: rough cuts of %d, before %d", f, now, before)
			}
		}
		before, now := m.emit(a), m.emit(b)
		if layoutsOf(now) > layoutsOf(before) {
			t.Errorf("%d layouts, before %d", layoutsOf(now), layoutsOf(before))
		}
		for _, f := range check.Check(now) {
			t.Error(f)
		}
	})
}

// How few layouts lists take that are worked out by hand.
func TestFewLayouts(t *testing.T) {
	for _, c := range []struct {
		why, lines     string
		loads, layouts int
	}{
		{"full mats all", "fabric A\ncut from A\n100 squares 5 1/2", 25, 1},
		{"26 = 6 x 4 + 2", "fabric A\ncut from A\n26 squares 5 1/2", 7, 2},
		{"21 = 3 x 6 + 3", "fabric A, 42 in x 4 yd\ncut from A\n21 rectangles 5 1/2 x 3 1/2", 4, 2},
		{"two fabrics, the same drawings", "fabric A\nfabric B\ncut from A\n25 squares 5 1/2\ncut from B\n29 squares 5 1/2", 15, 2},
		{"a rectangle across and another along are drawn alike",
			"fabric A\nfabric B\ncut from A\n8 rectangles 5 x 10 1/2\ncut from B\n8 rectangles 10 1/2 x 5", 8, 1},
		{"26 and 12 to two loads: 13 and 6 to each", "fabric A, 42 in x 1 yd\ncut from A\n50 squares 2\n12 half-square triangles 3 finished", 3, 2},
	} {
		q := Make(read(t, "quilt Test\n"+c.lines), Options{})
		if len(q.Loads) != c.loads || layoutsOf(q) > c.layouts {
			t.Errorf("%s: %d loads of %d layouts, want %d of %d", c.why, len(q.Loads), layoutsOf(q), c.loads, c.layouts)
		}
	}
}

// TestLayoutTable prints, with MATSIDE_LONG=1, how many layouts there are
// without and with laying loads alike:
//
//	MATSIDE_LONG=1 go test -run TestLayoutTable -v ./plan
func TestLayoutTable(t *testing.T) {
	if os.Getenv("MATSIDE_LONG") != "1" {
		t.Skip("only with MATSIDE_LONG=1")
	}
	lists := map[string]*cutlist.List{}
	files, err := filepath.Glob("../testdata/cutlists/*.cutlist")
	if err != nil || len(files) == 0 {
		t.Fatal("no cut lists", err)
	}
	var names []string
	add := func(name string, l *cutlist.List) { names, lists[name] = append(names, name), l }
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		l, err := cutlist.Read(f, text, os.ReadFile)
		if err != nil {
			t.Fatal(err)
		}
		add(filepath.Base(f), l)
	}
	for seed := range uint64(12) {
		add("squares and rectangles "+string(rune('a'+seed)), quilt(t, seed, plainPatches))
		add("all shapes "+string(rune('a'+seed)), quilt(t, seed, allPatches))
	}
	add("a quilt of 250", typical(250))
	add("a quilt of 2 500", typical(2500))
	add("1 000 of 40 sizes in 12 fabrics", motley())
	loads, were, are := 0, 0, 0
	t.Logf("%-32s %6s %6s %6s", "cut list", "loads", "apart", "alike")
	for _, name := range names {
		m, a, b := apartAndAlike(lists[name], Options{Effort: rect.Usual})
		before, now := m.emit(a), m.emit(b)
		t.Logf("%-32s %6d %6d %6d", name, len(now.Loads), layoutsOf(before), layoutsOf(now))
		loads, were, are = loads+len(now.Loads), were+layoutsOf(before), are+layoutsOf(now)
	}
	t.Logf("%-32s %6d %6d %6d", "together", loads, were, are)
	if are >= were {
		t.Errorf("%d layouts, without laying loads alike %d", are, were)
	}
}
