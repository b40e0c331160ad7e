package plan

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/queue"
	"pgregory.net/rapid"
)

func read(t *testing.T, text string) *cutlist.List {
	t.Helper()
	l, err := cutlist.Read("test", []byte(text), nil)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// told is changes as short words: "Ink square 2 1/2 A 24 -> 30".
func told(all []LineChange) string {
	var out []string
	for _, c := range all {
		side := func(l *cutlist.Line) string {
			if l == nil {
				return "none"
			}
			return strings.TrimSpace(l.Shape + " " + l.Size + " " + l.Label)
		}
		out = append(out, fmt.Sprintf("%s: %s, %d -> %s, %d", c.Fabric, side(c.Old), c.Before, side(c.New), c.After))
	}
	return strings.Join(out, "\n")
}

func TestCompareLists(t *testing.T) {
	const head = "quilt Test\nfabric Ink\nfabric Sand\n"
	for _, c := range []struct{ name, old, now, want string }{
		{"nothing", "cut from Ink\n3 squares 2", "cut from Ink\n# again\n3 squares 2", ""},
		{"more", "cut from Ink\n24 squares 2 1/2 for A", "cut from Ink\n30 squares 2 1/2 for A",
			"Ink: square 2 1/2 A, 24 -> square 2 1/2 A, 30"},
		{"a line in two", "cut from Ink\n24 squares 2", "cut from Ink\n20 squares 2\n4 squares 2", ""},
		{"moved about", "cut from Ink\n2 squares 2\n3 squares 3", "cut from Ink\n3 squares 3\n2 squares 2", ""},
		{"come and gone", "cut from Ink\n2 squares 2 for A", "cut from Sand\n2 squares 2 for A",
			"Sand: none, 0 -> square 2 A, 2\nInk: square 2 A, 2 -> none, 0"},
		{"another label", "cut from Ink\n2 squares 2 for A", "cut from Ink\n2 squares 2 for B",
			"Ink: square 2 A, 2 -> square 2 B, 2"},
		{"another size", "cut from Ink\n2 squares 2 for A", "cut from Ink\n3 squares 2 1/4 for A",
			"Ink: square 2 A, 2 -> square 2 1/4 A, 3"},
		{"which of two, nobody can tell", "cut from Ink\n2 squares 2\n3 squares 3", "cut from Ink\n2 squares 4",
			"Ink: none, 0 -> square 4, 2\nInk: square 2, 2 -> none, 0\nInk: square 3, 3 -> none, 0"},
		{"binding", "cut from Ink\nbinding 2 1/2 around 40 x 50", "cut from Ink\nbinding 2 1/2 around 44 x 52",
			"Ink: binding 2 1/2 around 40 x 50, 1 -> binding 2 1/2 around 44 x 52, 1"},
	} {
		if got := told(CompareLists(read(t, head+c.old), read(t, head+c.now))); got != c.want {
			t.Errorf("%s:\n%s\nwant\n%s", c.name, got, c.want)
		}
	}
}

// What is not a piece: mat, margins, fabrics, and how many loads there were.
func TestCompare(t *testing.T) {
	old := read(t, "quilt Test\nfabric Ink, 42 in x 1 yd\nfabric Sand\ncut from Ink\n2 squares 2")
	now := read(t, "quilt Test\nmargin 1/2\nfabric Ink, 42 in x 2 yd\nfabric Moss\ncut from Ink\n2 squares 2")
	c := Compare(&queue.Queue{List: old, Loads: make([]queue.Load, 3)}, &queue.Queue{List: now, Loads: make([]queue.Load, 4)})
	if len(c.Lines) != 0 || !c.Mat || c.LoadsBefore != 3 || c.LoadsAfter != 4 {
		t.Errorf("%+v", c)
	}
	var names []string
	for _, f := range c.Fabrics {
		switch {
		case f.Old == nil:
			names = append(names, "+"+f.New.Name)
		case f.New == nil:
			names = append(names, "-"+f.Old.Name)
		default:
			names = append(names, f.New.Name)
		}
	}
	if !slices.Equal(names, []string{"Ink", "+Moss", "-Sand"}) {
		t.Errorf("fabrics %v", names)
	}
	if c := Compare(&queue.Queue{List: old}, &queue.Queue{List: old}); c.Mat || len(c.Fabrics) > 0 {
		t.Errorf("the same list: %+v", c)
	}
}

// The laws of CompareLists: (1) shuffled it is the same; (2) the sums agree.
// And nothing is told twice.
func TestCompareLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		old := drawList(t)
		now := *old
		now.Lines = rapid.Permutation(old.Lines).Draw(t, "order")
		if c := CompareLists(old, &now); len(c) > 0 {
			t.Fatalf("another order: %s", told(c))
		}
		now.Lines = slices.Clone(old.Lines)
		for range rapid.IntRange(0, 4).Draw(t, "edits") {
			i := rapid.IntRange(0, len(now.Lines)-1).Draw(t, "line")
			switch rapid.IntRange(0, 3).Draw(t, "edit") {
			case 0:
				now.Lines[i].Count++
			case 1:
				now.Lines[i].Label += "x"
			case 2:
				now.Lines[i] = drawLine(t, len(now.Fabrics), 99)
			case 3:
				now.Lines = append(now.Lines, drawLine(t, len(now.Fabrics), 100))
			}
		}
		sum := 0
		seen := map[*cutlist.Line]bool{}
		for _, c := range CompareLists(old, &now) {
			sum += c.After - c.Before
			for _, l := range []*cutlist.Line{c.Old, c.New} {
				if l != nil && seen[l] {
					t.Errorf("%s is told twice", l.Say())
				}
				seen[l] = true
			}
		}
		if want := pieces(&now) - pieces(old); sum != want {
			t.Errorf("changes sum to %d, the lists differ by %d", sum, want)
		}
	})
}

func pieces(l *cutlist.List) (n int) {
	for i := range l.Lines {
		if l.Lines[i].Kind == cutlist.Binding {
			n++
			continue
		}
		n += l.Lines[i].Count
	}
	return n
}
