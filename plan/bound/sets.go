package bound

import (
	"slices"

	"example.org/matside/plan/internal/cores"
	"example.org/matside/plan/length"
)

// mostPins is how many sets of pins are stuck.
const mostPins = 6

// stick sticks pins and returns the loads that they prove, whatever fabrics
// share a mat. Where there are rectangles alone it leaves it.
func (s *sharing) stick(opt Options, spent spending) int {
	sets := s.pinSets()
	spent.pins /= max(1, len(sets))
	best := 0
	for next := range slices.Chunk(sets, 2) { // at once: more could be too many
		found := make([]*pins, len(next))
		cores.Each(len(next), func(i int) {
			found[i] = stickFor(s.W+s.rim(), s.H+s.rim(), s.shapes, next[i], spent)
		})
		for _, p := range found {
			if p != nil {
				s.pins = append(s.pins, p)
				best = max(best, p.mats(s.shapes))
			}
		}
		if opt.done(best) {
			break
		}
	}
	return best
}

// pinSets says which pins to stick, as counts by shape: for all together, for
// each shape that is no rectangle by itself, those of most area first, and for
// each fabric's.
func (s *sharing) pinSets() (sets [][]int) {
	add := func(count []int) {
		if len(sets) < mostPins && !slices.ContainsFunc(sets, func(o []int) bool { return slices.Equal(o, count) }) {
			sets = append(sets, count)
		}
	}
	all := make([]int, len(s.shapes))
	var alone []int
	for k := range s.shapes {
		all[k] = s.shapes[k].count
		if !s.shapes[k].rect && len(s.shapes[k].ways) > 0 {
			alone = append(alone, k)
		}
	}
	if len(alone) == 0 {
		return nil
	}
	add(all)
	takes := func(k int) length.Area { return s.shapes[k].area.Times(s.shapes[k].count) }
	slices.SortStableFunc(alone, func(a, b int) int { return takes(b).Cmp(takes(a)) })
	for _, k := range alone {
		one := make([]int, len(all))
		one[k] = all[k]
		add(one)
	}
	for _, c := range s.cloths {
		count := make([]int, len(all))
		for _, p := range c.kinds {
			count[p.shape] += p.Count
		}
		add(count)
	}
	return sets
}

// mats is how many mats the shapes need by the pins.
func (p *pins) mats(shapes []shape) int {
	var sum length.Area
	for k := range shapes {
		sum = sum.Add(product(p.worth[k], int64(shapes[k].count)))
	}
	return int(sum.CeilDiv(product(p.whole, 1)))
}

// part is about how many mats the shapes need by the pins.
func (p *pins) part(shapes []shape) (sum float64) {
	for k := range shapes {
		sum += float64(float64(p.worth[k]) * float64(shapes[k].count))
	}
	return sum / float64(p.whole)
}
