package nest

import (
	"cmp"
	"math"
	"slices"
)

// A row is equal pieces side by side across the container: where they lie,
// from the row's own top, and how high it is.
type row struct {
	spots []spot
	h     int64
}

// A motif is what a row repeats: one shape, or two by turns.
type motif struct {
	a, b      int   // shapes; b < 0: one only
	dy        int64 // b's top below a's
	ab, ba    int64 // from a to the next b, from b to the next a; one shape: ab
	lift      int64 // a's top below the row's
	h         int64
	tightness float64 // area a height and length: for ranking
}

// pitch is the length after which the row repeats.
func (mo motif) pitch() int64 {
	if mo.b < 0 {
		return mo.ab
	}
	return mo.ab + mo.ba
}

// stack lays one item in rows across the container, each as near to the one
// above as the two rows' shapes and shifts allow: of all stacks of the rows
// considered the one with the most pieces, found by dynamic programming over the
// rows' heights. It returns a few: the best, and the best with fewer rows, which
// leave more room below.
func (m *model) stack(item, limit int) [][]spot {
	rows := m.rows(item)
	if len(rows) == 0 {
		return nil
	}
	return m.piles(rows, limit)
}

// rightOf is the least distance at which shape b stands clear to the right of
// shape a, its top dy below a's; false if they never meet.
func (m *model) rightOf(a, b int, dy int64) (int64, bool) {
	r := m.region(a, b)
	far, met := int64(math.MinInt64), false
	for i := range r.parts {
		if _, x, ok := r.parts[i].stretch(level, dy); ok {
			far, met = max(far, x), true
		}
	}
	return far, met
}

// below is the least distance at which shape b lies clear below shape a, dx to
// its right; false if they never meet.
func (m *model) below(a, b int, dx int64) (int64, bool) {
	r := m.region(a, b)
	far, met := int64(math.MinInt64), false
	for i := range r.parts {
		if _, y, ok := r.parts[i].stretch(upright, dx); ok {
			far, met = max(far, y), true
		}
	}
	return far, met
}

// Rows considered: of the tightest motifs only.
const maxMotifs = 10

// motifs are the item's tightest motifs.
func (m *model) motifs(item int) []motif {
	var out []motif
	for _, a := range m.turns[item] {
		if d, ok := m.rightOf(a, a, 0); ok {
			out = append(out, motif{a: a, b: -1, ab: d, h: m.shapes[a].h})
		}
		for _, b := range m.turns[item] {
			if a == b {
				continue
			}
			for _, dy := range slices.Compact([]int64{0, m.shapes[a].h - m.shapes[b].h}) {
				if mo, ok := m.pair(a, b, dy); ok {
					out = append(out, mo)
				}
			}
		}
	}
	for i := range out {
		n := 1.0
		if out[i].b >= 0 {
			n = 2
		}
		out[i].tightness = n * m.area[item] / float64(out[i].pitch()) / float64(out[i].h)
	}
	slices.SortStableFunc(out, func(a, b motif) int { return cmp.Compare(b.tightness, a.tightness) })
	return out[:min(len(out), maxMotifs)]
}

// pair is the motif of a and b by turns, b's top dy below a's.
func (m *model) pair(a, b int, dy int64) (motif, bool) {
	ab, ok1 := m.rightOf(a, b, dy)
	ba, ok2 := m.rightOf(b, a, -dy)
	if !ok1 || !ok2 {
		return motif{}, false
	}
	aa, _ := m.rightOf(a, a, 0)
	bb, _ := m.rightOf(b, b, 0)
	ba += max(0, max(aa, bb)-ab-ba)
	lift := max(0, -dy)
	return motif{
		a: a, b: b, dy: dy, ab: ab, ba: ba, lift: lift,
		h: max(lift+m.shapes[a].h, lift+dy+m.shapes[b].h),
	}, true
}

// rows are the rows of the item's motifs: as many pieces as there is room for
// and one fewer, at several shifts.
func (m *model) rows(item int) []row {
	var out []row
	for _, mo := range m.motifs(item) {
		full := m.rowOf(mo, math.MaxInt)
		for n := len(full); n > 0 && n >= len(full)-1; n-- {
			slack := m.w - m.width(full[:n])
			for _, by := range shifts(slack, mo) {
				out = append(out, row{shifted(full[:n], by), mo.h})
			}
			if n > 1 && slack > 0 {
				out = append(out, row{spread(full[:n], slack), mo.h})
			}
		}
	}
	return out
}

// shifts are how far right a row may start: at either side, in the middle, half
// a pitch and a quarter in, from either side.
func shifts(slack int64, mo motif) []int64 {
	p := mo.pitch()
	var out []int64
	for _, d := range []int64{0, slack, slack / 2, p / 2, slack - p/2, p / 4, slack - p/4, mo.ab, slack - mo.ab} {
		if d >= 0 && d <= slack {
			out = append(out, d)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

func shifted(spots []spot, by int64) []spot {
	out := slices.Clone(spots)
	for i := range out {
		out[i].at.x += by
	}
	return out
}

// spread shares the slack out among the gaps.
func spread(spots []spot, slack int64) []spot {
	out := slices.Clone(spots)
	for i := range out {
		out[i].at.x += slack * int64(i) / int64(len(out)-1)
	}
	return out
}

// rowOf is up to n pieces of a motif from the left side.
func (m *model) rowOf(mo motif, n int) []spot {
	var out []spot
	x := int64(0)
	for i := 0; i < n; i++ {
		p := spot{mo.a, vec{x, mo.lift}}
		step := mo.ab
		if mo.b >= 0 && i%2 == 1 {
			p, step = spot{mo.b, vec{x, mo.lift + mo.dy}}, mo.ba
		}
		// A piece may reach less far right than the one before it, but never start left of the side.
		if x < 0 || x+m.shapes[p.shape].w > m.w || step <= 0 && mo.pitch() <= 0 {
			break
		}
		out = append(out, p)
		x += step
	}
	return out
}

func (m *model) width(spots []spot) int64 { return m.reach(spots) }

// gapBelow is the least distance from the top of row a to the top of row b at
// which b lies clear below a.
func (m *model) gapBelow(a, b *row) int64 {
	var d int64
	for _, p := range a.spots {
		for _, q := range b.spots {
			if y, ok := m.below(p.shape, q.shape, q.at.x-p.at.x); ok {
				d = max(d, p.at.y+y-q.at.y)
			}
		}
	}
	return d
}
