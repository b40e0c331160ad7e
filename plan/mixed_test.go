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

// mixedText makes up a cut list of 20 to 120 pieces in which most lines are
// no rectangles: one fabric or two, one to four lines, on either usual mat.
func mixedText(seed uint64) string {
	r := rand.New(rand.NewPCG(seed, 77))
	long := r.IntN(4) == 0
	names := []string{"Plum", "Oat"}[:1+r.IntN(2)]
	pieces, lines := 20+r.IntN(101), max(1+r.IntN(4), len(names))
	unit := []float64{1.5, 2, 2.5, 3}[r.IntN(4)]
	var cut strings.Builder
	for i := range lines {
		kind := r.IntN(13)
		if i == 0 {
			kind = 4 + r.IntN(9)
		}
		fmt.Fprintf(&cut, "cut from %s\n%d %s\n", names[i%len(names)], max(2, pieces/lines), mixedPatch(r, unit, kind))
	}
	var b strings.Builder
	fmt.Fprintf(&b, "quilt Made Up %d\n", seed)
	if long {
		b.WriteString("mat 12 x 24 usable 11 x 23\n")
	}
	w := 2 + float64(r.IntN(3))/2
	fmt.Fprintf(&b, "outline Kite: 0,%v %v,0 %v,%v %v,%v\n", w, w/2, w, w, w/2, 1.6*w)
	for _, n := range names {
		fmt.Fprintf(&b, "fabric %s\n", n)
	}
	return b.String() + cut.String()
}

func mixedPatch(r *rand.Rand, unit float64, kind int) string {
	k := func(n int) float64 { return unit * float64(1+r.IntN(n)) }
	half := func(from float64, n int) float64 { return from + float64(r.IntN(n))/2 }
	switch kind {
	case 0, 1:
		return fmt.Sprintf("squares %v finished", k(2))
	case 2, 3:
		return fmt.Sprintf("rectangles %v x %v finished", k(2), k(3))
	case 4, 5:
		return fmt.Sprintf("half-square triangles %v finished", k(2))
	case 6:
		return fmt.Sprintf("quarter-square triangles %v finished", 2*unit)
	case 7:
		return fmt.Sprintf("quarter-square triangles %v finished", min(2*k(2), 8))
	case 8:
		return fmt.Sprintf("hexagons %v", 1+float64(r.IntN(6))/4)
	case 9:
		return fmt.Sprintf("diamonds %d %v finished", []int{45, 60}[r.IntN(2)], half(1.5, 4))
	case 10:
		return fmt.Sprintf("tumblers %v x %v x %v", half(2.5, 4), half(1.5, 2), half(2, 5))
	case 11:
		return fmt.Sprintf("equilateral triangles height %v", half(2.5, 5))
	}
	return "outlines Kite"
}

// fewestMixed is how many of 60 mixed lists are proved at the least: one less
// than there were when this was written, as a packing may change.
const fewestMixed = 17

// Of mixed lists as many stay proved as have been. The long form plans 60 and
// prints the loads, the bound, and the bound by area alone; the short form
// has some that area does not prove.
//
//	MATSIDE_LONG=1 go test -run TestMixed -v ./plan
func TestMixed(t *testing.T) {
	seeds, want := mixedProved, len(mixedProved)
	if os.Getenv("MATSIDE_LONG") == "1" {
		seeds, want = nil, fewestMixed
		for s := range uint64(60) {
			seeds = append(seeds, s)
		}
	}
	proved, loads, fewest := 0, 0, 0
	for _, seed := range seeds {
		text := mixedText(seed)
		l, err := cutlist.Read("made up", []byte(text), os.ReadFile)
		if err != nil {
			t.Fatalf("%v in\n%s", err, text)
		}
		q := Make(l, Options{})
		for _, f := range check.Check(q) {
			t.Errorf("list %d: %s", seed, f)
		}
		if q.Fewest.Loads > len(q.Loads) {
			t.Errorf("list %d: %d loads, but no fewer than %d can be", seed, len(q.Loads), q.Fewest.Loads)
		}
		if q.Fewest.Proved {
			proved++
		}
		loads, fewest = loads+len(q.Loads), fewest+q.Fewest.Loads
		m := newMaker(l, Options{})
		t.Logf("list %d: %d loads, fewest %d, by area %d, %d pieces", seed, len(q.Loads), q.Fewest.Loads, m.byArea(m.job.Counts()), total(l))
	}
	t.Logf("%d of %d proved; %d loads, bounds %d", proved, len(seeds), loads, fewest)
	if proved < want {
		t.Errorf("%d of %d proved, it were %d", proved, len(seeds), want)
	}
}

// mixedProved are lists proved by more than area.
var mixedProved = []uint64{6, 24, 27, 48, 49}
