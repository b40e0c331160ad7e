//go:build unix

package session

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"example.org/matside/session/store"

	bolt "go.etcd.io/bbolt"
)

// wants is what an error must be: a Trouble with a way out, of a kind.
func wants(t *testing.T, name string, err, kind error) {
	t.Helper()
	var trouble *Trouble
	switch {
	case err == nil:
		t.Errorf("%s: no word of it", name)
	case !errors.As(err, &trouble) || trouble.What.Silent() || trouble.Way.Silent():
		t.Errorf("%s: no way out in %v", name, err)
	case kind != nil && !errors.Is(err, kind):
		t.Errorf("%s: %v, want %v", name, err, kind)
	default:
		told(t, name, err.Error())
	}
}

// TestMatrixAtStart: what can stand where the data file should, with no
// journal to help. Each gives a message and is left as it was.
func TestMatrixAtStart(t *testing.T) {
	whole := filepath.Join(t.TempDir(), "whole.db")
	evening(t, whole)
	good, err := os.ReadFile(whole)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name string
		make func(path string) error
		kind error
	}{
		{"one byte", writes([]byte{1}), ErrNotOurs},
		{"a letter", writes([]byte("dear aunt, the fabric has come\n")), ErrNotOurs},
		{"zeros", writes(make([]byte, 1<<18)), ErrNotOurs},
		{"cut to 100 bytes", writes(good[:100]), ErrNotOurs},
		{"cut to 8192 bytes", writes(good[:8192]), ErrNotOurs},
		{"another program's", foreign, ErrNotOurs},
		{"a folder", func(p string) error { return os.Mkdir(p, 0o700) }, ErrNotOurs},
		{"a link to nowhere", func(p string) error { return os.Symlink(p+"-gone", p) }, nil},
		{"a pipe", func(p string) error { return syscall.Mkfifo(p, 0o600) }, ErrNotOurs},
		{"its folder is a file", func(p string) error { return os.WriteFile(filepath.Dir(p)+"/sub", nil, 0o600) }, nil},
	} {
		dir := t.TempDir()
		path := filepath.Join(dir, "m.db")
		if err := c.make(path); err != nil {
			t.Fatal(err)
		}
		before := tree(t, dir)
		if c.name == "its folder is a file" {
			path = filepath.Join(dir, "sub", "m.db")
		}
		_, err := Open(path, OpenOptions{})
		wants(t, c.name, err, c.kind)
		_, err = Peek(path)
		if c.kind == ErrNotOurs {
			wants(t, c.name+", looked at", err, c.kind)
		}
		if after := tree(t, dir); after != before {
			t.Errorf("%s: the folder was\n%s, is\n%s", c.name, before, after)
		}
	}
}

func writes(b []byte) func(string) error {
	return func(p string) error { return os.WriteFile(p, b, 0o600) }
}

// foreign makes a sound bbolt file of another program.
func foreign(path string) error {
	db, err := bolt.Open(path, 0o600, nil)
	if err != nil {
		return err
	}
	err = db.Update(func(tx *bolt.Tx) error {
		b, err := tx.CreateBucket([]byte("recipes"))
		if err != nil {
			return err
		}
		return b.Put([]byte("bread"), []byte("flour"))
	})
	return errors.Join(err, db.Close())
}

// tree lists names and contents, but for lock files.
func tree(t *testing.T, dir string) string {
	t.Helper()
	var out strings.Builder
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if strings.HasSuffix(e.Name(), ".lock") {
			continue
		}
		b := []byte("-")
		if e.Type().IsRegular() {
			b, _ = os.ReadFile(filepath.Join(dir, e.Name()))
		}
		fmt.Fprintf(&out, "%s %v %x\n", e.Name(), e.Type(), len(b))
	}
	return out.String()
}

// TestEmptyFile: an empty file is a new one; beside a journal it is damage,
// and is made anew.
func TestEmptyFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "m.db")
	os.WriteFile(path, nil, 0o600)
	want := evening(t, path)
	os.WriteFile(path, nil, 0o600)
	l := openAt(t, path)
	samePlain(t, l.State(), want)
	if len(l.Notes()) == 0 {
		t.Error("nothing said of it")
	}
}

// TestSecondProcess: another process holds the file; who holds it is named,
// and looking is allowed.
func TestSecondProcess(t *testing.T) {
	path := filepath.Join(t.TempDir(), "m.db")
	want := evening(t, path)
	c := exec.Command(os.Args[0])
	c.Env = append(os.Environ(), childJob+"=hold", childPath+"="+path)
	in, _ := c.StdinPipe()
	out, _ := c.StdoutPipe()
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	out.Read(make([]byte, 10))
	started := time.Now()
	_, err := Open(path, OpenOptions{})
	wants(t, "open elsewhere", err, ErrBusy)
	if took := time.Since(started); took < 900*time.Millisecond || took > 3*time.Second {
		t.Errorf("waited %v", took)
	}
	if !strings.Contains(err.Error(), fmt.Sprint(c.Process.Pid)) {
		t.Errorf("who holds it isn't named: %v", err)
	}
	s, err := Peek(path)
	if err != nil {
		t.Fatal(err)
	}
	samePlain(t, s, want)
	in.Close()
	_ = c.Wait()
	openAt(t, path)
}

// TestSwappedWhileOpen: the data file or its journal is moved, removed,
// replaced or cut short under an open session: the next step says so, and
// starting again brings everything back.
func TestSwappedWhileOpen(t *testing.T) {
	for name, harm := range map[string]func(path string) error{
		"removed":         os.Remove,
		"moved":           func(p string) error { return os.Rename(p, p+"-away") },
		"replaced":        func(p string) error { os.WriteFile(p+"2", []byte("x"), 0o600); return os.Rename(p+"2", p) },
		"cut short":       func(p string) error { return os.Truncate(p, 4096) },
		"journal removed": func(p string) error { return os.Remove(store.JournalPath(p)) },
		"journal replaced": func(p string) error {
			os.WriteFile(p+"2", []byte("x"), 0o600)
			return os.Rename(p+"2", store.JournalPath(p))
		},
	} {
		path := filepath.Join(quickDir(t), "m.db")
		want := evening(t, path)
		l := openAt(t, path)
		if err := harm(path); err != nil {
			t.Fatal(err)
		}
		_, err := l.Do(want.Quilts[0].ID, GoOn{})
		wants(t, name+" while open", err, ErrSwapped)
		l.Close()
		again := openAt(t, path)
		samePlain(t, again.State(), want)
	}
}

// TestReadOnly: a file or folder that can't be written. Root may write
// anywhere, so there the child runs as nobody.
func TestReadOnly(t *testing.T) {
	for name, mode := range map[string][2]os.FileMode{"read-only file": {0o444, 0o777}, "read-only folder": {0o644, 0o555}, "nothing may be read": {0o000, 0o777}} {
		dir, err := os.MkdirTemp("", "matside")
		if err != nil {
			t.Fatal(err)
		}
		t.Cleanup(func() { os.Chmod(dir, 0o700); os.RemoveAll(dir) })
		path := filepath.Join(dir, "m.db")
		evening(t, path)
		os.Remove(store.LockPath(path))
		for _, p := range []string{path, store.JournalPath(path)} {
			os.Chmod(p, mode[0])
		}
		os.Chmod(dir, mode[1])
		program := os.Args[0]
		if os.Geteuid() == 0 {
			program = filepath.Join(t.TempDir(), "child")
			copyFile(t, os.Args[0], program)
			os.Chmod(program, 0o755)
			for d := filepath.Dir(program); d != "/"; d = filepath.Dir(d) {
				if info, err := os.Stat(d); err == nil {
					os.Chmod(d, info.Mode()|0o055)
				}
			}
		}
		c := exec.Command(program)
		c.Env = append(os.Environ(), childJob+"=look", childPath+"="+path)
		if os.Geteuid() == 0 {
			c.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: 65534, Gid: 65534}}
		}
		out, err := c.CombinedOutput()
		if err == nil || !bytes.Contains(out, []byte("make the file and its folder writable")) {
			t.Errorf("%s: %v, %s", name, err, out)
		}
		told(t, name, strings.TrimPrefix(string(out), "error "))
	}
}

// fillUp goes on until there is no room, asks for the word of it and that the
// step isn't counted, makes room, and goes on.
func fillUp(t *testing.T, name, path string, opt store.Options, makeRoom func(l *Ledger) *Ledger) {
	t.Helper()
	l, err := Open(path, OpenOptions{Now: clock(), Planner: fourToALoad, Store: opt})
	if err != nil {
		t.Fatal(err)
	}
	defer func() { l.Close() }()
	id := startOn(t, l, 40, 40)
	var before State
	for range 20000 {
		before = l.State()
		if _, err = l.Do(id, Wash{}); err != nil {
			break
		}
	}
	wants(t, name, err, ErrNoRoom)
	samePlain(t, l.State(), before)
	l = makeRoom(l)
	if q := do(t, l, id, GoOn{Anyway: true}); q.Step != Press {
		t.Errorf("going on: %+v", q.Pieces)
	}
	if s := l.State(); s.Seq != before.Seq+1 {
		t.Errorf("%s: event %d after %d", name, s.Seq, before.Seq)
	}
}

// TestFileLimit: the data file reaches its own limit.
func TestFileLimit(t *testing.T) {
	path := filepath.Join(quickDir(t), "m.db")
	fillUp(t, "the file's own limit", path, store.Options{MaxSize: 1 << 17}, func(l *Ledger) *Ledger {
		l.Close()
		return openAt(t, path)
	})
}

// TestFullDisk: a small file system in memory runs full. It takes the right to
// mount one.
func TestFullDisk(t *testing.T) {
	sizes := []string{"192k", "256k", "400k"}
	if os.Getenv("MATSIDE_LONG") != "1" {
		sizes = sizes[1:2]
	}
	for _, size := range sizes {
		dir := t.TempDir()
		if out, err := exec.Command("mount", "-t", "tmpfs", "-o", "size="+size, "tmpfs", dir).CombinedOutput(); err != nil {
			t.Skipf("no mount: %v %s", err, out)
		}
		t.Cleanup(func() { exec.Command("umount", dir).Run() })
		ballast := filepath.Join(dir, "ballast")
		os.WriteFile(ballast, make([]byte, 1<<14), 0o600)
		fillUp(t, "a full disk (tmpfs)", filepath.Join(dir, "m.db"), store.Options{}, func(l *Ledger) *Ledger {
			os.Remove(ballast)
			return l
		})
	}
}

// TestFullAtFirst: no room for the very first file; nothing half made stays to
// trip up the next start.
func TestFullAtFirst(t *testing.T) {
	for _, blocks := range []int{0, 2, 8, 16, 40, 60} { // of 512 or 1024 bytes, as the shell counts
		path := filepath.Join(t.TempDir(), "m.db")
		c := exec.Command("sh", "-c", fmt.Sprintf("ulimit -f %d; trap '' XFSZ; exec %s", blocks, os.Args[0]))
		c.Env = append(os.Environ(), childJob+"=look", childPath+"="+path)
		out, err := c.CombinedOutput()
		if err != nil {
			told(t, "no room for the first file (ulimit -f)", strings.TrimPrefix(string(out), "error "))
		}
		var exit *exec.ExitError
		if errors.As(err, &exit) && exit.ExitCode() != 1 {
			t.Errorf("files of %d blocks at most: %v", blocks, err)
		}
		if err != nil && !bytes.Contains(out, []byte("make room")) {
			t.Errorf("files of %d blocks at most: %s", blocks, out)
		}
		openAt(t, path)
	}
}
