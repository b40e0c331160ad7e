package store

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	bolt "go.etcd.io/bbolt"
)

func lineOf(seq int) []byte { return fmt.Appendf(nil, `{"seq":%d,"kind":"step"}`, seq) }

// open opens a store and has its file checked by bbolt when the test ends.
func open(t testing.TB, path string, opt Options) *Store {
	t.Helper()
	s, err := Open(path, opt)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		s.Close()
		checkFile(t, path)
	})
	return s
}

// checkFile asks bbolt and our own reader.
func checkFile(t testing.TB, path string) {
	t.Helper()
	f, ours, err := readData(path, false)
	if err != nil || !ours || len(f.faults) > 0 {
		t.Errorf("our reader: ours %v, %v, %v", ours, f.faults, err)
	}
	db, err := bolt.Open(path, 0o600, &bolt.Options{ReadOnly: true, Timeout: time.Second})
	if err != nil {
		t.Error(err)
		return
	}
	defer db.Close()
	_ = db.View(func(tx *bolt.Tx) error {
		for err := range tx.Check() {
			t.Error(err)
		}
		return nil
	})
}

func fill(t testing.TB, s *Store, from, to int) {
	t.Helper()
	for i := from; i <= to; i++ {
		if err := s.Append(uint64(i), lineOf(i)); err != nil {
			t.Fatal(err)
		}
	}
}

// holds checks that exactly the lines 1 to n are kept.
func holds(t testing.TB, s *Store, n int) {
	t.Helper()
	next := 1
	err := s.Each(1, func(seq uint64, line []byte) error {
		if int(seq) != next || !bytes.Equal(line, lineOf(next)) {
			return fmt.Errorf("line %d is %s", seq, line)
		}
		next++
		return nil
	})
	if err != nil || next != n+1 || s.Last() != uint64(n) {
		t.Errorf("holds %d lines, last %d, want %d; %v", next-1, s.Last(), n, err)
	}
}

func TestAppendAndReopen(t *testing.T) {
	path := filepath.Join(t.TempDir(), "new", "folder", "matside.db")
	s := open(t, path, Options{})
	fill(t, s, 1, 50)
	holds(t, s, 50)
	if err := s.Append(50, lineOf(50)); err != nil {
		t.Errorf("the same again: %v", err)
	}
	if err := s.Append(50, lineOf(51)); !errors.Is(err, ErrClash) {
		t.Errorf("another line: %v", err)
	}
	if err := s.Append(53, lineOf(53)); !errors.Is(err, ErrGap) {
		t.Errorf("a gap: %v", err)
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	again := open(t, path, Options{})
	holds(t, again, 50)
	if len(again.Notes()) != 0 {
		t.Errorf("notes %q", again.Notes())
	}
	for p, want := range map[string]os.FileMode{path: 0o600, JournalPath(path): 0o600, LockPath(path): 0o600, filepath.Dir(path): 0o700} {
		if info, err := os.Stat(p); err != nil || info.Mode().Perm() != want {
			t.Errorf("%s has mode %v, want %v (%v)", p, info.Mode().Perm(), want, err)
		}
	}
}

func TestBusy(t *testing.T) {
	path := filepath.Join(t.TempDir(), "matside.db")
	s := open(t, path, Options{})
	fill(t, s, 1, 3)
	_, err := Open(path, Options{Wait: 50 * time.Millisecond})
	if !errors.Is(err, ErrBusy) {
		t.Fatalf("second open: %v", err)
	}
	t.Log(err)
	lines, err := Read(path)
	if err != nil || len(lines) != 3 {
		t.Errorf("reading beside it: %d lines, %v", len(lines), err)
	}
}

// TestEachRebuildsTheOther removes one file, then the other.
func TestEachRebuildsTheOther(t *testing.T) {
	for _, gone := range []func(string) string{JournalPath, func(p string) string { return p }} {
		path := filepath.Join(t.TempDir(), "matside.db")
		s := open(t, path, Options{})
		fill(t, s, 1, 20)
		s.Close()
		if err := os.Remove(gone(path)); err != nil {
			t.Fatal(err)
		}
		again := open(t, path, Options{})
		holds(t, again, 20)
		if len(again.Notes()) != 1 {
			t.Errorf("notes %q", again.Notes())
		}
		fill(t, again, 21, 25)
		holds(t, again, 25)
	}
}

// TestFailing fails the first write, sync or rename, then the second, and so
// on, until all goes through; each failure must be seen, and trying again
// must end with every line kept once.
func TestFailing(t *testing.T) {
	failed := errors.New("the disk says no")
	for n := 1; ; n++ {
		path := filepath.Join(t.TempDir(), "matside.db")
		calls, seen := 0, 0
		where := ""
		fault := func(op string) error {
			if calls++; calls == n {
				where = op
				return failed
			}
			return nil
		}
		var s *Store
		for tries := 0; s == nil; tries++ {
			var err error
			if s, err = Open(path, Options{Fault: fault}); err != nil {
				seen++
				if tries > 0 || !errors.Is(err, failed) {
					t.Fatalf("%d: opening: %v", n, err)
				}
			}
		}
		for i := 1; i <= 5; i++ {
			err := s.Append(uint64(i), lineOf(i))
			if err != nil {
				seen++
				if !errors.Is(err, failed) {
					t.Fatalf("%d: append: %v", n, err)
				}
				err = s.Append(uint64(i), lineOf(i))
			}
			if err != nil {
				t.Fatalf("%d: append again: %v", n, err)
			}
		}
		holds(t, s, 5)
		s.Close()
		checkFile(t, path)
		holds(t, open(t, path, Options{}), 5)
		if calls < n {
			t.Logf("%d places to fail", n-1)
			return
		}
		if seen == 0 && where != "after commit" && !strings.HasPrefix(where, "backup: ") { // by then the line is on disk in both
			t.Errorf("%d, %s: nobody saw the failure", n, where)
		}
	}
}
