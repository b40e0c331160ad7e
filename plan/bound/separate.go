package bound

import (
	"cmp"
	"slices"
)

// separator looks for pairs of scales by which boxes, each used so often, take
// more than so many mats.
type separator struct {
	*mixture
	cells [][2]int
	use   map[[2]int]float64
}

// takenBy is what the boxes take by a pair, in mats.
func (s *separator) takenBy(pr pair) (sum float64) {
	for _, c := range s.cells {
		sum += float64(s.use[c] * float64(pr.f.value[c[0]]*pr.g.value[c[1]]))
	}
	return sum / (unitOfScale * unitOfScale)
}

// demand is the use of the places of one axis, each box counted by what the
// other scale says of it.
func (s *separator) demand(other scale, of int) []float64 {
	n := len(s.x)
	if of == 1 {
		n = len(s.y)
	}
	out := make([]float64, n)
	for _, c := range s.cells {
		out[c[of]] += float64(s.use[c] * float64(other.value[c[1-of]]) / unitOfScale)
	}
	return out
}

// starts is how many pairs of the families are improved.
const starts = 6

// run adds the pairs found that take more than mats.
func (s *separator) run(mats float64) bool {
	type found struct {
		pair
		takes float64
	}
	var all []found
	for _, f := range s.xs {
		d := s.demand(f, 1)
		best := found{takes: -1}
		for _, g := range s.ys {
			var v float64
			for j, n := range d {
				v += float64(n * float64(g.value[j]))
			}
			if v /= unitOfScale; v > best.takes {
				best = found{pair{f: f, g: g}, v}
			}
		}
		all = append(all, best)
	}
	slices.SortStableFunc(all, func(a, b found) int { return cmp.Compare(b.takes, a.takes) })
	added := false
	for _, b := range all[:min(starts, len(all))] {
		pr := s.improved(b.pair, b.takes)
		if s.takenBy(pr) > mats+1e-5 && !slices.ContainsFunc(s.pairs, func(o pair) bool {
			return slices.Equal(o.f.value, pr.f.value) && slices.Equal(o.g.value, pr.g.value)
		}) {
			s.pairs = append(s.pairs, pr)
			added = true
		}
	}
	return added
}

// improved makes one scale the best for the other, in turn, as long as that
// gains (Caprara and Monaci 2009).
func (s *separator) improved(pr pair, takes float64) pair {
	t := &tuner{search: &search{}, work: s.work}
	for turn := 0; turn < 6 && t.work > 0; turn++ {
		next := pr
		if turn%2 == 0 {
			next.g = s.tuned(t, s.along, s.demand(pr.f, 1))
		} else {
			next.f = s.tuned(t, s.across, s.demand(pr.g, 0))
		}
		v := s.takenBy(next)
		if v <= takes+1e-6 {
			if turn > 0 {
				break
			}
			continue
		}
		pr, takes = next, v
	}
	s.work = t.work
	return pr
}

// tuned is the best scale for a demand, rising with the places.
func (s *separator) tuned(t *tuner, a *axis, demand []float64) scale {
	small := slices.Clone(demand)
	for i := range small {
		small[i] += 1e-6 // a trace, so that every place has a value
	}
	f := t.tuned(a, small).toUnit()
	if f.whole == 0 {
		return scale{whole: unitOfScale, value: make([]int64, len(a.lengths))}
	}
	return f.rising()
}
