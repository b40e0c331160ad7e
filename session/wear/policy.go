package wear

import "math"

// Policy of age replacement: renew at Age, or at a failure before it.
type Policy struct {
	Age  float64 // +Inf: only when it fails
	Cost float64 // for each unit of age, in the long run
}

// Best is the age at which renewing costs least, when renewing in time costs
// planned and a failure costs failed in all, renewing included. It is Barlow
// and Hunter's: the age T where h(T)·∫R - F(T) = planned/(failed-planned).
// There is none, and +Inf is returned, when the thing doesn't wear out, or a
// failure costs no more than renewing.
func (w Weibull) Best(planned, failed float64) Policy {
	never := Policy{math.Inf(1), failed / w.Mean()}
	if w.Shape <= 1 || failed <= planned || planned <= 0 {
		return never
	}
	goal := planned / (failed - planned)
	low, high := 0.0, w.Scale
	for w.gain(high) < goal {
		if low, high = high, 2*high; high > 1e3*w.Scale {
			return never
		}
	}
	for range 60 {
		if mid := (low + high) / 2; w.gain(mid) < goal {
			low = mid
		} else {
			high = mid
		}
	}
	return Policy{high, w.CostRate(high, planned, failed)}
}

// gain is h(T)·∫R - F(T); it rises with T when Shape is above 1.
func (w Weibull) gain(t float64) float64 { return w.Hazard(t)*w.lasting(t) - w.Failed(t) }

// CostRate is the cost for each unit of age when renewing at t.
func (w Weibull) CostRate(t, planned, failed float64) float64 {
	return CostRate(w.Survival, t, planned, failed)
}

func (w Weibull) lasting(t float64) float64 { return lasting(w.Survival, t) }

// CostRate is the cost for each unit of age, under any law of survival, when
// renewing at t: that of a renewal in time or of a failure, over the mean age
// reached.
func CostRate(survival func(float64) float64, t, planned, failed float64) float64 {
	s := survival(t)
	return (planned*s + failed*(1-s)) / lasting(survival, t)
}

// lasting is the mean age reached when renewed at t: the integral of the
// survival from 0 to t, by Simpson's rule.
func lasting(survival func(float64) float64, t float64) float64 {
	const parts = 400 // even
	h := t / parts
	sum := survival(0) + survival(t)
	for i := 1; i < parts; i++ {
		sum += float64(2+2*(i%2)) * survival(float64(i)*h)
	}
	return sum * h / 3
}
