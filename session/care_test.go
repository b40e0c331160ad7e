package session

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/matside/session/store"
)

// evening makes a data file with some work in it and closes it.
func evening(t testing.TB, path string) State {
	t.Helper()
	l := openAt(t, path)
	id := startOn(t, l, 9, 3)
	for i := range 12 {
		a := GoOn{}
		if i == 4 {
			a.Spoiled = []int{0, 2}
		}
		do(t, l, id, a)
	}
	do(t, l, id, Wash{}, Back{}, Leave{})
	s := l.State()
	if err := l.Close(); err != nil {
		t.Fatal(err)
	}
	return s
}

func samePlain(t testing.TB, got, want State) {
	t.Helper()
	if !reflect.DeepEqual(plain(t, got), plain(t, want)) {
		t.Errorf("got\n%+v\nwant\n%+v", got, want)
	}
}

// TestBackupAndRestore brings an evening back after another was begun, also
// while the file is open, where it must be refused.
func TestBackupAndRestore(t *testing.T) {
	dir := quickDir(t)
	path, copied := filepath.Join(dir, "a.db"), filepath.Join(dir, "copy")
	want := evening(t, path)
	l := openAt(t, path)
	n, err := Backup(path, copied, OpenOptions{})
	if err != nil || uint64(n) != want.Seq {
		t.Fatalf("backup beside an open file: %d events, %v", n, err)
	}
	if _, err := Backup(path, copied, OpenOptions{}); !errors.Is(err, os.ErrExist) {
		t.Errorf("backup over a file: %v", err)
	}
	quick := OpenOptions{Store: store.Options{Wait: 30 * time.Millisecond}}
	if _, _, err := Restore(path, copied, quick); !errors.Is(err, ErrBusy) {
		t.Errorf("restore under an open file: %v", err)
	}
	startOn(t, l, 4, 4)
	later := l.State()
	l.Close()
	got, kept, err := Restore(path, copied, quick)
	if err != nil {
		t.Fatal(err)
	}
	samePlain(t, got, want)
	samePlain(t, openAt(t, path).State(), want)
	got, _, err = Restore(filepath.Join(dir, "other.db"), kept, quick)
	if err != nil {
		t.Fatal(err)
	}
	samePlain(t, got, later)
}

// TestRestoreRefuses what isn't a whole backup, and leaves all as it was.
func TestRestoreRefuses(t *testing.T) {
	dir := quickDir(t)
	path, copied := filepath.Join(dir, "a.db"), filepath.Join(dir, "copy")
	want := evening(t, path)
	if _, err := Backup(path, copied, OpenOptions{}); err != nil {
		t.Fatal(err)
	}
	whole, _ := os.ReadFile(copied)
	lines := bytes.SplitAfter(whole, []byte("\n"))
	for name, b := range map[string][]byte{
		"empty": nil, "text": []byte("dear aunt\n"), "cut": whole[:len(whole)/2], "flipped": append(append([]byte{}, whole[:300]...), append([]byte{whole[300] ^ 4}, whole[301:]...)...),
		"no end": bytes.Join(lines[:len(lines)-2], nil), "a line less": bytes.Join(append(lines[:5:5], lines[6:]...), nil),
	} {
		bad := filepath.Join(dir, "bad")
		os.WriteFile(bad, b, 0o600)
		_, _, err := Restore(path, bad, OpenOptions{})
		var trouble *Trouble
		if !errors.As(err, &trouble) || trouble.Way.Silent() {
			t.Errorf("%s: %v", name, err)
		}
	}
	samePlain(t, openAt(t, path).State(), want)
}

// TestExportImport takes everything out and back in.
func TestExportImport(t *testing.T) {
	dir := quickDir(t)
	want := evening(t, filepath.Join(dir, "a.db"))
	var b bytes.Buffer
	if err := Export(filepath.Join(dir, "a.db"), &b, OpenOptions{}); err != nil {
		t.Fatal(err)
	}
	if !json.Valid(b.Bytes()) {
		t.Fatal("no JSON")
	}
	got, _, err := Import(filepath.Join(dir, "b.db"), bytes.NewReader(b.Bytes()), OpenOptions{})
	if err != nil {
		t.Fatal(err)
	}
	samePlain(t, got, want)
	samePlain(t, openAt(t, filepath.Join(dir, "b.db")).State(), want)
	newer := strings.Replace(b.String(), `"format": 1`, `"format": 2`, 1)
	if _, _, err := Import(filepath.Join(dir, "c.db"), strings.NewReader(newer), OpenOptions{}); !errors.Is(err, ErrNewer) {
		t.Errorf("an export of format 2: %v", err)
	}
	if !IsNew(filepath.Join(dir, "c.db")) {
		t.Error("a refused import has left a file")
	}
}

// TestCheck finds all well, then a snapshot that lies.
func TestCheck(t *testing.T) {
	path := filepath.Join(quickDir(t), "a.db")
	l := openAt(t, path)
	id := startOn(t, l, 300, 300)
	for range 600 {
		do(t, l, id, GoOn{})
	}
	l.Close()
	r, err := Check(path, OpenOptions{})
	if err != nil || !r.Sound() || r.Cached == 0 || !r.Rebuilt {
		t.Fatalf("%+v, %v", r, err)
	}
	s, err := store.Open(path, store.Options{})
	if err != nil {
		t.Fatal(err)
	}
	seq, b := s.Cached()
	wrong := bytes.Replace(b, []byte(`"Lamp Room"`), []byte(`"Lamp Rool"`), 1)
	if err := s.SetCached(seq, wrong); err != nil {
		t.Fatal(err)
	}
	s.Close()
	if r, err := Check(path, OpenOptions{}); err != nil || r.Sound() || len(r.Faults) != 1 {
		t.Errorf("a snapshot that lies: %+v, %v", r, err)
	}
}

// TestRepair loses events in both files: they are named, and the rest goes on.
func TestRepair(t *testing.T) {
	for _, at := range []uint64{1, 3, 7, 9, 12} {
		path := filepath.Join(quickDir(t), "a.db")
		was := evening(t, path)
		spoil(t, path, at)
		if _, err := Open(path, OpenOptions{}); !errors.Is(err, ErrDamaged) {
			t.Fatalf("opening with event %d lost: %v", at, err)
		}
		r, err := Repair(path, OpenOptions{})
		if err != nil || !slices.Equal(r.Lost, []uint64{at}) {
			t.Fatalf("event %d: %+v, %v", at, r, err)
		}
		l := openAt(t, path)
		s := l.State()
		if !slices.Equal(s.Lost, r.Lost) || s.Seq != was.Seq {
			t.Errorf("event %d: lost %v, seq %d", at, s.Lost, s.Seq)
		}
		if at > 1 {
			q := s.Latest()
			p := q.Pieces
			if p.Asked != 12 || p.Done+p.Left+p.Waiting+p.Short != 12 {
				t.Errorf("event %d: pieces %+v", at, p)
			}
			for i := 0; !q.Finished() && i < 60; i++ {
				q = do(t, l, q.ID, GoOn{Anyway: true})
			}
			if !q.Finished() {
				t.Errorf("event %d: can't be finished: %+v", at, q.Pieces)
			}
		}
	}
}

// spoil makes one event unsound in both files.
func spoil(t testing.TB, path string, seq uint64) {
	t.Helper()
	lines, err := store.Read(path)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range []string{path, store.JournalPath(path)} {
		b, err := os.ReadFile(p)
		if err != nil {
			t.Fatal(err)
		}
		b = bytes.ReplaceAll(b, lines[seq-1], bytes.Repeat([]byte("?"), len(lines[seq-1])))
		if err := os.WriteFile(p, b, 0o600); err != nil {
			t.Fatal(err)
		}
	}
}
