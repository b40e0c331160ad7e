package wear

import "math"

// NewMat are imagined lives of a mat, in loads since its wash, that stand for
// what a quilter knows before her own have lifted: our guess, no source. They
// count for one life and a half in all, so that hers soon outweigh them.
var NewMat = []Life{{5, true, 0.3}, {10, true, 0.3}, {16, true, 0.3}, {8, false, 0.3}, {10, false, 0.3}}

// NewBlade are the same for a blade, in metres cut. A guess too.
var NewBlade = []Life{{120, true, 0.5}, {200, true, 0.5}, {300, true, 0.5}, {100, false, 0.5}}

// Known is how many failures make a model hers: with fewer, Cautious is to be
// trusted more.
const Known = 3

// Costs are minutes.
type Costs struct {
	Renew float64 // washing in time
	Fail  float64 // what a lift costs beyond the wash: the load spoiled
}

// Advice is what a model says of a thing after n renewals.
type Advice struct {
	Age  float64 // when to renew; +Inf never pays
	Cost float64 // minutes for each unit of age when renewed then
	// Spent says that it fails so early, even just renewed, that a renewal
	// gains nothing: the first unit of age after one costs more by its
	// failures than renewing does.
	Spent bool
}

// Advise finds the age after which renewing costs least.
func (m Model) Advise(n int, c Costs) Advice {
	w := m.After(n)
	best := w.Best(c.Renew, c.Renew+c.Fail)
	return Advice{best.Age, best.Cost, w.Failed(1)*c.Fail > c.Renew}
}

// Whole is the whole number of loads, one at least, after which renewing costs
// least: it can only come between two loads.
func (m Model) Whole(n int, c Costs) int { return m.After(n).whole(c) }

func (w Weibull) whole(c Costs) int {
	best, least := 1, math.Inf(1)
	lasting := 0.0 // mean number of loads until renewed: a load that fails is done too
	for k := 1; k <= 200; k++ {
		lasting += w.Survival(float64(k - 1))
		failed := w.Failed(float64(k))
		rate := (c.Renew + c.Fail*failed) / lasting
		if rate < least {
			best, least = k, rate
		}
		if failed > 0.9999 {
			break
		}
	}
	return best
}

// Cautious is Whole while hardly a run has failed. The law keeps the prior's
// shape, only its scale is learned (in closed form, for the shape is known),
// and from run to run the answer moves by a third at most, beginning at first.
func Cautious(prior []Life, runs []Run, c Costs, first int) int {
	w, ok := Fit(prior)
	if !ok {
		return first
	}
	failed, powers := 0.0, 0.0
	for _, l := range prior {
		powers += l.weight() * math.Pow(l.Age, w.Shape)
		if l.Failed {
			failed += l.weight()
		}
	}
	due := first
	for _, r := range runs {
		powers += math.Pow(max(r.Age, 0), w.Shape)
		if r.Failed {
			failed++
		}
		w.Scale = math.Pow(powers/failed, 1/w.Shape)
		third := max(due/3, 1)
		due = max(due-third, min(w.whole(c), due+third), 1)
	}
	return due
}
