package nest

import (
	"fmt"
	"os"
	"reflect"
	"runtime"
	"testing"
	"text/tabwriter"
	"time"

	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
)

// Short: what a small set comes to at quick effort, in about a second.
// MATSIDE_LONG=1: every set within 3 points of the best known at thorough, and a
// table of what they come to.
func TestStripSets(t *testing.T) {
	effort, least := rect.Quick, map[string]float64{"fu": 87}
	if os.Getenv("MATSIDE_LONG") != "" {
		effort = rect.Thorough
		for _, s := range sets {
			least[s.name] = s.best - 3
		}
	}
	table := tabwriter.NewWriter(os.Stdout, 0, 0, 2, ' ', tabwriter.AlignRight)
	if testing.Verbose() {
		fmt.Fprintln(table, "set\tbest known %\tours %\tdifference\tseconds\twork, millions\t")
		defer table.Flush()
	}
	for _, s := range sets {
		if least[s.name] == 0 {
			continue
		}
		t.Run(s.name, func(t *testing.T) {
			h, items, area := s.read(t)
			began := time.Now()
			m, ok := newStrip(h, 0, items)
			if !ok {
				t.Fatal("a piece fits at no turn")
			}
			spots, work := m.strip(stripEfforts[effort], Options{})
			l := length.Len(m.reach(spots))
			if err := soundLayout(l, h, 0, items, m.placed(spots)); err != nil {
				t.Fatal(err)
			}
			density := area / float64(h) / float64(l) * 100
			fmt.Fprintf(table, "%s\t%.2f\t%.2f\t%+.2f\t%.1f\t%d\t\n", s.name, s.best, density, density-s.best, time.Since(began).Seconds(), work/1e6)
			if density < least[s.name] {
				t.Errorf("density %.2f %%, want %.2f %%", density, least[s.name])
			}
		})
	}
}

// Searches side by side come to the same layout on one core as on two.
func TestStripSameOnAnyCores(t *testing.T) {
	h, items, _ := sets[2].read(t)
	lay := func(cores int) []spot {
		defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(cores))
		m, _ := newStrip(h, 0, items)
		spots, _ := m.strip(stripEffort{2, 5_000_000}, Options{})
		return spots
	}
	one := lay(1)
	if two := lay(2); !reflect.DeepEqual(one, two) {
		t.Error("another layout on two cores")
	}
}

// The caller's stop is asked on the caller's goroutine alone, and reaches all.
func TestSideBySideStops(t *testing.T) {
	asked := 0 // without a lock: -race tells if another goroutine asks
	stop := func() bool { asked++; return asked > 100 }
	var laps [3]int
	sideBySide(len(laps), stop, func(i int, stop func() bool) {
		for !stop() {
			laps[i]++
			runtime.Gosched()
		}
	})
	if asked <= 100 {
		t.Errorf("asked %d times", asked)
	}
}
