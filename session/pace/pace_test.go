package pace

import (
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"
)

func loadOf(minutes ...float64) Load {
	l := Load{Metres: 4}
	for i, m := range minutes {
		l.Work[i], l.Known[i] = time.Duration(m*float64(time.Minute)), true
	}
	return l
}

func TestQuartiles(t *testing.T) {
	var loads []Load
	for _, m := range []float64{4, 2, 3, 5, 100} { // 100: the telephone
		loads = append(loads, loadOf(m, m, m, 2*m, m))
	}
	s := Learn(loads).Step[Press]
	if s.Low != 3*time.Minute || s.Mid != 4*time.Minute || s.High != 5*time.Minute || s.N != 5 || s.Guess {
		t.Errorf("%+v", s)
	}
	if m := Learn(loads).Metre; m.Mid != 2*time.Minute {
		t.Errorf("a metre takes %v", m.Mid)
	}
	if s := Learn(nil).Step[Press]; !s.Guess || s.Mid != 2*time.Minute || s.Low >= s.Mid || s.High <= s.Mid {
		t.Errorf("guess %+v", s)
	}
	if s := Learn(loads[:1]).Step[Press]; !s.Guess || s.Mid != 3*time.Minute {
		t.Errorf("one load and a guess: %+v", s)
	}
}

// TestLeftHolds: the range holds about eight evenings in ten.
func TestLeftHolds(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	one := func() Load {
		m := func(mid float64) float64 { return mid * (1 + 0.3*r.NormFloat64()) }
		l := loadOf(max(m(3), 0), max(m(2), 0), max(m(2), 0), 0, max(m(3), 0))
		l.Work[Cut] = time.Duration(4 * max(m(1.2), 0) * float64(time.Minute))
		l.Known[Cut] = true
		return l
	}
	held, rounds := 0, 300
	for range rounds {
		var past []Load
		for range 25 {
			past = append(past, one())
		}
		left := Learn(past).Left(slices.Repeat([]Todo{{Metres: 4}}, 12))
		var took time.Duration
		for range 12 {
			for _, w := range one().Work {
				took += w
			}
		}
		if left.Low <= took && took <= left.High {
			held++
		}
	}
	if held < rounds*70/100 || held > rounds*90/100 {
		t.Errorf("the range held %d of %d evenings", held, rounds)
	}
}

// TestSecondMat: what it saves is the laying that goes on while the other is
// cut, and the wait for a wet mat.
func TestSecondMat(t *testing.T) {
	var p Pace
	for i, m := range []time.Duration{3, 2, 2, 0, 3} {
		p.Step[i].Mid = m * time.Minute
	}
	p.Step[Cut].Mid = 10 * time.Minute
	todo := make([]Todo, 4)
	w := Washing{8 * time.Minute, 60 * time.Minute}
	one := p.Schedule(todo, []Mat{{"One", 99, 99, 0}}, w)
	two := p.Schedule(todo, []Mat{{"One", 99, 99, 0}, {"Two", 99, 99, 0}}, w)
	// With one: 3+2, then four times lay 2, cut 10, peel 3.
	if want := 65 * time.Minute; one.Long != want {
		t.Errorf("one mat: %v, want %v", one.Long, want)
	}
	// With two, all her work goes on while the cutter cuts: 3+2+2, four cuts, peel 3.
	if want := 50 * time.Minute; two.Long != want {
		t.Errorf("two mats: %v, want %v", two.Long, want)
	}
	wet := p.Schedule(todo, []Mat{{"One", 2, 8, 0}}, w)
	both := p.Schedule(todo, []Mat{{"One", 2, 8, 0}, {"Two", 8, 8, 0}}, w)
	if saved := wet.Long - both.Long; saved < 60*time.Minute {
		t.Errorf("a second mat saves %v of a wash in between: %v, %v", saved, wet.Long, both.Long)
	}
}

// TestScheduleLaws: (1) hands and cutter do one thing at a time, (2) the steps
// of a load follow each other, (3) a mat carries one load at a time and is
// never used wet.
func TestScheduleLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var p Pace
		for i := range p.Step {
			p.Step[i].Mid = time.Duration(rapid.IntRange(0, 20).Draw(t, "minutes")) * time.Minute
		}
		todo := make([]Todo, rapid.IntRange(0, 12).Draw(t, "loads"))
		if len(todo) > 0 {
			todo[0].At = rapid.IntRange(0, Peel).Draw(t, "at")
		}
		mats := []Mat{{"One", rapid.IntRange(1, 5).Draw(t, "left"), rapid.IntRange(1, 8).Draw(t, "after"), time.Duration(rapid.IntRange(0, 90).Draw(t, "dry")) * time.Minute}}
		if rapid.Bool().Draw(t, "two") {
			mats = append(mats, Mat{"Two", rapid.IntRange(1, 5).Draw(t, "left"), rapid.IntRange(1, 8).Draw(t, "after"), 0})
		}
		w := Washing{8 * time.Minute, 60 * time.Minute}
		holds(t, p.Schedule(todo, mats, w), len(todo), mats, w)
	})
}

func holds(t *rapid.T, plan Plan, loads int, mats []Mat, w Washing) {
	hands, cutter := time.Duration(0), time.Duration(0)
	dry, lies := map[string]time.Duration{}, map[string]int{}
	for _, m := range mats {
		dry[m.Name], lies[m.Name] = m.Dry, -1
	}
	at := make([]time.Duration, loads)
	for _, k := range plan.Tasks {
		if k.Step == Cut && k.Load >= 0 {
			if k.From < cutter {
				t.Fatalf("(1) the cutter does two things: %+v", k)
			}
			cutter = k.To
		} else {
			if k.From < hands {
				t.Fatalf("(1) the hands do two things: %+v", k)
			}
			hands = k.To
		}
		if k.Load < 0 {
			dry[k.Mat] = k.To + w.Dry
			continue
		}
		if k.From < at[k.Load] {
			t.Fatalf("(2) a step before the one before it: %+v", k)
		}
		at[k.Load] = k.To
		switch {
		case k.Step == Lay && (k.From < dry[k.Mat] || lies[k.Mat] >= 0):
			t.Fatalf("(3) mat %s isn't dry or isn't free: %+v", k.Mat, k)
		case k.Step == Lay, k.Step == Cut:
			lies[k.Mat] = k.Load
		case k.Step == Peel:
			lies[k.Mat] = -1
		}
	}
}
