package wear

import (
	"math"
	"slices"
)

// Run is one life between two renewals, the Renewals-th of its thing: what it
// carried before it failed first (Failed) or was renewed (not Failed).
type Run struct {
	Age      float64
	Failed   bool
	Renewals int
}

// Model of a thing that comes back from each renewal a little weaker: after n
// renewals it ages Aging^n times as fast. First is its law when new.
type Model struct {
	First Weibull
	Aging float64
	Own   float64 // how many times as long this thing of several lasts; 1 unless Of says
	Seen  int     // failures of her own that it was learned from
	runs  []Run
	prior []Life
}

// agings are the values of Aging that are tried: 0 to 10 percent a renewal.
var agings = func() (a [21]float64) {
	for i := range a {
		a[i] = 1 + float64(i)/200
	}
	return a
}()

// agingLogPrior makes little aging likelier before anything is known: an
// exponential law with a mean of 1 percent a renewal. Our guess.
func agingLogPrior(aging float64) float64 { return -(aging - 1) / 0.01 }

// Learn fits the model. prior are imagined lives of a new thing; at least one
// of them must have failed.
func Learn(prior []Life, runs []Run) Model {
	best := Model{Aging: 1, Own: 1, runs: runs, prior: prior}
	top := math.Inf(-1)
	for _, aging := range agings {
		lives, logs := asNew(prior, runs, aging)
		w, ok := Fit(lives)
		if !ok {
			continue
		}
		if l := w.LogLikelihood(lives) + logs + agingLogPrior(aging); l > top {
			top, best.First, best.Aging = l, w, aging
		}
	}
	best.Seen = failures(runs)
	return best
}

func failures(runs []Run) (n int) {
	for _, r := range runs {
		if r.Failed {
			n++
		}
	}
	return n
}

// alike is how sure it is, before any of its own runs, that one thing wears
// like the others: as if it had failed so often, just when expected. Our guess.
const alike = 5

// Of is the model for one of the things it was learned from, given its runs:
// one that failed more often than expected wears faster. Its hazard is that of
// all times a gamma variable of mean 1 (a frailty, in the terms of the field;
// Vaupel, Manton and Stallard, Demography 16, 1979, from memory), of which the
// mean is taken once its runs are known.
func (m Model) Of(runs []Run) Model {
	expected := 0.0
	for _, r := range runs {
		expected += math.Pow(max(r.Age, 0)/m.After(r.Renewals).Scale, m.First.Shape)
	}
	times := (alike + float64(failures(runs))) / (alike + expected)
	m.Own *= math.Pow(times, -1/m.First.Shape)
	return m
}

// asNew turns ages after renewals into those of a new thing; logs is what the
// change of measure adds to the likelihood.
func asNew(prior []Life, runs []Run, aging float64) (lives []Life, logs float64) {
	lives = slices.Clone(prior)
	for _, r := range runs {
		if r.Age <= 0 {
			continue
		}
		faster := math.Pow(aging, float64(r.Renewals))
		lives = append(lives, Life{Age: r.Age * faster, Failed: r.Failed})
		if r.Failed {
			logs += math.Log(faster)
		}
	}
	return lives, logs
}

// After is the law after n renewals.
func (m Model) After(n int) Weibull {
	return Weibull{m.First.Shape, m.Own * m.First.Scale / math.Pow(m.Aging, float64(n))}
}

// Range is a middle value and the bounds that hold four times in five.
type Range struct{ Low, Mid, High float64 }

// Next is the chance to fail within d more at the given age after n renewals,
// with its credible range: the law is weighed by the likelihood of the lives,
// prior ones included, over a grid of shapes and scales (flat in their
// logarithms).
func (m Model) Next(age, d float64, n int) Range {
	lives, _ := asNew(m.prior, m.runs, m.Aging)
	faster := math.Pow(m.Aging, float64(n)) / m.Own
	var chances []weighed
	top := math.Inf(-1)
	for i := -gridHalf; i <= gridHalf; i++ {
		for j := -gridHalf; j <= gridHalf; j++ {
			w := Weibull{m.First.Shape * math.Exp(gridStep*float64(i)), m.First.Scale * math.Exp(gridStep*float64(j))}
			l := w.LogLikelihood(lives)
			top = max(top, l)
			chances = append(chances, weighed{w.Next(age*faster, d*faster), l})
		}
	}
	return quantiles(chances, top)
}

// The grid reaches from a fifth to five times the likeliest law.
const gridHalf, gridStep = 16, 0.1

// weighed is a value and the logarithm of its weight.
type weighed struct{ value, log float64 }

func quantiles(c []weighed, top float64) Range {
	slices.SortFunc(c, func(a, b weighed) int {
		switch {
		case a.value < b.value:
			return -1
		case a.value > b.value:
			return 1
		}
		return 0
	})
	total := 0.0
	for _, x := range c {
		total += math.Exp(x.log - top)
	}
	at := func(q float64) float64 {
		sum := 0.0
		for _, x := range c {
			if sum += math.Exp(x.log - top); sum >= q*total {
				return x.value
			}
		}
		return c[len(c)-1].value
	}
	return Range{at(0.1), at(0.5), at(0.9)}
}
