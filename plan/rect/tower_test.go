package rect

import (
	"testing"

	"example.org/matside/plan/length"
	"pgregory.net/rapid"
)

// TestTowerPacks builds towers of random pieces, at the width and height of a
// few bins: each piece lies within one bin, none shares area with another, no
// kind comes more often than asked.
func TestTowerPacks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := rapid.Int64Range(1, 30).Draw(t, "W")
		h := rapid.Int64Range(1, 30).Draw(t, "H")
		sizes := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Size {
			return Size{
				W:     length.Len(rapid.Int64Range(1, w).Draw(t, "w")),
				H:     length.Len(rapid.Int64Range(1, h).Draw(t, "h")),
				Turn:  rapid.Bool().Draw(t, "turn"),
				Count: rapid.IntRange(1, 4).Draw(t, "count"),
			}
		}), 1, 8).Draw(t, "sizes")
		bins := rapid.IntRange(1, 4).Draw(t, "bins")
		m := manner{
			width: rapid.SampledFrom([]int{1, 5, 40}).Draw(t, "width"),
			skips: rapid.IntRange(0, 2).Draw(t, "skips"),
			both:  rapid.Bool().Draw(t, "both"),
		}
		p := newProblem(length.Len(w), length.Len(h), sizes, nil)
		b := newBeam(p.w, p.h, p.kinds)
		b.stack(bins)
		v := newSearch(p, Options{}).worth(1)
		spots, worth := b.run(p.counts(), v, v, m)
		pats := p.storeys(spots, bins)
		if len(pats) > bins {
			t.Fatalf("%d bins of %d", len(pats), bins)
		}
		left, got := p.counts(), 0.0
		for _, pat := range pats {
			for i, s := range pat.spots {
				left[s.kind]--
				got += v[s.kind]
				kw, kh := p.laid(s)
				if s.x < 0 || s.y < 0 || s.x+kw > p.w || s.y+kh > p.h {
					t.Fatalf("%v sticks out of %d x %d", s, p.w, p.h)
				}
				for _, o := range pat.spots[:i] {
					ow, oh := p.laid(o)
					if s.x < o.x+ow && o.x < s.x+kw && s.y < o.y+oh && o.y < s.y+kh {
						t.Fatalf("%v and %v overlap", s, o)
					}
				}
			}
		}
		for k, n := range left {
			if n < 0 {
				t.Fatalf("kind %d too often", k)
			}
		}
		if d := got - worth; d > 1e-6*worth || d < -1e-6*worth {
			t.Fatalf("worth %g, said to be %g", got, worth)
		}
	})
}

// laid is how wide and high a spot's piece lies.
func (p *problem) laid(s spot) (w, h int64) {
	k := p.kinds[s.kind]
	if s.turned {
		return k.h, k.w
	}
	return k.w, k.h
}
