package session

import (
	"errors"
	"path/filepath"
	"reflect"
	"testing"
	"time"

	"example.org/matside/session/store"
)

func openAt(t testing.TB, path string) *Ledger {
	t.Helper()
	l, err := Open(path, OpenOptions{Now: clock(), Planner: fourToALoad, Store: store.Options{Wait: 50 * time.Millisecond}})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { l.Close() })
	return l
}

// plain puts a state in a form in which times compare.
func plain(t testing.TB, s State) State {
	t.Helper()
	b, err := s.encode()
	if err != nil {
		t.Fatal(err)
	}
	p, err := decodeState(b)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestOpenAgain(t *testing.T) {
	path := filepath.Join(t.TempDir(), "matside.db")
	l := openAt(t, path)
	id := startOn(t, l, 9, 3)
	do(t, l, id, GoOn{}, GoOn{}, GoOn{}, GoOn{}, GoOn{Spoiled: []int{1}}, Wash{}, GoOn{}, Leave{})
	want := l.State()
	if _, err := Open(path, OpenOptions{Store: store.Options{Wait: 50 * time.Millisecond}}); !errors.Is(err, ErrBusy) {
		t.Errorf("second open: %v", err)
	}
	peeked, err := Peek(path)
	if err != nil || !reflect.DeepEqual(plain(t, peeked), plain(t, want)) {
		t.Errorf("peeked:\n%+v\nwant\n%+v; %v", peeked.Quilt(id), want.Quilt(id), err)
	}
	l.Close()
	again := openAt(t, path)
	if got := again.State(); !reflect.DeepEqual(plain(t, got), plain(t, want)) {
		t.Errorf("opened again:\n%+v\nwant\n%+v", got.Quilt(id), want.Quilt(id))
	}
	do(t, again, id, Back{}, Back{}) // also after a restart
	if q := again.state.Quilt(id); q.Pieces.Done != 0 || q.Step != Peel {
		t.Errorf("back after opening again: %+v at %s", q.Pieces, q.Step)
	}
}
