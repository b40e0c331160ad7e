package session

import (
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"testing"
	"time"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
)

// aSquare is a square's outline.
func aSquare(side length.Len) outline.Outline {
	return outline.Outline{{X: 0, Y: 0}, {X: side, Y: 0}, {X: side, Y: side}, {X: 0, Y: side}}
}

// smallList asks for a squares of Ink and b of Sand.
func smallList(a, b int) *cutlist.List {
	const side = 5 * length.Inch
	line := func(number, fabric, count int, label string) cutlist.Line {
		return cutlist.Line{Number: number, Fabric: fabric, Count: count, Shape: "square", Size: "5", Label: label, Outline: aSquare(side)}
	}
	return &cutlist.List{
		Quilt: "Lamp Room", Margin: length.Inch / 4,
		Mat:     cutlist.Mat{Width: 12 * length.Inch, Height: 12 * length.Inch, UsableWidth: 11 * length.Inch, UsableHeight: 11 * length.Inch},
		Fabrics: []cutlist.Fabric{{Name: "Ink", Line: 1}, {Name: "Sand", Line: 2, Stock: []cutlist.Panel{{Width: 21 * length.Inch, Height: 18 * length.Inch}}}},
		Lines:   []cutlist.Line{line(4, 0, a, "A"), line(6, 1, b, "B")},
	}
}

// fourToALoad plans pieces in their order, four squares to a load of one
// fabric: simple, true, and not the packer under test elsewhere.
func fourToALoad(list *cutlist.List, w Wish) (*queue.Queue, error) {
	q := &queue.Queue{List: list}
	byFabric := make([][]Copy, len(list.Fabrics))
	for _, c := range w.Wanted {
		f := list.Lines[c.Line].Fabric
		byFabric[f] = append(byFabric[f], c)
	}
	for f, copies := range byFabric {
		for len(copies) > 0 {
			n := min(4, len(copies))
			q.Loads = append(q.Loads, oneLoad(list, len(q.Loads)+1, f, copies[:n]))
			q.Stock = append(q.Stock, queue.PanelUse{Fabric: f, Panel: 1, Width: 40 * length.Inch, Height: 72 * length.Inch,
				RoughCuts: []queue.FromPanel{{Load: len(q.Loads), Width: 11 * length.Inch, Height: 11 * length.Inch}}})
			copies = copies[n:]
		}
	}
	return q, nil
}

func oneLoad(list *cutlist.List, number, fabric int, copies []Copy) queue.Load {
	l := queue.Load{Number: number, Layout: number, CutLength: 60 * length.Inch,
		RoughCuts: []queue.RoughCut{{Fabric: fabric, Panel: 1, X: length.Inch / 4, Y: length.Inch / 4, Width: 11 * length.Inch, Height: 11 * length.Inch}}}
	for i, c := range copies {
		at := outline.Point{X: length.Inch/2 + length.Len(i%2)*5*length.Inch, Y: length.Inch/2 + length.Len(i/2)*5*length.Inch}
		o := make(outline.Outline, 4)
		for k, p := range list.Lines[c.Line].Outline {
			o[k] = outline.Point{X: p.X + at.X, Y: p.Y + at.Y}
		}
		l.Pieces = append(l.Pieces, queue.Placement{Line: c.Line, Copy: c.Copy, Outline: o})
	}
	return l
}

func allOf(list *cutlist.List) []Copy { return newRoom(list).left() }

// quickDir is a folder in memory where there is one: a kill is no power cut,
// so the disk doesn't matter here.
func quickDir(t testing.TB) string {
	dir, err := os.MkdirTemp("/dev/shm", "matside")
	if err != nil {
		return t.TempDir()
	}
	t.Cleanup(func() { os.RemoveAll(dir) })
	return dir
}

// clock ticks two minutes at each look.
func clock() func() time.Time {
	at := time.Date(2026, 3, 7, 19, 0, 0, 0, time.FixedZone("", 3600))
	return func() time.Time {
		at = at.Add(2 * time.Minute)
		return at
	}
}

func begin(t testing.TB, a, b int) (*Ledger, QuiltID) {
	t.Helper()
	l := New(OpenOptions{Now: clock(), Planner: fourToALoad})
	return l, startOn(t, l, a, b)
}

func startOn(t testing.TB, l *Ledger, a, b int) QuiltID {
	t.Helper()
	list := smallList(a, b)
	q, _ := fourToALoad(list, Wish{Wanted: allOf(list)})
	id, _, err := l.Start(Start{Text: "text", List: list, Queue: q})
	if err != nil {
		t.Fatal(err)
	}
	return id
}

func do(t testing.TB, l *Ledger, id QuiltID, actions ...Action) *Quilt {
	t.Helper()
	for _, a := range actions {
		if _, err := l.Do(id, a); err != nil {
			t.Fatalf("%T: %v", a, err)
		}
	}
	s := l.State()
	return s.Quilt(id)
}

// TestOnlyGoingOn goes from the first step to the end of the last load.
func TestOnlyGoingOn(t *testing.T) {
	l, id := begin(t, 9, 3)
	for i := 0; i < 4*Steps; i++ {
		do(t, l, id, GoOn{})
	}
	s := l.State()
	q := s.Quilt(id)
	if want := (Pieces{Asked: 12, Done: 12}); q.Pieces != want || !q.Finished() {
		t.Errorf("pieces %+v, want %+v; finished %v", q.Pieces, want, q.Finished())
	}
	if m := s.Mat(FirstMat); m.Since != 4 {
		t.Errorf("the mat has done %d loads, want 4", m.Since)
	}
	var refused *Refused
	if _, err := l.Do(id, GoOn{}); !errors.As(err, &refused) {
		t.Errorf("going on after the end: %v", err)
	}
	if st := s.Status(id); st.Step != "finished" || !st.Finished || st.LoadsDone != 4 || st.Mats[0].LoadsUntilDue != 4 {
		t.Errorf("status %+v", st)
	}
}

// TestRecut spoils two pieces, one of them twice.
func TestRecut(t *testing.T) {
	l, id := begin(t, 4, 4)
	steps := []Action{GoOn{}, GoOn{}, GoOn{}, GoOn{}}
	q := do(t, l, id, append(steps, GoOn{Spoiled: []int{3, 1}})...)
	if want := (Pieces{Asked: 8, Done: 2, Left: 4, Waiting: 2, Spoiled: 2}); q.Pieces != want {
		t.Fatalf("pieces %+v, want %+v", q.Pieces, want)
	}
	if n := len(q.Loads); n != 3 || !q.Loads[2].Recut || q.Loads[2].ID != 3 {
		t.Fatalf("%d loads, last %+v", n, q.Loads[n-1])
	}
	q = do(t, l, id, append(steps, GoOn{Spoiled: []int{0}})...)
	if n := len(q.Loads); n != 4 { // Ink and Sand apart: fourToALoad mixes none
		t.Fatalf("%d loads after joining", n)
	}
	do(t, l, id, append(steps, GoOn{Spoiled: []int{0}})...)
	do(t, l, id, append(steps, GoOn{})...)
	q = do(t, l, id, append(steps, GoOn{})...)
	if want := (Pieces{Asked: 8, Done: 8, Spoiled: 4}); q.Pieces != want || !q.Finished() {
		t.Errorf("pieces %+v, want %+v", q.Pieces, want)
	}
}

// TestBack takes back all there is, and finds the beginning again.
func TestBack(t *testing.T) {
	l, id := begin(t, 9, 3)
	var states []State
	for i := range 17 {
		states = append(states, l.State())
		a := GoOn{}
		if i == 4 {
			a.Spoiled = []int{2}
		}
		do(t, l, id, a)
	}
	for i := len(states) - 1; i >= 0; i-- {
		do(t, l, id, Back{})
		if got := l.State(); !same(got, states[i]) {
			t.Fatalf("back to %d:\n%+v\nwant\n%+v", i, got.Quilt(id), states[i].Quilt(id))
		}
	}
	if _, err := l.Do(id, Back{}); !errors.Is(err, ErrNothingBack) {
		t.Errorf("back from the beginning: %v", err)
	}
}

// same compares states but for Seq and At, law (2).
func same(a, b State) bool {
	a.Seq, a.At, b.Seq, b.At = 0, time.Time{}, 0, time.Time{}
	a.learned, b.learned = nil, nil
	return reflect.DeepEqual(a, b)
}

// TestReplan edits the list halfway: two squares more, one line gone.
func TestReplan(t *testing.T) {
	l, id := begin(t, 9, 3)
	for range Steps + 1 {
		do(t, l, id, GoOn{})
	}
	list := smallList(11, 3)
	list.Lines[0], list.Lines[1] = list.Lines[1], list.Lines[0]
	q := do(t, l, id, Replan{Text: "new", List: list})
	if want := (Pieces{Asked: 14, Done: 4, Left: 10}); q.Pieces != want {
		t.Fatalf("pieces %+v, want %+v", q.Pieces, want)
	}
	if in := q.InHand(); in == nil || in.ID != 2 || q.Step != Press {
		t.Fatalf("in hand %+v at %s", in, q.Step)
	}
	for !q.Finished() {
		q = do(t, l, id, GoOn{})
	}
	if want := (Pieces{Asked: 14, Done: 14}); q.Pieces != want {
		t.Errorf("pieces %+v, want %+v", q.Pieces, want)
	}
	if q.LineDone[0] != 3 || q.LineDone[1] != 11 {
		t.Errorf("done by line: %v", q.LineDone)
	}
}

// TestCodec sends every event of a lively log through its line and back.
func TestCodec(t *testing.T) {
	l := lively(t, filepath.Join(t.TempDir(), "m.db"))
	var again []Event
	for _, e := range l.tail {
		line, err := e.Encode()
		if err != nil {
			t.Fatal(err)
		}
		back, err := Decode(line)
		if err != nil {
			t.Fatal(err)
		}
		if second, err := back.Encode(); err != nil || string(second) != string(line) {
			t.Errorf("%v: %s came back as %s", err, line, second)
		}
		again = append(again, back)
	}
	s, err := Fold(again)
	if err != nil {
		t.Fatal(err)
	}
	samePlain(t, s, l.state)
}
