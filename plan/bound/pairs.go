package bound

import (
	"cmp"
	"slices"
)

// byPairs tries all pairs of dual feasible functions: floats say which pair
// promises more than is proved, whole numbers decide. It keeps the best pair
// of each function for the methods to come.
func (s *search) byPairs() {
	type promising struct {
		pair
		promise float64
	}
	var kept []promising
	fs := s.x.scales()
	gs := fs
	if !s.square {
		gs = s.y.scales()
	}
	for _, mean := range s.views() {
		for i, f := range fs {
			best := promising{promise: -1}
			var linear []float64
			if mean {
				linear = s.demand(pair{f: f, g: f, mean: true}, true)
			}
			for j, g := range gs {
				if mean && j < i {
					continue // the mean is the same both ways
				}
				pr := pair{f, g, mean}
				promise := s.promising(linear, pr)
				if promise > float64(s.best)-1e-6 {
					s.raise(s.bins(pr))
				}
				if promise > best.promise {
					best = promising{pr, promise}
				}
			}
			kept = append(kept, best)
		}
	}
	slices.SortStableFunc(kept, func(a, b promising) int { return cmp.Compare(b.promise, a.promise) })
	for _, k := range kept {
		s.pairs = append(s.pairs, k.pair)
	}
}

// promising is promise, with the demand made already where it can be.
func (s *search) promising(linear []float64, pr pair) float64 {
	if pr.mean {
		return dot(linear, pr.g)
	}
	return s.promise(pr)
}

// views says which of mean and lesser worth can be best: where everything
// turns, the mean; where only the bin does, either.
func (p *problem) views() []bool {
	switch {
	case !p.square:
		return []bool{false}
	case p.turning:
		return []bool{true}
	}
	return []bool{true, false}
}
