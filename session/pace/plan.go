package pace

import "time"

// Mat is what a plan must know of one: how many loads until it is due for a
// wash, counted anew from After once washed, and when it is dry.
type Mat struct {
	Name  string
	Left  int
	After int
	Dry   time.Duration // from the beginning of the plan
}

// Washing says how long washing keeps her hands, and the mat afterwards.
type Washing struct{ Wash, Dry time.Duration }

// Task is one step of a plan: who does it to what, from when to when.
type Task struct {
	Load     int // index into the todo list, or -1 for a wash
	Step     int
	Mat      string
	From, To time.Duration
}

// Plan is what a sensible order of work looks like.
type Plan struct {
	Tasks []Task
	Long  time.Duration // from beginning to end
}

// Schedule plans the loads on the mats, in their order: while one is cut, the
// next is cut out and pressed, and, where another mat is dry, laid on it, and
// the one before is peeled. A mat that is due is washed when it is free, and
// left to dry. mats holds one at least, the one in use first. Greedy, not
// proved the shortest: it is what one would do.
func (p Pace) Schedule(todo []Todo, mats []Mat, w Washing) Plan {
	s := schedule{pace: p, washing: w, mats: append([]Mat(nil), mats...), onCutter: -1}
	for i, t := range todo {
		s.load(i, t)
	}
	s.finish()
	return s.plan
}

type schedule struct {
	pace    Pace
	washing Washing
	mats    []Mat
	plan    Plan
	hands   time.Duration // free from then on
	cutter  time.Duration
	// The load on the cutter, or -1, and its mat.
	onCutter, matThere int
	todo               Todo
}

// load does what can be done with one load until it lies on the cutter.
func (s *schedule) load(i int, t Todo) {
	if t.At < Lay {
		for step := t.At; step < Lay; step++ {
			s.byHand(i, step, "", s.took(t, step))
		}
	}
	m := s.pick()
	switch {
	case t.At > Lay:
		m = 0 // it lies on the first mat, the one in use
	case s.onCutter >= 0 && m == s.matThere:
		s.peel()
		m = s.pick()
		fallthrough
	default:
		s.waitFor(m)
		s.byHand(i, Lay, s.mats[m].Name, s.took(t, Lay))
	}
	s.cut(i, t, m)
}

// cut changes the mats: the load goes under the blade as soon as the one there
// is done, and that one is peeled meanwhile.
func (s *schedule) cut(i int, t Todo, m int) {
	before, there, todo := s.onCutter, s.matThere, s.todo
	from := max(s.hands, s.cutter)
	s.hands, s.cutter = from, from
	if t.At <= Cut {
		s.cutter += s.took(t, Cut)
		s.note(Task{i, Cut, s.mats[m].Name, from, s.cutter})
	}
	if before >= 0 {
		s.peelOff(before, there, todo)
	}
	s.onCutter, s.matThere, s.todo = i, m, t
}

func (s *schedule) took(t Todo, step int) time.Duration {
	d := s.pace.Took(step, t.Metres)
	if step == t.At {
		d = max(d-t.Spent, 0)
	}
	return d
}

// pick is the mat that can be laid on first: one that is free rather than the
// one on the cutter, unless it is still wet when that is peeled.
func (s *schedule) pick() int {
	best, at := 0, time.Duration(1<<62)
	for m := range s.mats {
		free := max(s.mats[m].Dry, s.hands)
		if m == s.matThere && s.onCutter >= 0 {
			free = max(free, s.cutter) + s.pace.Took(Peel, 0)
		}
		if free < at {
			best, at = m, free
		}
	}
	return best
}

// waitFor waits until a mat is dry.
func (s *schedule) waitFor(m int) { s.hands = max(s.hands, s.mats[m].Dry) }

// finish peels what is on the cutter.
func (s *schedule) finish() {
	if s.onCutter >= 0 {
		s.peel()
	}
}

// peel waits for the cutter and takes its load off.
func (s *schedule) peel() {
	s.hands = max(s.hands, s.cutter)
	s.peelOff(s.onCutter, s.matThere, s.todo)
	s.onCutter = -1
}

// peelOff peels a load, and washes its mat when that is due.
func (s *schedule) peelOff(load, mat int, t Todo) {
	m := &s.mats[mat]
	s.byHand(load, Peel, m.Name, s.took(t, Peel))
	if m.Left--; m.Left <= 0 && m.After > 0 {
		s.byHand(-1, 0, m.Name, s.washing.Wash)
		m.Left, m.Dry = m.After, s.hands+s.washing.Dry
	}
}

func (s *schedule) byHand(load, step int, mat string, d time.Duration) {
	s.note(Task{load, step, mat, s.hands, s.hands + d})
	s.hands += d
}

func (s *schedule) note(t Task) {
	s.plan.Tasks = append(s.plan.Tasks, t)
	s.plan.Long = max(s.plan.Long, t.To)
}
