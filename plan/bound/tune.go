package bound

import (
	"math"
	"slices"

	"example.org/matside/plan/internal/cover"
)

// tuning improves the best pairs found, one scale at a time: with the other
// fixed, the best scale is the dual of a cutting-stock relaxation. Caprara and
// Monaci ("Bidimensional packing by bilinear programming", Math. Programming
// 118 (2009)) find the best pair of scales so; going back and forth is their
// heuristic. At most starts pairs are tuned and about work steps counted.
func tuning(starts, work int) func(*search) {
	return func(s *search) {
		t := tuner{search: s, work: work}
		t.from(s.pairs[len(s.pairs)-1])
		for _, pr := range s.pairs[:min(starts, len(s.pairs))] {
			t.from(pr)
		}
	}
}

// tuner spends counted work on tuning.
type tuner struct {
	*search
	work int
}

// from tunes one pair until a round gains nothing.
func (t *tuner) from(pr pair) {
	promise := t.promise(pr)
	for onY := true; t.work > 0 && !t.done(); onY = !onY {
		if onY {
			pr.g = t.tuned(t.y, t.demand(pr, true))
		} else {
			pr.f = t.tuned(t.x, t.demand(pr, false))
		}
		t.raise(t.bins(pr))
		next := t.promise(pr)
		if next < promise+1e-4 {
			return
		}
		promise = next
	}
}

// tuned is the scale that gives the most sum of demand times value, or nearly:
// dual values of the relaxation in which rows are patterns, rounded down to
// whole numbers and made conservative by an exact knapsack.
func (t *tuner) tuned(a *axis, demand []float64) scale {
	c, r := cover.New(demand, 1), newRow[float64](a)
	for i, x := range a.lengths {
		c.Add([]cover.Entry{{Row: i, Count: float64(min(a.copies[i], a.side/max(x, 1)))}}, 1)
	}
	n := len(demand)
	var best []float64
	farley := 0.0
	for t.work > 0 {
		t.work -= a.rowWork() + 8*n*n
		c.Solve(mostPivots)
		// Farley, "A note on bounding a class of linear programming
		// problems", Op. Res. 38 (1990): dual values over the price of the
		// best pattern are feasible, and a bound on the optimum.
		dual := c.Prices()
		price, value := r.most(dual), dotFloat(demand, dual)
		if best == nil || value > farley*price {
			best, farley = slices.Clone(dual), value/price
		}
		if value <= farley*(1+closeEnough) {
			break
		}
		c.Add(r.pattern(), 1)
	}
	return a.rounded(best)
}

// mostPivots bounds one run of the simplex method.
const mostPivots = 1000

func dotFloat(a, b []float64) (sum float64) {
	for i, v := range a {
		sum += float64(v * b[i])
	}
	return sum
}

// closeEnough is how near the optimum a tuned scale need be, as a share of it.
const closeEnough = 1e-4

// dualUnit is how finely dual values are rounded.
const dualUnit = 1 << 24

func (a *axis) rounded(dual []float64) scale {
	s := scale{value: make([]int64, len(dual))}
	for i, v := range dual {
		s.value[i] = int64(max(0, math.Floor(v*dualUnit)))
	}
	s.whole = newRow[int64](a).most(s.value)
	return s
}
