package main

import (
	"testing"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/say"
	"example.org/matside/session"
)

// A replanner tells its steps, and hurried it still gives a whole plan.
func TestReplanner(t *testing.T) {
	list, err := cutlist.Read("test", []byte("quilt Q\nfabric Ink\ncut from Ink\n40 half-square triangles 3 finished\n9 squares 4\n"), nil)
	if err != nil {
		t.Fatal(err)
	}
	var wish session.Wish
	for line, l := range list.Lines {
		for c := range l.Count {
			wish.Wanted = append(wish.Wanted, session.Copy{Line: line, Copy: c + 1})
		}
	}
	var r replanner
	told := 0
	r.Watch(func(say.Sentence) { told++ })
	for _, hurry := range []bool{false, true} {
		if hurry {
			r.Hurry()
		}
		q, err := r.plan(list, wish)
		if err != nil {
			t.Fatal(err)
		}
		pieces := 0
		for _, l := range q.Loads {
			pieces += len(l.Pieces)
		}
		if pieces != len(wish.Wanted) {
			t.Errorf("hurried %v: %d pieces of %d are planned", hurry, pieces, len(wish.Wanted))
		}
	}
	if told == 0 {
		t.Error("no step was told")
	}
}
