package pace

import (
	"math"
	"slices"
	"time"
)

// Steps of a load, and which of them the cutter does: there her hands are free.
const (
	Fabric = iota
	Press
	Lay
	Cut
	Peel
	Steps
)

// Load is how long the steps of one load took; a step that was interrupted is
// not Known.
type Load struct {
	Work   [Steps]time.Duration
	Known  [Steps]bool
	Metres float64 // of cut
}

// Spread is a middle value and its quartiles, from N loads.
type Spread struct {
	Low, Mid, High time.Duration
	N              int
	Guess          bool // not, or hardly, learned from her own loads
}

// Pace is what has been learned: each step, and a metre of cut.
type Pace struct {
	Step  [Steps]Spread
	Metre Spread
}

// enough loads make a value her own.
const enough = 5

// The guesses we start from: no source, but the order of the work as it is
// described. A metre of cut includes the cutter's own moving about.
var guesses = [Steps]time.Duration{3 * time.Minute, 2 * time.Minute, 2 * time.Minute, 6 * time.Minute, 3 * time.Minute}

const guessMetre = 70 * time.Second

// Learn makes a pace out of loads.
func Learn(loads []Load) Pace {
	var p Pace
	for step := range Steps {
		var took []time.Duration
		for _, l := range loads {
			if l.Known[step] {
				took = append(took, l.Work[step])
			}
		}
		p.Step[step] = spread(took, guesses[step])
	}
	var metre []time.Duration
	for _, l := range loads {
		if l.Known[Cut] && l.Metres > 0 {
			metre = append(metre, time.Duration(float64(l.Work[Cut])/l.Metres))
		}
	}
	p.Metre = spread(metre, guessMetre)
	return p
}

// spread takes quartiles; the guess counts as one load until there are enough.
func spread(took []time.Duration, guess time.Duration) Spread {
	n := len(took)
	if n < enough {
		took = append(slices.Clone(took), guess)
	}
	slices.Sort(took)
	s := Spread{quantile(took, 1, 4), quantile(took, 1, 2), quantile(took, 3, 4), n, n < enough}
	if s.Guess { // be no surer than half as long or half as long again
		s.Low, s.High = min(s.Low, s.Mid*2/3), max(s.High, s.Mid*3/2)
	}
	return s
}

// quantile at p/q of sorted values, between two of them in proportion.
func quantile(sorted []time.Duration, p, q int) time.Duration {
	at, rest := (len(sorted)-1)*p/q, (len(sorted)-1)*p%q
	if at+1 >= len(sorted) {
		return sorted[at]
	}
	return sorted[at] + (sorted[at+1]-sorted[at])*time.Duration(rest)/time.Duration(q)
}

// Todo is one load still to be done: the step it is at, the time that step has
// had, and what the blade will go.
type Todo struct {
	At     int
	Spent  time.Duration
	Metres float64
}

// Range of time; Guess as in Spread.
type Range struct {
	Low, Mid, High time.Duration
	Guess          bool
}

// Left is how long the loads take, one step after another. The range holds
// what eight evenings in ten should need: each step varies on its own, and
// what has been learned may be off for all of them alike.
func (p Pace) Left(todo []Todo) Range {
	var r Range
	var count [Steps + 1]float64 // how much of each is to come; the last one is metres
	alone := 0.0                 // variance of the steps, each on its own
	for _, t := range todo {
		for step := t.At; step < Steps; step++ {
			s, much := p.of(step, t.Metres)
			mid := time.Duration(float64(s.Mid) * much)
			if step == t.At {
				mid = max(mid-t.Spent, 0)
			}
			r.Mid += mid
			alone += square(s.deviation() * much)
			count[p.which(step, t.Metres)] += much
			r.Guess = r.Guess || s.Guess
		}
	}
	off := 0.0
	for i, n := range count {
		s := p.Metre
		if i < Steps {
			s = p.Step[i]
		}
		off += square(n * 1.253 * s.deviation() / math.Sqrt(float64(max(s.N, 1))))
	}
	const eightInTen = 1.2816
	half := time.Duration(eightInTen * math.Sqrt(alone+off))
	r.Low, r.High = max(r.Mid-half, r.Mid/4), r.Mid+half
	return r
}

// of is the spread that a step goes by, and how often it counts.
func (p Pace) of(step int, metres float64) (Spread, float64) {
	if p.which(step, metres) == Steps {
		return p.Metre, metres
	}
	return p.Step[step], 1
}

// which says whether a step goes by the metre.
func (p Pace) which(step int, metres float64) int {
	if step == Cut && metres > 0 {
		return Steps
	}
	return step
}

// deviation is what a normal law with these quartiles would have.
func (s Spread) deviation() float64 { return float64(s.High-s.Low) / (2 * 0.6745) }

func square(x float64) float64 { return x * x }

// Took is the middle time of one step.
func (p Pace) Took(step int, metres float64) time.Duration {
	s, much := p.of(step, metres)
	return time.Duration(float64(s.Mid) * much)
}
