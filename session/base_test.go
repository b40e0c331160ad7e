package session

import (
	"path/filepath"
	"testing"

	"example.org/matside/session/store"
)

// TestBrief: a quilt finished long ago is known in brief after a restart, with
// a snapshot and without. What can be asked of it and done to it then is the
// same as before.
func TestBrief(t *testing.T) {
	for _, snapshot := range []bool{true, false} {
		path := filepath.Join(quickDir(t), "m.db")
		l := openAt(t, path)
		first := startOn(t, l, 0, 4)
		do(t, l, first, GoOn{}, GoOn{}, GoOn{}, GoOn{}, GoOn{})
		second := startOn(t, l, 800, 0)
		for range 3 * keepTail {
			do(t, l, second, GoOn{Anyway: true})
		}
		s := l.State()
		if err := l.Close(); err != nil {
			t.Fatal(err)
		}
		if !snapshot {
			spoilSnapshot(t, path)
		}
		inBrief(t, path, first, s)
	}
}

// spoilSnapshot leaves one behind that is of no use.
func spoilSnapshot(t *testing.T, path string) {
	t.Helper()
	s, err := store.Open(path, store.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	if seq, _ := s.Cached(); seq == 0 {
		t.Error("there was none")
	}
	if err := s.SetCached(1, []byte("of another program")); err != nil {
		t.Fatal(err)
	}
}

// inBrief opens the file again, in which the quilt first is known in brief, and
// was part of the state s.
func inBrief(t *testing.T, path string, first QuiltID, s State) {
	t.Helper()
	whole := s.Quilt(first)
	left, seq := whole.LeftoverText(), s.Seq
	l := openAt(t, path)
	s = l.State()
	q := s.Quilt(first)
	if !q.Brief {
		t.Fatal("not known in brief: the test is too short")
	}
	if q.LeftoverText() != left || q.ListName() != "Lamp Room" || q.Pieces != whole.Pieces {
		t.Errorf("in brief: %q, %q, %+v", q.LeftoverText(), q.ListName(), q.Pieces)
	}
	if offered := s.Offer(smallList(1, 1)); left != "" && (len(offered) != 1 || offered[0].ID != first) {
		t.Errorf("offered: %v", offered)
	}
	peeked, err := Peek(path)
	if err != nil || peeked.Seq != seq {
		t.Errorf("a quick look: event %d of %d, %v", peeked.Seq, seq, err)
	}
	if q = do(t, l, first, Replan{"edited", smallList(2, 4)}); q.Pieces.Done != 4 || q.Pieces.Left != 2 || q.Finished() {
		t.Errorf("its list edited: %+v", q.Pieces)
	}
	if q = do(t, l, first, Back{}, Rename{"Old"}, TakeUp{}); q.Pieces.Done != 4 || q.Name != "Old" {
		t.Errorf("%+v", q.Pieces)
	}
}
