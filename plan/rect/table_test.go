package rect_test

import (
	"encoding/csv"
	"os"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

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
	read := func(name string) [][]string {
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
	num := func(s string) length.Len {
		n, err := strconv.ParseInt(s, 10, 64)
		if err != nil {
			t.Fatal(err)
		}
		return length.Len(n)
	}
	best := map[string]int{}
	for _, r := range read("best-known-rotation.csv") {
		best[r[0]] = int(num(r[1]))
	}
	var all []instance
	for _, r := range read("instances.csv") {
		if len(all) == 0 || all[len(all)-1].name != r[0] {
			all = append(all, instance{name: r[0], w: num(r[1]), h: num(r[2]), best: best[r[0]]})
		}
		in := &all[len(all)-1]
		in.sizes = append(in.sizes, rect.Size{W: num(r[4]), H: num(r[5]), Turn: true, Count: 1})
	}
	return all
}

// TestTable prints bins against the best known by class, a sample by default,
// all 250 instances with MATSIDE_LONG=1 (CLASS=class_03 picks some). The search
// may stop at the best known; it is allowed 10 bins more in all.
func TestTable(t *testing.T) {
	want, long := os.Getenv("CLASS"), os.Getenv("MATSIDE_LONG") != ""
	type sum struct {
		n, bins, best, more, fewer int
		dur                        time.Duration
	}
	byClass := map[string]*sum{}
	var names []string
	var total sum
	for _, in := range load(t) {
		if !strings.Contains(in.name, want) || want == "" && !long && !strings.HasSuffix(in.name, "_20_1") {
			continue
		}
		class := in.name[:8]
		c := byClass[class]
		if c == nil {
			c = new(sum)
			byClass[class] = c
			names = append(names, class)
		}
		start := cpu()
		bins, err := rect.Pack(in.w, in.h, in.sizes, rect.Options{Lower: in.best})
		dur := cpu() - start
		if err != nil {
			t.Fatal(err)
		}
		check(t, in.w, in.h, in.sizes, bins, true)
		for _, s := range []*sum{c, &total} {
			s.n++
			s.bins += len(bins)
			s.best += in.best
			s.more += max(0, len(bins)-in.best)
			s.fewer += max(0, in.best-len(bins))
			s.dur += dur
		}
	}
	for _, n := range names {
		c := byClass[n]
		t.Logf("%-12s %3d instances %5d bins, best known %5d (+%d -%d) %8.1f ms each", n, c.n, c.bins, c.best, c.more, c.fewer, float64(c.dur.Microseconds())/1000/float64(c.n))
	}
	if total.bins > total.best+10 {
		t.Errorf("%d bins, best known %d", total.bins, total.best)
	}
	t.Logf("%-12s %3d instances %5d bins, best known %5d (+%d -%d) %8.1f ms each", "all", total.n, total.bins, total.best, total.more, total.fewer, float64(total.dur.Microseconds())/1000/float64(total.n))
}

// cpu is the processor time used: the machine may be busy with other things.
func cpu() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		return 0
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}
