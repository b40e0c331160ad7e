package session

import (
	"testing"
	"time"

	"example.org/matside/plan/length"
	"example.org/matside/plan/queue"
)

// ticking is a clock that she sets.
type ticking struct{ at time.Time }

func (c *ticking) now() time.Time { return c.at }

func (c *ticking) after(minutes int) { c.at = c.at.Add(time.Duration(minutes) * time.Minute) }

func ticked(t testing.TB, a, b int) (*Ledger, QuiltID, *ticking) {
	c := &ticking{time.Date(2026, 3, 7, 19, 0, 0, 0, time.UTC)}
	l := New(OpenOptions{Now: c.now, Planner: fourToALoad})
	return l, startOn(t, l, a, b), c
}

// TestWork: breaks, pauses and nights are no work; a step taken back is.
func TestWork(t *testing.T) {
	l, id, c := ticked(t, 8, 4)
	step := func(minutes int, a ...Action) *Quilt { c.after(minutes); return do(t, l, id, a...) }
	step(3, GoOn{}) // fabric 3
	step(1, Pause{})
	step(20, Resume{})
	step(1, GoOn{}) // press 1 + 1
	step(2, Leave{})
	step(14*60, SitDown{})
	step(4, GoOn{}) // load 2 + 4
	step(50, GoOn{})
	q := step(2, GoOn{})
	got := q.Loads[0]
	want := [Steps]time.Duration{3 * time.Minute, 2 * time.Minute, 6 * time.Minute, 0, 2 * time.Minute}
	if got.Work != want || got.Broken != [Steps]bool{Cut: true} {
		t.Errorf("work %v, broken %v", got.Work, got.Broken)
	}
	step(1, GoOn{})
	step(1, Back{})
	if q = step(2, GoOn{}); q.Loads[1].Work[Fabric] != 4*time.Minute {
		t.Errorf("taken back: %v", q.Loads[1].Work)
	}
	step(7, SitDown{}) // after a kill, without a goodbye
	if q = step(1, GoOn{}); !q.Loads[1].Broken[Press] {
		t.Error("a step that a kill broke is learned from")
	}
}

func TestPauseDue(t *testing.T) {
	l, id, c := ticked(t, 200, 0)
	due := func() bool {
		s := l.State()
		is, _ := s.PauseDue(id, c.now())
		return is
	}
	for range 3 { // 4 x 4 minutes of handling a load, and the cutter's 10
		for i := range Steps {
			c.after([]int{4, 4, 4, 10, 4}[i])
			do(t, l, id, GoOn{})
		}
	}
	if due() {
		t.Error("after 48 minutes of handling")
	}
	c.after(2)
	if !due() {
		t.Error("after 50 minutes nothing is due")
	}
	do(t, l, id, Pause{})
	c.after(10)
	do(t, l, id, Resume{})
	if due() {
		t.Error("just rested")
	}
	do(t, l, id, SetHabits{Habits{PauseAfter: -1}})
	for range 30 {
		c.after(5)
		do(t, l, id, GoOn{})
	}
	if due() {
		t.Error("she wants no reminder")
	}
}

// TestTimeLeft: a guess at first, her own times later, less as she goes on.
func TestTimeLeft(t *testing.T) {
	l, id, c := ticked(t, 40, 0)
	s := l.State()
	first := s.TimeLeft(id, c.now())
	if !first.Guess || first.Low >= first.Mid || first.Mid >= first.High {
		t.Errorf("at first %+v", first)
	}
	for range 6 * Steps {
		c.after(2)
		do(t, l, id, GoOn{})
	}
	s = l.State()
	own := s.TimeLeft(id, c.now())
	if own.Guess || own.Mid.Round(time.Second) != 40*time.Minute || own.High-own.Low > time.Minute {
		t.Errorf("six loads of ten even minutes, four to come: %+v", own)
	}
	if later := s.TimeLeft(id, c.now().Add(90*time.Second)); later.Mid != own.Mid-90*time.Second {
		t.Errorf("a minute and a half later: %v, was %v", later.Mid, own.Mid)
	}
	both := s.WorkTogether(id, c.now())
	if both.OneMat <= 0 || both.Second < time.Hour { // one wash, an hour to dry
		t.Errorf("together %+v", both)
	}
	if cards := s.Shelf(c.now()); len(cards) != 1 || cards[0].LoadsLeft != 4 || cards[0].Left.Mid != own.Mid {
		t.Errorf("shelf %+v", cards)
	}
}

// TestWetMat: a washed mat isn't loaded before it is dry, unless she says so.
func TestWetMat(t *testing.T) {
	l, id, c := ticked(t, 8, 0)
	do(t, l, id, AddMat{Mat: "Two"}, Wash{}, GoOn{}, GoOn{})
	_, err := l.Do(id, GoOn{})
	wet, ok := err.(*WetMat)
	if !ok || wet.Mat != FirstMat || wet.Other != "Two" || !wet.Until.Equal(c.now().Add(usualDry*time.Minute)) {
		t.Fatalf("laying on a wet mat: %v", err)
	}
	do(t, l, id, UseMat{"Two"}, GoOn{}, Back{}, Back{}, GoOn{Anyway: true}, Back{})
	c.after(usualDry)
	do(t, l, id, GoOn{})
	if _, err := l.Do(id, UseMat{"Two"}); err == nil {
		t.Error("another mat under laid fabric")
	}
}

// TestDueLearned: a mat that lifts early becomes due early, one that never
// lifts late; heavy loads count for more; her own number wins.
func TestDueLearned(t *testing.T) {
	l, id, c := ticked(t, 800, 0)
	load := func(lifted bool) {
		for i := range Steps {
			c.after([]int{3, 2, 2, 6, 3}[i])
			do(t, l, id, GoOn{Lifted: lifted && i == int(Peel), Anyway: true})
		}
	}
	due := func() Due { s := l.State(); return s.Due(FirstMat) }
	if d := due(); d.After != usualDue || d.Left != usualDue || !d.Guess {
		t.Errorf("at first %+v", d)
	}
	load(false)
	if d := due(); d.After != usualDue || d.Left != usualDue-1 {
		t.Errorf("after a load %+v", d)
	}
	for range 6 {
		for i := range 4 {
			load(i == 3)
		}
		if d := due(); d.Left > 0 {
			t.Errorf("it has lifted: %+v", d)
		}
		do(t, l, id, Wash{})
	}
	if d := due(); d.Guess || d.After > 5 || d.After < 2 {
		t.Errorf("it lifts at the fourth load: %+v", d)
	}
	s := l.State()
	a := s.Advise(FirstMat)
	if a.Lifts != 6 || a.Next.Low > a.Next.Mid || a.Next.Mid > a.Next.High || len(a.Curve) == 0 || a.Curve[0] > a.Curve[len(a.Curve)-1] {
		t.Errorf("advice %+v", a)
	}
	do(t, l, id, SetDue{FirstMat, 20})
	if d := due(); !d.Own || d.Left != 20 {
		t.Errorf("her own %+v", d)
	}
}

// TestWeigh: what sheds, or covers more, counts for more.
func TestWeigh(t *testing.T) {
	list := smallList(4, 0)
	load := oneLoad(list, 1, 0, allOf(list))
	if w := weigh(list, &load); w != 1000 {
		t.Errorf("a full plain load weighs %d", w)
	}
	half := load
	half.RoughCuts = []queue.RoughCut{{Width: 11 * length.Inch, Height: 11 * length.Inch / 2}}
	if w := weigh(list, &half); w != 750 {
		t.Errorf("half a mat weighs %d", w)
	}
	list.Fabrics[0].Sheds = true
	if w := weigh(list, &load); w != 1500 {
		t.Errorf("a full load that sheds weighs %d", w)
	}
}

// TestRemains: what is left of a panel is whole, inside, and nobody else's.
func TestRemains(t *testing.T) {
	const in = length.Inch
	q := &Quilt{Stock: []queue.PanelUse{{Panel: 1, Width: 40 * in, Height: 36 * in,
		RoughCuts: []queue.FromPanel{{Load: 1, X: 0, Y: 0, Width: 12 * in, Height: 12 * in}, {Load: 2, X: 12 * in, Y: 0, Width: 12 * in, Height: 10 * in}},
		ByHand:    []queue.HandCut{{X: 36 * in, Y: 0, Width: 4 * in, Height: 36 * in}}}},
		Loads: []Load{{ID: 1, Done: true}, {ID: 2}}, Count: Loads{1, 2}, Current: 2}
	now, end := q.Remains(false), q.Remains(true)
	if now[0].Width*now[0].Height/in/in != 36*24 || end[0] != (Remnant{0, 1, 0, 12 * in, 36 * in, 24 * in}) {
		t.Errorf("now %+v, in the end %+v", now, end)
	}
	area := func(rs []Remnant) (sum length.Len) {
		for _, r := range rs {
			sum += r.Width / in * r.Height / in * in
		}
		return sum
	}
	if a, b := area(now), area(end); a != (40*36-144-144)*in || b != a-120*in {
		t.Errorf("areas %v and %v", a/in, b/in)
	}
}
