package session

import (
	"math"
	"slices"
	"sync"
	"time"

	"example.org/matside/plan/length"
	"example.org/matside/session/pace"
	"example.org/matside/session/wear"
)

// Due says when a mat is to be washed.
type Due struct {
	After int  // loads after which washing is due
	Left  int  // loads until then; 0: due now, below 0: overdue
	Own   bool // she set it herself
	Guess bool // fewer than KnownLifts lifts of her own: mostly what a new quilter guesses
}

// MatAdvice is what her own events say of a mat.
type MatAdvice struct {
	Due
	Age       float64      // loads since its last wash or refresh, heavy ones counted for more
	Next      wear.Range   // the chance that the next load lifts: four times in five it lies between Low and High
	Lifted    bool         // something lifted since it was last washed: wash it
	Lifts     int          // lifts of hers that this was learned from, on all mats
	Runs      int          // times between two washes, the same
	Aging     float64      // how much faster it wears after each wash: 1.02 is 2 percent
	NewMat    bool         // it lifts so soon after a wash that washing gains nothing
	Curve     []float64    // the chance to have lifted by 1, 2, … usual loads after this wash
	Seen      []wear.Point // what was really seen, on all mats: S is the share that had not lifted by At usual loads
	WashCosts time.Duration
	LiftCosts time.Duration // beyond the wash: the load is done again
}

// KnownLifts is how many lifts make the advice her own, and no guess.
const KnownLifts = wear.Known

// Due of a mat: her own number, or the one after which washing costs least.
func (s *State) Due(mat string) Due {
	m := s.Mat(mat)
	if m == nil {
		return Due{}
	}
	return s.due(m, s.learn())
}

func (s *State) due(m *Mat, l *learned) Due {
	if m.Due > 0 {
		return Due{After: m.Due, Left: m.Due - m.Since, Own: true}
	}
	due := l.cautious
	if l.model.Seen >= KnownLifts {
		due = l.of(m).Whole(m.Washes, l.costs)
	}
	age, lifted := m.age()
	left := int(math.Round(float64(due) - age/l.weight))
	if lifted {
		left = min(left, 0) // it holds badly: that is what washing is for
	}
	return Due{After: max(m.Since+left, m.Since), Left: left, Guess: l.model.Seen < KnownLifts}
}

// Advise says all that is known of a mat.
func (s *State) Advise(mat string) MatAdvice {
	m := s.Mat(mat)
	if m == nil {
		return MatAdvice{}
	}
	l := s.learn()
	a := MatAdvice{Due: s.due(m, l), Lifts: l.model.Seen, Runs: l.runs, Aging: l.model.Aging,
		WashCosts: minutes(l.costs.Renew), LiftCosts: minutes(l.costs.Fail)}
	a.Age, a.Lifted = m.age()
	model := l.of(m)
	a.Next = model.Next(a.Age/l.weight, 1, m.Washes)
	a.NewMat = l.model.Seen >= KnownLifts && model.Advise(m.Washes, l.costs).Spent
	law := model.After(m.Washes)
	for n := 1; n <= max(2*a.After, 12); n++ {
		a.Curve = append(a.Curve, law.Failed(float64(n)))
	}
	a.Seen = wear.Seen(l.lives)
	return a
}

// usualDue is how many loads a mat does before it is due, until one has been
// washed or has lifted. Our guess; it is what wear.NewMat and the guessed
// minutes come to.
const usualDue = 8

// alikeLoads is how many loads of the usual weight are imagined before hers.
const alikeLoads = 4

// learned is what the mats' and her own past come to. It takes a millisecond
// or two to work out, so a ledger's states keep it once it is.
type learned struct {
	once     sync.Once
	model    wear.Model
	runs     int
	cautious int         // the number of loads while it is a guess
	lives    []wear.Life // in usual loads
	weight   float64     // of a usual load, in plain ones; the model counts in usual loads
	costs    wear.Costs
}

// of is the model for one mat: some hold worse than others.
func (l *learned) of(m *Mat) wear.Model { return l.model.Of(inUsual(m.lives(), l.weight)) }

func (s *State) learn() *learned {
	l := s.learned
	if l == nil {
		l = &learned{}
	}
	l.once.Do(func() {
		l.weight, l.costs = s.usualWeight(), s.costs()
		lives := s.lives()
		runs := inUsual(lives, l.weight)
		l.model, l.runs = wear.Learn(wear.NewMat, runs), len(runs)
		for _, r := range runs {
			l.lives = append(l.lives, wear.Life{Age: r.Age, Failed: r.Failed})
		}
		if l.model.Seen < KnownLifts {
			// Her minutes count once her lifts do: so it doesn't jump about.
			guessed := wear.Costs{Renew: l.costs.Renew, Fail: loadAgain(pace.Learn(nil)).Minutes()}
			l.cautious = wear.Cautious(wear.NewMat, asKnownThen(lives), guessed, usualDue)
		}
	})
	return l
}

func minutes(m float64) time.Duration { return time.Duration(m * float64(time.Minute)) }

// age is what the mat has carried since its last wash or refresh, in plain
// loads, and whether anything has lifted since.
func (m *Mat) age() (age float64, lifted bool) {
	r := &m.Runs[len(m.Runs)-1]
	age = r.start()
	for _, l := range r.Loads {
		age += float64(l.Weight) / 1000
		lifted = lifted || l.Lifted
	}
	return age, lifted
}

// start is the age a run begins at: a mat that came to us used has some, one
// that was refreshed holds like a washed one.
func (r *Run) start() float64 {
	if r.Refreshed {
		return 0
	}
	return float64(r.Before)
}

// life is a run as package wear sees it, with ages in plain loads, and what it
// carried.
type life struct {
	wear.Run
	ended  time.Time // zero: it lifted and isn't washed yet
	weight int       // thousandths, of its loads together
	loads  int
}

// lives are the runs of all mats that have ended, by a wash or by a lift, in
// the order they ended. A run that goes on well is left out, so that what is
// due doesn't move from load to load.
func (s *State) lives() []life {
	var all []life
	for i := range s.Mats {
		all = append(all, s.Mats[i].lives()...)
	}
	slices.SortStableFunc(all, func(a, b life) int {
		if a.ended.IsZero() != b.ended.IsZero() {
			return b.ended.Compare(a.ended) // what hasn't ended comes last
		}
		return a.ended.Compare(b.ended)
	})
	const keep = 150 // the last ones: the fit takes time with each
	return all[max(0, len(all)-keep):]
}

// lives are one mat's, in the order of its runs.
func (m *Mat) lives() []life {
	var lives []life
	washes := 0
	for n := range m.Runs {
		r := &m.Runs[n]
		if n > 0 && !r.Refreshed {
			washes++
		}
		run, ok := r.life(n < len(m.Runs)-1)
		if !ok {
			continue
		}
		run.Renewals = washes
		l := life{Run: run, loads: len(r.Loads)}
		for _, load := range r.Loads {
			l.weight += load.Weight
		}
		if n < len(m.Runs)-1 {
			l.ended = m.Runs[n+1].From
		}
		lives = append(lives, l)
	}
	return lives
}

// inUsual gives the runs with ages in loads of the usual weight.
func inUsual(lives []life, weight float64) []wear.Run {
	out := make([]wear.Run, len(lives))
	for i, l := range lives {
		out[i] = l.Run
		out[i].Age /= weight
	}
	return out
}

// asKnownThen is the same by the weight that was usual when each run ended,
// so that a run to come doesn't change what the ones before have said.
func asKnownThen(lives []life) []wear.Run {
	out := make([]wear.Run, len(lives))
	sum, n := 1000*alikeLoads, alikeLoads
	for i, l := range lives {
		sum, n = sum+l.weight, n+l.loads
		out[i] = l.Run
		out[i].Age /= float64(sum) / float64(n) / 1000
	}
	return out
}

// life goes up to the run's first lift, which came in the middle of its load,
// or to its end.
func (r *Run) life(ended bool) (wear.Run, bool) {
	age := r.start()
	for _, l := range r.Loads {
		w := float64(l.Weight) / 1000
		if l.Lifted {
			return wear.Run{Age: age + w/2, Failed: true}, true
		}
		age += w
	}
	return wear.Run{Age: age}, ended && age > 0
}

// usualWeight is the mean weight of her last loads, in plain ones.
func (s *State) usualWeight() float64 {
	const keep = 200
	sum, n := 1000*alikeLoads, alikeLoads
	for i := range s.Mats {
		runs := s.Mats[i].Runs
		for j := len(runs) - 1; j >= 0 && n < keep; j-- {
			for _, l := range runs[j].Loads {
				sum, n = sum+l.Weight, n+1
			}
		}
	}
	return float64(sum) / float64(n) / 1000
}

// costs are her own minutes: for a wash, and for doing a load again.
func (s *State) costs() wear.Costs {
	return wear.Costs{Renew: float64(s.Habits.wash()), Fail: max(loadAgain(s.Pace()).Minutes(), 1)}
}

// loadAgain is how long a whole load takes.
func loadAgain(p pace.Pace) (d time.Duration) {
	for step := range pace.Steps {
		d += p.Step[step].Mid
	}
	return d
}

// BladeAdvice is what her own events say of the blade. The maker's
// instructions come first.
type BladeAdvice struct {
	Length length.Len // cut since it was changed
	Next   wear.Range // the chance of a ragged edge in the next load like those before
	Ragged bool       // an edge was ragged since it was changed
	Change bool       // an edge was ragged, or one load in five would be
	Guess  bool       // fewer than three ragged cuts of her own
}

// AdviseBlade says what is known of the blade.
func (s *State) AdviseBlade() BladeAdvice {
	var runs []wear.Run
	var loads int
	var all float64
	for i, blade := range s.Blade.Runs {
		r, n := bladeLife(blade)
		loads, all = loads+n, all+r.Age
		if r.Age > 0 && (r.Failed || i < len(s.Blade.Runs)-1) {
			runs = append(runs, r)
		}
	}
	model := wear.Learn(wear.NewBlade, runs)
	a := BladeAdvice{Length: s.Blade.Length(), Guess: model.Seen < KnownLifts}
	if n := len(s.Blade.Runs); n > 0 {
		for _, l := range s.Blade.Runs[n-1] {
			a.Ragged = a.Ragged || l.Ragged
		}
	}
	each := 4.0
	if loads > 0 {
		each = all / float64(loads)
	}
	a.Next = model.Next(metres(a.Length), each, 0)
	a.Change = a.Ragged || a.Next.Mid >= 0.2
	return a
}

// bladeLife is a blade's metres up to its first ragged cut, or to its end.
func bladeLife(loads []BladeLoad) (r wear.Run, n int) {
	for i, l := range loads {
		m := metres(l.Length)
		if l.Ragged {
			return wear.Run{Age: r.Age + m/2, Failed: true}, i + 1
		}
		r.Age += m
	}
	return r, len(loads)
}

func metres(l length.Len) float64 { return float64(l) / float64(length.Metre) }
