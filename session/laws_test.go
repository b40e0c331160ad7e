package session

import (
	"errors"
	"slices"
	"testing"
	"time"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/queue"
	"pgregory.net/rapid"
)

// scarce plans as fourToALoad does, but has fabric for limit pieces only.
func scarce(limit *int) Planner {
	return func(list *cutlist.List, w Wish) (*queue.Queue, error) {
		n := min(*limit, len(w.Wanted))
		*limit -= n
		q, err := fourToALoad(list, Wish{Wanted: w.Wanted[:n]})
		if w.Hand && n < len(w.Wanted) {
			missing := make([]int, len(list.Lines))
			for _, c := range w.Wanted[n:] {
				missing[c.Line]++
			}
			q.Short = []queue.Short{{Missing: missing}}
		}
		return q, err
	}
}

// anyAction draws what she might do, sensible or not.
func anyAction(t *rapid.T, s *State, id QuiltID) Action {
	var pieces int
	if q := s.Quilt(id); q != nil && q.InHand() != nil {
		pieces = len(q.InHand().Pieces)
	}
	kinds := []string{"go", "go", "go", "go", "go", "back", "spoil", "move", "skip", "join", "replan", "wash", "mat", "use", "due", "pause", "resume",
		"leave", "sit", "rename", "aside", "take up", "unwash", "blade", "refresh"}
	switch rapid.SampledFrom(kinds).Draw(t, "action") {
	case "back":
		return Back{}
	case "spoil":
		a := GoOn{Anyway: true, Apart: rapid.Bool().Draw(t, "apart"), Lifted: rapid.Bool().Draw(t, "lifted")}
		for i := range pieces {
			if rapid.IntRange(0, 2).Draw(t, "spoiled") == 0 {
				a.Spoiled = append(a.Spoiled, i)
			}
		}
		return a
	case "move":
		return Move{rapid.IntRange(1, 8).Draw(t, "load"), rapid.IntRange(0, 5).Draw(t, "to")}
	case "skip":
		return Skip{rapid.IntRange(1, 8).Draw(t, "load")}
	case "join":
		return JoinRecuts{}
	case "replan":
		return Replan{"edited", smallList(rapid.IntRange(0, 12).Draw(t, "ink"), rapid.IntRange(0, 6).Draw(t, "sand"))}
	case "wash":
		return Wash{}
	case "unwash":
		return TakeBackMat{}
	case "mat":
		return AddMat{Mat: rapid.SampledFrom([]string{"Two", "Three"}).Draw(t, "mat")}
	case "use":
		return UseMat{rapid.SampledFrom([]string{"One", "Two", "Three"}).Draw(t, "mat")}
	case "due":
		return SetDue{"", rapid.IntRange(0, 9).Draw(t, "due")}
	case "pause":
		return Pause{}
	case "resume":
		return Resume{}
	case "leave":
		return Leave{}
	case "sit":
		return SitDown{}
	case "rename":
		return Rename{"Lantern"}
	case "aside":
		return PutAside{}
	case "take up":
		return TakeUp{}
	case "blade":
		return ChangeBlade{}
	case "refresh":
		return Refresh{}
	}
	return GoOn{Anyway: true}
}

// TestLaws draws evenings and holds them to Fold's laws after each event.
func TestLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		limit := rapid.IntRange(0, 60).Draw(t, "fabric")
		c := &ticking{time.Date(2026, 3, 7, 19, 0, 0, 0, time.UTC)}
		l := New(OpenOptions{Now: c.now, Planner: scarce(&limit)})
		var quilts []QuiltID
		for range rapid.IntRange(1, 2).Draw(t, "quilts") {
			list := smallList(rapid.IntRange(0, 10).Draw(t, "ink"), rapid.IntRange(0, 6).Draw(t, "sand"))
			q, _ := scarce(&limit)(list, Wish{Wanted: allOf(list), Hand: true})
			id, _, err := l.Start(Start{List: list, Queue: q})
			if err != nil {
				t.Fatal(err)
			}
			quilts = append(quilts, id)
		}
		for range rapid.IntRange(0, 60).Draw(t, "steps") {
			c.after(rapid.IntRange(0, 40).Draw(t, "minutes"))
			s := l.State()
			id := rapid.SampledFrom(quilts).Draw(t, "quilt")
			did(t, l, id, anyAction(t, &s, id), s)
		}
		folded, err := Fold(l.tail)
		if err != nil || !same(folded, l.State()) {
			t.Fatalf("the fold of all is another: %v", err)
		}
	})
}

// did does one action and checks what it led to; before is the state it was
// done in.
func did(t *rapid.T, l *Ledger, id QuiltID, a Action, before State) {
	n := len(l.tail)
	s, err := l.Do(id, a)
	if err != nil {
		var refused *Refused
		if !errors.As(err, &refused) && !errors.Is(err, ErrNothingBack) {
			t.Fatalf("%T: %v", a, err)
		}
		return
	}
	for _, q := range s.Quilts {
		counts(t, q)
	}
	if len(l.tail) == n {
		return
	}
	e := l.tail[n]
	if u, ok := e.Content.(Undone); ok {
		shorter := slices.DeleteFunc(slices.Clone(l.tail[:n]), func(e Event) bool { return e.Seq == u.Target })
		law2(t, shorter, s)
	} else if canTakeBack(e.Content) {
		undo := append(slices.Clone(l.tail), Event{Seq: e.Seq + 1, At: e.At, Quilt: e.Quilt, Content: Undone{e.Seq}})
		back, err := Fold(undo)
		if err != nil || !same(back, before) {
			t.Fatalf("law (2): %T taken back is another state than before: %v", e.Content, err)
		}
	}
}

// law2: the state after an Undone is the fold of the log without its target.
// The numbers close up, so that only what bears none is compared.
func law2(t *rapid.T, shorter []Event, s State) {
	short, err := foldLive(shorter)
	if err != nil {
		t.Fatalf("law (2): %v", err)
	}
	if len(short.Quilts) != len(s.Quilts) {
		t.Fatalf("law (2): %d quilts, want %d", len(s.Quilts), len(short.Quilts))
	}
	for i, q := range s.Quilts {
		if w := short.Quilts[i]; q.Pieces != w.Pieces || q.Current != w.Current || q.Step != w.Step || q.Mat != w.Mat || q.Standing != w.Standing || q.Last != w.Last || len(q.Loads) != len(w.Loads) {
			t.Fatalf("law (2): quilt %d is %+v at %s, want %+v at %s", q.ID, q.Pieces, q.Step, w.Pieces, w.Step)
		}
	}
	for i, m := range s.Mats {
		if w := short.Mats[i]; m.Since != w.Since || m.Washes != w.Washes || m.Due != w.Due || m.Loads != w.Loads || m.Last != w.Last {
			t.Fatalf("law (2): mat %+v, want %+v", m, w)
		}
	}
}

// foldLive folds events whose numbers have a gap: it takes each by its own
// number, as the fold of the whole log does with one that is dead.
func foldLive(events []Event) (State, error) {
	dead := map[uint64]bool{}
	for _, e := range events {
		if u, ok := e.Content.(Undone); ok {
			dead[u.Target] = true
		}
	}
	s := newState()
	for i := range events {
		s.Seq = events[i].Seq - 1
		if err := s.apply(&events[i], dead); err != nil {
			return s, err
		}
	}
	return s, nil
}

// counts is law (3), counted over from the loads.
func counts(t *rapid.T, q *Quilt) {
	p := q.Pieces
	if p.Asked != p.Done+p.Left+p.Waiting+p.Short || min(p.Done, p.Left, p.Waiting, p.Short, p.Spoiled, p.Extra) < 0 {
		t.Fatalf("law (3): %+v", p)
	}
	asked, left, waiting, done := 0, 0, len(q.NoFabric), 0
	for _, l := range q.List().Lines {
		asked += l.Count
	}
	for _, n := range q.LineDone {
		done += n
	}
	drawings := map[int]string{}
	for _, l := range q.Loads {
		if d := l.Load.Drawing(); drawings[l.Layout] == "" {
			drawings[l.Layout] = d
		} else if drawings[l.Layout] != d {
			t.Fatalf("drawing %d stands for two", l.Layout)
		}
		for i := range l.Pieces {
			switch {
			case l.Done, l.As != nil && l.As[i].Line < 0:
			case l.Recut, slices.Contains(l.Anew, i):
				waiting++
			default:
				left++
			}
		}
	}
	if asked != p.Asked || left != p.Left || waiting != p.Waiting || done != p.Done {
		t.Fatalf("law (3): %+v, but counted asked %d, left %d, waiting %d, done %d", p, asked, left, waiting, done)
	}
	if q.Count.All != len(q.Loads) || q.LoadsLeft() != len(q.ToCome()) {
		t.Fatalf("loads %+v of %d", q.Count, len(q.Loads))
	}
}

// FuzzFold: law (1), no log makes it panic. The bytes pick events of a lively
// log, out of order, again, or not at all.
func FuzzFold(f *testing.F) {
	l, id := begin(f, 9, 3)
	for i := range 20 {
		a := GoOn{Anyway: true}
		if i == 4 {
			a.Spoiled = []int{1, 2}
		}
		do(f, l, id, a)
	}
	do(f, l, id, Wash{}, AddMat{Mat: "Two"}, Back{}, Back{}, Back{}, UseMat{"Two"}, Replan{"t", smallList(12, 3)}, PutAside{}, TakeUp{}, Finish{})
	events := l.tail
	f.Add([]byte{0, 1, 2, 3, 4, 5, 6, 7, 8})
	f.Add([]byte{0, 0, 22, 3, 27, 5, 5, 5})
	f.Fuzz(func(t *testing.T, picks []byte) {
		var log []Event
		for i, p := range picks {
			e := events[int(p)%len(events)]
			e.Seq = uint64(i + 1)
			log = append(log, e)
		}
		if s, err := Fold(log); err == nil {
			if _, err := s.encode(); err != nil {
				t.Error(err)
			}
		} else if !errors.Is(err, ErrCannotFollow) {
			t.Error(err)
		}
		if len(log) > 3 { // and with an event lost
			log[len(log)/2].Content = Lost{}
			_, _ = Fold(log)
		}
	})
}

// FuzzDecode: no line makes it panic, and the quick way reads what the slow
// one does.
func FuzzDecode(f *testing.F) {
	l, id := begin(f, 5, 2)
	do(f, l, id, GoOn{}, GoOn{}, GoOn{}, GoOn{}, GoOn{Spoiled: []int{0, 2}, Lifted: true}, Wash{}, Back{}, GoOn{Ragged: true, Spoiled: []int{1}}, Leave{}, SitDown{}, Pause{}, Resume{})
	for _, e := range l.tail {
		line, err := e.Encode()
		if err != nil {
			f.Fatal(err)
		}
		f.Add(line)
	}
	f.Add([]byte(`{"seq":2,"at":"2026-02-31T19:02:00.000+01:00","quilt":1,"kind":"left","v":1,"c":{}}`))
	f.Fuzz(func(t *testing.T, line []byte) {
		fast, ok := quick(line)
		slow, err := decode(line)
		if !ok {
			return
		}
		if err != nil || !fast.At.Equal(slow.At) || fast.Seq != slow.Seq || fast.Quilt != slow.Quilt {
			t.Fatalf("quick %+v, slow %+v, %v", fast, slow, err)
		}
		a, err1 := fast.Encode()
		b, err2 := slow.Encode()
		if err1 != nil || err2 != nil || string(a) != string(b) {
			t.Fatalf("quick %s, slow %s", a, b)
		}
	})
}
