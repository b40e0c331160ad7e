package nest

import (
	"os"
	"testing"

	"example.org/matside/plan/rect"
)

// Short: what two small sets come to at quick effort, in about a second.
// MATSIDE_LONG=1: every set within 3 points of the best known at thorough, in
// minutes each.
func TestStripSets(t *testing.T) {
	long := os.Getenv("MATSIDE_LONG") != ""
	short := map[string]float64{"fu": 87, "jakobs1": 79}
	for _, s := range sets {
		least, effort := short[s.name], rect.Quick
		if long {
			least, effort = s.best-3, rect.Thorough
		}
		if least == 0 {
			continue
		}
		t.Run(s.name, func(t *testing.T) {
			h, items, area := s.read(t)
			ps, l := Strip(h, 0, items, Options{Effort: effort})
			if err := soundLayout(l, h, 0, items, ps); err != nil {
				t.Fatal(err)
			}
			density := area / float64(h) / float64(l) * 100
			t.Logf("%.2f %%, best known %.2f %%", density, s.best)
			if density < least {
				t.Errorf("density %.2f %%, want %.2f %%", density, least)
			}
		})
	}
}
