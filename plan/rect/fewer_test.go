package rect_test

import (
	"slices"
	"testing"

	"example.org/matside/plan/length"
)

// lying is an item where it lies: its bin, its top left corner, its size.
type lying struct {
	item       int
	bin        string
	x, y, w, h length.Len
}

func (a *lying) apart(b *lying) bool {
	return a.bin != b.bin || a.x+a.w <= b.x || b.x+b.w <= a.x || a.y+a.h <= b.y || b.y+b.h <= a.y
}

// readLying reads testdata/packing/fewer.csv, by instance.
func readLying(t *testing.T, known map[string]instance) map[string][]lying {
	t.Helper()
	out := map[string][]lying{}
	for _, r := range rows(t, "fewer.csv") {
		item := int(number(t, r[2]))
		size := known[r[0]].sizes[item]
		if r[5] == "true" {
			size.W, size.H = size.H, size.W
		}
		out[r[0]] = append(out[r[0]], lying{item, r[1], number(t, r[3]), number(t, r[4]), size.W, size.H})
	}
	return out
}

// Fewer bins than the best known, found by Pack at Thorough (TestTable prints
// such packings). What packed them has no part in this check: every item
// once, inside its bin, apart from the others.
func TestFewerThanKnown(t *testing.T) {
	known := map[string]instance{}
	for _, in := range load(t) {
		known[in.name] = in
	}
	for name, all := range readLying(t, known) {
		in, bins, items := known[name], map[string]bool{}, map[int]bool{}
		for i, a := range all {
			bins[a.bin], items[a.item] = true, true
			if a.x < 0 || a.y < 0 || a.x+a.w > in.w || a.y+a.h > in.h {
				t.Errorf("%s: item %d is not inside its bin", name, a.item)
			}
			if slices.ContainsFunc(all[:i], func(b lying) bool { return !a.apart(&b) }) {
				t.Errorf("%s: item %d lies on another", name, a.item)
			}
		}
		if len(all) != len(in.sizes) || len(items) != len(in.sizes) {
			t.Errorf("%s: %d items lie in bins, %d of them different, of %d", name, len(all), len(items), len(in.sizes))
		}
		if len(bins) >= in.best {
			t.Errorf("%s: %d bins, no fewer than the best known", name, len(bins))
		}
	}
}
