package plan

import (
	"fmt"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"example.org/matside/plan/check"
	"example.org/matside/plan/cutlist"
)

// quiltText makes up a cut list as a quilt's pattern would have it: two to
// six fabrics, each cut into one to four kinds of patches whose finished sizes
// belong together, as many as blocks ask for. All of it is invented.
func quiltText(seed uint64, kinds int) string {
	r := rand.New(rand.NewPCG(seed, 11))
	var b strings.Builder
	fmt.Fprintf(&b, "quilt Made Up %d\nunits in\nseam 1/4\n", seed)
	unit := []float64{1.5, 2, 2, 2.5, 3}[r.IntN(5)] // the grid that the blocks are drawn on
	names := []string{"Plum", "Oat", "Fern", "Rust", "Slate", "Chalk"}[:2+r.IntN(5)]
	for _, n := range names {
		fmt.Fprintf(&b, "fabric %s%s\n", n, []string{"", "", ", 42 in x 8 yd", ", 30 of 18 x 21", ", 42 in x 8 yd, one-way"}[r.IntN(5)])
	}
	blocks := 4 + r.IntN(21)
	for _, n := range names {
		fmt.Fprintf(&b, "cut from %s\n", n)
		for range 1 + r.IntN(3) {
			count := max(4, min(150, blocks*[]int{1, 1, 2, 4, 4}[r.IntN(5)]))
			fmt.Fprintf(&b, "%d %s\n", count, quiltPatch(r, unit, kinds))
		}
	}
	return b.String()
}

func quiltPatch(r *rand.Rand, unit float64, kinds int) string {
	k := func(n int) float64 { return unit * float64(1+r.IntN(n)) }
	switch r.IntN(kinds) {
	case 0, 1, 2:
		return fmt.Sprintf("squares %v finished", min(k(3), 6))
	case 3, 4, 5:
		return fmt.Sprintf("rectangles %v x %v finished", k(2), min(k(4), 9))
	case 6, 7, 8:
		return fmt.Sprintf("half-square triangles %v finished", k(2))
	case 9:
		return fmt.Sprintf("quarter-square triangles %v finished", 2*unit)
	}
	return fmt.Sprintf("hexagons %v", 1+float64(r.IntN(5))/4)
}

// What a quilt is made of: squares and rectangles, or triangles and hexagons
// as well.
const (
	plainPatches = 6
	allPatches   = 11
)

func quilt(t testing.TB, seed uint64, kinds int) *cutlist.List {
	text := quiltText(seed, kinds)
	l, err := cutlist.Read("made up", []byte(text), os.ReadFile)
	if err != nil {
		t.Fatalf("%v in\n%s", err, text)
	}
	return l
}

// quilts is how many made-up quilts are planned.
func quilts() uint64 {
	if os.Getenv("MATSIDE_LONG") == "1" {
		return 30
	}
	return 3
}

// No plan of a made-up quilt has a fault or fewer loads than can be; of those
// in squares and rectangles alone most are proved.
func TestQuilts(t *testing.T) {
	for _, kinds := range []int{plainPatches, allPatches} {
		proved, loads, fewest := 0, 0, 0
		for seed := range quilts() {
			q := Make(quilt(t, seed, kinds), Options{})
			for _, f := range check.Check(q) {
				t.Errorf("quilt %d of %d: %s", seed, kinds, f)
			}
			if q.Fewest.Loads > len(q.Loads) {
				t.Errorf("quilt %d of %d: %d loads, but no fewer than %d can be", seed, kinds, len(q.Loads), q.Fewest.Loads)
			}
			if q.Fewest.Proved {
				proved++
			}
			loads += len(q.Loads)
			fewest += q.Fewest.Loads
			t.Logf("quilt %d of %d: %d loads, fewest %d, %d pieces", seed, kinds, len(q.Loads), q.Fewest.Loads, total(q.List))
		}
		t.Logf("%d of %d proved; %d loads, bounds %d", proved, quilts(), loads, fewest)
		if kinds == plainPatches && uint64(2*proved) <= quilts() {
			t.Errorf("only %d of %d proved", proved, quilts())
		}
	}
}

func total(l *cutlist.List) (n int) {
	for i := range l.Lines {
		n += l.Lines[i].Count
	}
	return n
}
