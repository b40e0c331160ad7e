package plan

import (
	"os"
	"testing"

	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
	"example.org/matside/plan/rect"
	"pgregory.net/rapid"
)

// piecesBox is the box round the pieces of a rough cut.
func piecesBox(l *queue.Load, rough int) outline.Box {
	var all outline.Outline
	for _, p := range l.Pieces {
		if p.RoughCut == rough {
			all = append(all, p.Outline...)
		}
	}
	return all.Bounds()
}

// (1) No rough cut is larger than its pieces need, by a whole step of the
// ruler. (2) One that has its mat to itself lies on whole steps.
func TestRoughCutsOnTheRuler(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := drawList(t)
		step := ruler(l.Unit)
		q := Make(l, Options{Effort: rect.Quick})
		for i := range q.Loads {
			load := &q.Loads[i]
			for k, r := range load.RoughCuts {
				b := piecesBox(load, k)
				if r.Width-b.Width()-2*l.Margin >= step || r.Height-b.Height()-2*l.Margin >= step {
					t.Errorf("load %d: %v x %v is more than %v x %v needs", load.Number, r.Width, r.Height, b.Width(), b.Height())
				}
				if len(load.RoughCuts) == 1 && (r.X%step != 0 || r.Y%step != 0) {
					t.Errorf("load %d lies at %v, %v", load.Number, r.X, r.Y)
				}
			}
		}
	})
}

// The invented quilts are cut and laid on whole eighths
// throughout, though their triangles are not.
func TestWholeEighths(t *testing.T) {
	for _, name := range []string{"gatepost-evening", "first-nine-patch"} {
		text, err := os.ReadFile("../testdata/cutlists/" + name + ".cutlist")
		if err != nil {
			t.Fatal(err)
		}
		l := read(t, string(text))
		step := ruler(l.Unit)
		q := Make(l, Options{Effort: rect.Quick})
		for _, load := range q.Loads {
			for _, r := range load.RoughCuts {
				if r.X%step != 0 || r.Y%step != 0 || r.Width%step != 0 || r.Height%step != 0 {
					t.Errorf("%s, load %d: %v x %v at %v, %v", name, load.Number, r.Width, r.Height, r.X, r.Y)
				}
			}
		}
	}
}
