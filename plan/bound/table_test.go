package bound_test

import (
	"encoding/csv"
	"os"
	"strconv"
	"strings"
	"testing"

	"example.org/matside/plan/bound"
	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
)

// instance is one of the classic instances, quarter turns allowed.
type instance struct {
	name  string
	w, h  length.Len
	sizes []rect.Size
	best  int // bins of the best packing known
}

// instances reads the ten classes of Berkey and Wang (1987) and Martello and
// Vigo (1998), best known values as compiled in fontanf/packingsolver: see
// testdata/packing/README.md.
func instances(t testing.TB) (out []instance) {
	t.Helper()
	at := map[string]int{}
	for _, r := range table(t, "best-known-rotation.csv") {
		at[r[0]] = len(out)
		out = append(out, instance{name: r[0], best: number(t, r[1])})
	}
	for _, r := range table(t, "instances.csv") {
		in := &out[at[r[0]]]
		in.w, in.h = length.Len(number(t, r[1])), length.Len(number(t, r[2]))
		in.sizes = append(in.sizes, rect.Size{W: length.Len(number(t, r[4])), H: length.Len(number(t, r[5])), Turn: true, Count: 1})
	}
	return out
}

func table(t testing.TB, name string) [][]string {
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

func number(t testing.TB, s string) int {
	t.Helper()
	n, err := strconv.Atoi(s)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

func (in instance) class() string { return in.name[:strings.LastIndex(in.name, "_")] }

// TestBestKnown holds the bound against the best packings known: never above
// one, and equal on at least four instances in five. Quick already is; with
// MATSIDE_LONG=1 the usual effort is held to the same.
func TestBestKnown(t *testing.T) {
	effort := rect.Quick
	if os.Getenv("MATSIDE_LONG") == "1" {
		effort = rect.Usual
	}
	proved, all := 0, instances(t)
	shares := map[string]int{}
	for _, in := range all {
		got := bound.Bins(in.w, in.h, in.sizes, bound.Options{Effort: effort, Enough: in.best})
		switch {
		case got > in.best:
			t.Errorf("%s: %d bins proved, yet %d are known to do", in.name, got, in.best)
		case got == in.best:
			proved++
			shares[in.class()]++
		default:
			t.Logf("%s: %d proved, best known %d", in.name, got, in.best)
		}
	}
	t.Logf("proved %d of %d: %v", proved, len(all), shares)
	if proved*5 < len(all)*4 {
		t.Errorf("proved %d of %d, want four in five", proved, len(all))
	}
}
