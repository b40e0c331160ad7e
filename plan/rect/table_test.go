package rect_test

import (
	"cmp"
	"encoding/csv"
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/matside/plan/bound"
	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
)

// instance is one of the classic bin packing instances: see
// testdata/packing/README.md for where they come from.
type instance struct {
	name  string
	w, h  length.Len
	sizes []rect.Size
	best  int // bins of the best packing known
}

func load(t testing.TB) []instance {
	t.Helper()
	best := map[string]int{}
	for _, r := range rows(t, "best-known-rotation.csv") {
		best[r[0]] = int(number(t, r[1]))
	}
	var all []instance
	for _, r := range rows(t, "instances.csv") {
		if len(all) == 0 || all[len(all)-1].name != r[0] {
			all = append(all, instance{name: r[0], w: number(t, r[1]), h: number(t, r[2]), best: best[r[0]]})
		}
		in := &all[len(all)-1]
		in.sizes = append(in.sizes, rect.Size{W: number(t, r[4]), H: number(t, r[5]), Turn: true, Count: 1})
	}
	return all
}

// rows reads a table of testdata/packing without its heading.
func rows(t testing.TB, name string) [][]string {
	t.Helper()
	f, err := os.Open("../../testdata/packing/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows[1:]
}

func number(t testing.TB, s string) length.Len {
	t.Helper()
	n, err := strconv.ParseInt(s, 10, 64)
	if err != nil {
		t.Fatal(err)
	}
	return length.Len(n)
}

// sum adds up a class's results.
type sum struct {
	n, bins, best, more, fewer, proved int
	spent                              time.Duration
}

func (s *sum) add(bins, best, lower int, spent time.Duration) {
	s.n++
	s.bins += bins
	s.best += best
	s.more += max(0, bins-best)
	s.fewer += max(0, best-bins)
	if lower == bins {
		s.proved++
	}
	s.spent += spent
}

func (s *sum) log(t *testing.T, name string) {
	t.Logf("%-9s %3d instances %5d bins, best known %5d (+%d -%d), proved %3d, %7.1f ms each",
		name, s.n, s.bins, s.best, s.more, s.fewer, s.proved, float64(s.spent.Microseconds())/1000/float64(s.n))
}

// TestTable packs the classic instances, a sample of them or with
// MATSIDE_LONG=1 all 250, told nothing but what package bound proves, and
// prints bins, best known, proved and processor time by class. CLASS=class_03
// picks some, EFFORT=thorough tries harder.
func TestTable(t *testing.T) {
	want, long := os.Getenv("CLASS"), os.Getenv("MATSIDE_LONG") != ""
	effort, most := rect.Usual, 3391
	if os.Getenv("EFFORT") == "thorough" {
		effort, most = rect.Thorough, 3383
	}
	var all sum
	var names []string
	byClass := map[string]*sum{}
	for _, in := range load(t) {
		if !strings.Contains(in.name, want) || want == "" && !long && !strings.HasSuffix(in.name, "_20_1") {
			continue
		}
		bins, lower, spent := in.pack(t, effort)
		class := in.name[:8]
		if byClass[class] == nil {
			byClass[class] = new(sum)
			names = append(names, class)
		}
		byClass[class].add(len(bins), in.best, lower, spent)
		all.add(len(bins), in.best, lower, spent)
		switch {
		case len(bins) < in.best:
			t.Logf("%s: %d bins, FEWER than the best known %d:%s", in.name, len(bins), in.best, in.written(bins))
		case len(bins) > in.best:
			t.Logf("%s: %d bins, best known %d, proved %d", in.name, len(bins), in.best, lower)
		}
	}
	for _, n := range names {
		byClass[n].log(t, n)
	}
	all.log(t, "all")
	if all.n == 250 && all.bins > most {
		t.Errorf("%d bins, want %d at the most", all.bins, most)
	}
	if all.more*100 > all.best {
		t.Errorf("%d bins over the best known", all.more)
	}
}

// written is a packing as lines for testdata/packing/fewer.csv.
func (in *instance) written(bins []rect.Bin) string {
	var b strings.Builder
	for n, bin := range bins {
		for _, p := range bin {
			fmt.Fprintf(&b, "\n%s,%d,%d,%d,%d,%t", in.name, n, p.Size, int64(p.X), int64(p.Y), p.Turned)
		}
	}
	return b.String()
}

// pack packs an instance and checks the packing; the time spent includes the
// bound that the packing is told.
func (in *instance) pack(t *testing.T, effort rect.Effort) (bins []rect.Bin, lower int, spent time.Duration) {
	start := cpu()
	lower = bound.Bins(in.w, in.h, in.sizes, bound.Options{Effort: rect.Quick})
	if effort == rect.Thorough { // worth it before a long search
		lower = bound.Bins(in.w, in.h, in.sizes, bound.Options{})
	}
	bins, err := rect.Pack(in.w, in.h, in.sizes, rect.Options{Effort: effort, Lower: lower})
	spent = cpu() - start
	if err != nil {
		t.Fatal(err)
	}
	check(t, in.w, in.h, in.sizes, bins, true)
	if len(bins) > lower {
		lower = bound.Bins(in.w, in.h, in.sizes, bound.Options{Effort: cmp.Or(effort, rect.Usual), Enough: len(bins)})
	}
	if len(bins) < lower {
		t.Fatalf("%s: %d bins, yet %d proved", in.name, len(bins), lower)
	}
	return bins, lower, spent
}
