package session

import (
	"strings"
	"testing"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/queue"
	"pgregory.net/rapid"
)

// TestLeftovers: of a quilt under way what will be left, of a finished one
// what is; panels never cut into count, scraps don't.
func TestLeftovers(t *testing.T) {
	list := smallList(0, 4)
	list.Fabrics[1].Stock = []cutlist.Panel{{Width: 21 * length.Inch, Height: 18 * length.Inch}, {Width: 10 * length.Inch, Height: 12 * length.Inch}}
	list.Fabrics[1].ShrinkAcross = 50_000
	plan, _ := fourToALoad(list, Wish{Wanted: allOf(list)})
	plan.Stock[0] = queue.PanelUse{Fabric: 1, Panel: 1, Width: 21 * length.Inch, Height: 18 * length.Inch,
		RoughCuts: []queue.FromPanel{{Load: 1, Width: 11 * length.Inch, Height: 11 * length.Inch}}}
	l := New(OpenOptions{Now: clock(), Planner: fourToALoad})
	id, s, err := l.Start(Start{List: list, Queue: plan})
	if err != nil {
		t.Fatal(err)
	}
	want := "# left of Lamp Room\nfabric Sand, 10 in x 18 in, 9 1/2 in x 12 in, 11 in x 7 in\n"
	text := func(q *Quilt) string { return CutListText(q.Name, q.List().Unit, q.Leftovers()) }
	if got := text(s.Quilt(id)); got != want {
		t.Errorf("under way: %q, want %q", got, want)
	}
	if q := do(t, l, id, Finish{}); !strings.Contains(text(q), "21 in x 18 in") {
		t.Errorf("given up before the first cut: %q", text(q))
	}
}

// TestCutListText: what is written is read back as it is.
func TestCutListText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		unit := rapid.SampledFrom([]length.Unit{length.In, length.Cm, length.Mm}).Draw(t, "unit")
		var left []Leftover
		names := rapid.SliceOfNDistinct(rapid.SampledFrom([]string{"Ink", "Sand, washed", "no. #4", "Two  blanks", "from Ink", "4 of 5"}), 1, 4, rapid.ID).Draw(t, "names")
		for _, name := range names {
			f := cutlist.Fabric{Name: name, OneWay: rapid.Bool().Draw(t, "one-way"), Sheds: rapid.Bool().Draw(t, "sheds"),
				FaceDown: rapid.Bool().Draw(t, "face down"), Setting: rapid.SampledFrom([]string{"", "felt", "thin, twice"}).Draw(t, "setting")}
			for range rapid.IntRange(1, 3).Draw(t, "sizes") {
				size := func() length.Len {
					return down(length.Len(rapid.Int64Range(int64(3*length.Inch), int64(100*length.Inch)).Draw(t, "size")), unit)
				}
				left = append(left, Leftover{f, size(), size(), rapid.IntRange(1, 3).Draw(t, "count")})
			}
		}
		text := CutListText("Lamp Room", unit, left) + "quilt Next\ncut from \"" + left[0].Fabric.Name + "\"\n1 square 2\n"
		list, err := cutlist.Read("next", []byte(text), nil)
		if err != nil {
			t.Fatalf("%v in\n%s", err, text)
		}
		var got []cutlist.Panel
		for i, f := range list.Fabrics {
			if f.Name != names[i] {
				t.Errorf("fabric %q, want %q", f.Name, names[i])
			}
			got = append(got, f.Stock...)
		}
		n := 0
		for _, l := range left {
			for range l.Count {
				if n >= len(got) || got[n] != (cutlist.Panel{Width: l.Width, Height: l.Height}) {
					t.Fatalf("panel %d is lost in\n%s", n, text)
				}
				n++
			}
		}
	})
}
