package wear

import (
	"math"
	"math/rand/v2"
	"testing"
)

// rate is the true long-run cost of a load when washed after k of them.
func rate(w Weibull, c Costs, k int) float64 {
	lasting := 0.0
	for i := range k {
		lasting += w.Survival(float64(i))
	}
	return (c.Renew + c.Fail*w.Failed(float64(k))) / lasting
}

// learned plays n loads on a mat of law truth, washing as advised so far, and
// gives the number of loads advised in the end.
func learned(r *rand.Rand, truth Weibull, c Costs, n int) int {
	var runs []Run
	for n > 0 {
		due := policy(runs, c)
		life := draw(r, truth)
		k := min(due, int(math.Ceil(life)), n)
		n -= k
		run := Run{Age: float64(k), Renewals: len(runs)}
		if float64(k) >= life {
			run.Age, run.Failed = float64(k)-0.5, true // it lifted somewhere under that load
		}
		runs = append(runs, run)
	}
	return policy(runs, c)
}

// policy is what session advises of a single mat.
func policy(runs []Run, c Costs) int {
	if m := Learn(NewMat, runs); m.Seen >= Known {
		return m.Of(runs).Whole(len(runs), c)
	}
	return Cautious(NewMat, runs, c, 8)
}

// TestLearnedPolicy: after 60 loads the policy learned costs within 10 percent
// of the best one's cost on average, whatever the mat is like.
func TestLearnedPolicy(t *testing.T) {
	c := Costs{Renew: 8, Fail: 14}
	rounds := 60
	for _, truth := range []Weibull{{2.5, 10}, {2, 7}, {3, 14}, {4, 9}, {1.7, 12}, {2.5, 20}} {
		best := math.Inf(1)
		for k := 1; k <= 100; k++ {
			best = min(best, rate(truth, c, k))
		}
		r := rand.New(rand.NewPCG(11, 12))
		sum := 0.0
		for range rounds {
			sum += rate(truth, c, learned(r, truth, c, 60))
		}
		ratio := sum / float64(rounds) / best
		t.Logf("shape %.1f, scale %.0f: %.3f of the best policy's cost", truth.Shape, truth.Scale, ratio)
		if ratio > 1.1 {
			t.Errorf("shape %.1f, scale %.0f: %.3f of the best policy's cost", truth.Shape, truth.Scale, ratio)
		}
	}
}
