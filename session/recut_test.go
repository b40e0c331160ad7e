package session

import (
	"slices"
	"testing"

	"example.org/matside/plan/check"
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/queue"
)

// planned starts a quilt with the real planner.
func planned(t *testing.T, text string) (*Ledger, QuiltID) {
	t.Helper()
	list := readList(t, text)
	l := New(OpenOptions{Now: clock()})
	q, err := usualPlanner(list, Wish{Wanted: allOf(list), Hand: true})
	if err != nil {
		t.Fatal(err)
	}
	id, _, err := l.Start(Start{Text: text, List: list, Queue: q})
	if err != nil {
		t.Fatal(err)
	}
	return l, id
}

func readList(t *testing.T, text string) *cutlist.List {
	t.Helper()
	list, err := cutlist.Read("test", []byte(text), nil)
	if err != nil {
		t.Fatal(err)
	}
	return list
}

// toPeel goes on to the next peel step and peels with spoiled.
func peelWith(t *testing.T, l *Ledger, id QuiltID, spoiled ...int) *Quilt {
	t.Helper()
	for range Steps - 1 {
		do(t, l, id, GoOn{Anyway: true})
	}
	return do(t, l, id, GoOn{Spoiled: spoiled})
}

// allSound holds what is still to be cut to the independent check.
func allSound(t *testing.T, q *Quilt) {
	t.Helper()
	to := &queue.Queue{List: q.List(), Stock: q.Stock, Buy: q.Buy, Fewest: queue.Fewest{Loads: 1}}
	wanted := make([][]int, len(q.List().Lines))
	for i := range q.Loads {
		l := q.Loads[i].Load
		l.Number = i + 1
		to.Loads = append(to.Loads, l)
		for _, p := range l.Pieces {
			wanted[p.Line] = append(wanted[p.Line], p.Copy)
		}
	}
	to.Stock = slices.Clone(to.Stock)
	for i := range to.Stock {
		u := &to.Stock[i]
		u.RoughCuts = slices.Clone(u.RoughCuts)
		for k := range u.RoughCuts {
			u.RoughCuts[k].Load = 1 + slices.IndexFunc(q.Loads, func(l Load) bool { return l.ID == u.RoughCuts[k].Load })
		}
	}
	for _, f := range check.Against(to, check.Asked{Wanted: wanted}) {
		// The queue as it stands was planned bit by bit: a piece may come
		// twice, and no one has proved how few loads there can be.
		if f.Kind != check.Fewest && f.Kind != check.Count {
			t.Errorf("the queue as it stands: %v", f)
		}
	}
}

// TestRecutTakenIn: spoiled pieces go where there is room among the loads
// planned before; only what has none makes a load more.
func TestRecutTakenIn(t *testing.T) {
	l, id := planned(t, "quilt Lamp Room\nfabric Ink, 40 x 40\ncut from Ink\n11 squares 5 for A\n")
	s := l.State()
	before := s.Quilt(id).LoadsLeft() // 4 + 4 + 3, the fullest first
	q := peelWith(t, l, id, 1)
	if q.LoadsLeft() != before-1 || q.Again.Extra != 0 || q.Again.Pieces != 1 || len(q.Again.Loads) != 1 {
		t.Fatalf("one piece spoiled: %d loads left of %d, %+v", q.LoadsLeft(), before, q.Again)
	}
	in := q.Load(q.Again.Loads[0])
	if in.Recut || len(in.Anew) != 1 || q.Pieces.Waiting != 1 || q.Pieces.Left != 7 {
		t.Errorf("taken in: anew %v, %+v", in.Anew, q.Pieces)
	}
	if from := q.Again.From; len(from) != 1 || q.List().Fabrics[from[0].Fabric].Name == "" || from[0].Panel != 1 {
		t.Errorf("its fabric comes from %+v", from)
	}
	allSound(t, q)
	if back := do(t, l, id, Back{}); back.LoadsLeft() != before || back.Again.Pieces != 0 || back.Pieces.Left != 11 {
		t.Errorf("taken back: %d loads, %+v", back.LoadsLeft(), back.Pieces)
	}
	do(t, l, id, GoOn{Spoiled: []int{1}})
	for s = l.State(); s.Quilt(id).InHand() != nil; s = l.State() {
		do(t, l, id, GoOn{Anyway: true})
	}
	if q = s.Quilt(id); !q.Finished() || q.Pieces.Done != 11 || q.Pieces.Spoiled != 1 {
		t.Errorf("at the end %+v", q.Pieces)
	}
}

// TestRecutNoRoom: a whole load spoiled is a load more, and no planned one is
// touched.
func TestRecutNoRoom(t *testing.T) {
	l, id := planned(t, "quilt Lamp Room\nfabric Ink\ncut from Ink\n12 squares 5 for A\n")
	q := peelWith(t, l, id, 0, 1, 2, 3)
	if q.LoadsLeft() != 3 || q.Again.Extra != 1 || !q.Loads[3].Recut || q.Loads[1].ID != 2 {
		t.Errorf("%d loads left, %+v", q.LoadsLeft(), q.Again)
	}
	if b := q.Again.Buy; len(b) != 1 || b[0].Length != q.Buy[0].Length/2 {
		t.Errorf("as much again is to be bought: %+v, of %+v", b, q.Buy)
	}
}

// TestRecutShort: when no fabric is left it is told at once.
func TestRecutShort(t *testing.T) {
	l, id := planned(t, "quilt Lamp Room\nfabric Ink, 12 x 22\ncut from Ink\n8 squares 5 for A\n")
	q := peelWith(t, l, id, 2)
	if len(q.Again.Short) != 1 || q.Again.Pieces != 0 || q.Pieces.Waiting != 1 || len(q.ShortOf()) != 1 {
		t.Errorf("%+v, %+v", q.Again, q.Pieces)
	}
}

// TestReplanInHand: a list edited while a load is on the mat leaves the load
// as it is; what it brings too much counts as extra.
func TestReplanInHand(t *testing.T) {
	l, id := planned(t, "quilt Lamp Room\nfabric Ink\ncut from Ink\n8 squares 5 for A\n")
	do(t, l, id, GoOn{}, GoOn{})
	text := "quilt Lamp Room\nfabric Ink\ncut from Ink\n2 squares 5 for A\n1 square 4 for B\n"
	q := do(t, l, id, Replan{text, readList(t, text)})
	h := q.InHand()
	if h == nil || len(h.Pieces) != 4 || q.Step != Lay || q.ListOf(h).Lines[0].Count != 8 {
		t.Fatalf("the load in hand: %+v", h)
	}
	if p := q.Pieces; p.Asked != 3 || p.Left != 3 || p.Extra != 0 {
		t.Errorf("%+v", p)
	}
	q = do(t, l, id, GoOn{}, GoOn{}, GoOn{Spoiled: []int{0, 3}}) // one asked for, one not
	if p := q.Pieces; p.Asked != 3 || p.Done != 1 || p.Extra != 1 || p.Spoiled != 2 || p.Waiting != 1 {
		t.Errorf("peeled: %+v", p)
	}
	// Edited again while the recut is on the mat, back to what it was.
	do(t, l, id, GoOn{})
	text = "quilt Lamp Room\nfabric Ink\ncut from Ink\n8 squares 5 for A\n"
	q = do(t, l, id, Replan{text, readList(t, text)})
	for q.InHand() != nil {
		q = do(t, l, id, GoOn{Anyway: true})
	}
	if p := q.Pieces; !q.Finished() || p.Done != 8 {
		t.Errorf("at the end: %+v", p)
	}
}

// TestWhere: a corner that spoils is seen.
func TestWhere(t *testing.T) {
	l, id := planned(t, "quilt Lamp Room\nfabric Ink\ncut from Ink\n25 squares 2 for A\n")
	s := l.State()
	corner := slices.IndexFunc(s.Quilt(id).InHand().Pieces, func(p queue.Placement) bool {
		b := p.Outline.Bounds()
		return b.Min.X < length.Inch && b.Min.Y < length.Inch
	})
	peelWith(t, l, id, corner)
	s = l.State()
	if s.Where.Spoiled != [3][3]int{{1}} || s.Where.Pieces[1][1] == 0 {
		t.Errorf("%+v", s.Where)
	}
}
