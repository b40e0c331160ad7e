package wear

import (
	"math"
	"slices"
)

// Life is how long something lasted: it failed at Age, or was still good then.
// Weight counts it several times, or in part; 0 is 1.
type Life struct {
	Age    float64
	Failed bool
	Weight float64
}

func (l Life) weight() float64 {
	if l.Weight == 0 {
		return 1
	}
	return l.Weight
}

// Weibull's law: the chance to last beyond t is exp(-(t/Scale)^Shape). A Shape
// above 1 wears out.
type Weibull struct{ Shape, Scale float64 }

// Survival is the chance to last beyond t.
func (w Weibull) Survival(t float64) float64 {
	if t <= 0 {
		return 1
	}
	return math.Exp(-math.Pow(t/w.Scale, w.Shape))
}

// Failed is the chance to have failed by t.
func (w Weibull) Failed(t float64) float64 {
	if t <= 0 {
		return 0
	}
	return -math.Expm1(-math.Pow(t/w.Scale, w.Shape))
}

// Hazard is the rate of failing at t.
func (w Weibull) Hazard(t float64) float64 {
	return w.Shape / w.Scale * math.Pow(t/w.Scale, w.Shape-1)
}

// Mean life.
func (w Weibull) Mean() float64 { return w.Scale * math.Gamma(1+1/w.Shape) }

// Next is the chance to fail within d more, having lasted to t.
func (w Weibull) Next(t, d float64) float64 {
	return -math.Expm1(math.Pow(max(t, 0)/w.Scale, w.Shape) - math.Pow((max(t, 0)+d)/w.Scale, w.Shape))
}

// shapes outside of which a fit is not believed.
const minShape, maxShape = 0.1, 50

// Fit is the law under which the lives are likeliest, and false when no life
// failed or an age isn't above 0: then there is none.
func Fit(lives []Life) (Weibull, bool) {
	s := newSums(lives)
	if s.failed == 0 || !s.proper {
		return Weibull{}, false
	}
	shape := s.solve()
	sum, _, _ := s.powers(shape)
	return Weibull{shape, s.longest * math.Pow(sum/s.failed, 1/shape)}, true
}

// sums is what the likelihood needs of the lives. Ages are taken by the
// longest, so that no power of one overflows.
type sums struct {
	lives   []Life
	longest float64
	failed  float64 // weight of the failed
	meanLog float64 // mean of log(age) over the failed
	proper  bool
}

func newSums(lives []Life) sums {
	s := sums{lives: lives, proper: true}
	for _, l := range lives {
		s.longest = max(s.longest, l.Age)
		s.proper = s.proper && l.Age > 0 && !math.IsInf(l.Age, 0)
	}
	for _, l := range lives {
		if l.Failed {
			s.failed += l.weight()
			s.meanLog += l.weight() * math.Log(l.Age/s.longest)
		}
	}
	s.meanLog /= s.failed
	return s
}

// powers are the sums of x^b, x^b·log x and x^b·log² x over all lives.
func (s *sums) powers(b float64) (s0, s1, s2 float64) {
	for _, l := range s.lives {
		log := math.Log(l.Age / s.longest)
		p := l.weight() * math.Exp(b*log)
		s0, s1, s2 = s0+p, s1+p*log, s2+p*log*log
	}
	return
}

// solve finds the shape where 1/b + mean log - s1/s0 = 0. The left side falls
// all the way, so that a Newton step that leaves the bracket is replaced by
// halving it.
func (s *sums) solve() float64 {
	low, high, b := minShape, float64(maxShape), 1.5
	for range 100 {
		s0, s1, s2 := s.powers(b)
		f := 1/b + s.meanLog - s1/s0
		if f > 0 {
			low = b
		} else {
			high = b
		}
		next := b - f/(-1/(b*b)-(s2*s0-s1*s1)/(s0*s0))
		if !(next > low && next < high) {
			next = (low + high) / 2
		}
		if math.Abs(next-b) < 1e-12*b {
			return next
		}
		b = next
	}
	return b
}

// LogLikelihood of the lives under w.
func (w Weibull) LogLikelihood(lives []Life) float64 {
	sum := 0.0
	for _, l := range lives {
		x := math.Pow(l.Age/w.Scale, w.Shape)
		sum -= l.weight() * x
		if l.Failed {
			sum += l.weight() * (math.Log(w.Shape/w.Scale) + (w.Shape-1)*math.Log(l.Age/w.Scale))
		}
	}
	return sum
}

// Point of a survival curve: from At on, S is the chance to last longer
// (Kaplan and Meier's estimate), and H the hazard summed up so far (Nelson and
// Aalen's).
type Point struct{ At, S, H float64 }

// Seen is the survival that was really seen, a point for each age at which
// something failed; lives cut short at an age count as at risk there. Weights
// are not regarded.
func Seen(lives []Life) []Point {
	sorted := slices.Clone(lives)
	slices.SortFunc(sorted, func(a, b Life) int {
		switch {
		case a.Age < b.Age:
			return -1
		case a.Age > b.Age:
			return 1
		}
		return 0
	})
	var curve []Point
	s, h := 1.0, 0.0
	for i := 0; i < len(sorted); {
		atRisk, failed, age := len(sorted)-i, 0, sorted[i].Age
		for ; i < len(sorted) && sorted[i].Age == age; i++ {
			if sorted[i].Failed {
				failed++
			}
		}
		if failed > 0 {
			part := float64(failed) / float64(atRisk)
			s, h = s*(1-part), h+part
			curve = append(curve, Point{age, s, h})
		}
	}
	return curve
}
