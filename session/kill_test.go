//go:build unix

package session

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"example.org/matside/session/store"
)

// The kill tests start this test program again as a child, told by the
// environment what to do, and end it by SIGKILL: at a random moment, or at the
// n-th write, sync or rename.
const childJob, childPath, childKill = "MATSIDE_TEST_JOB", "MATSIDE_TEST_PATH", "MATSIDE_TEST_KILL_AT"

func TestMain(m *testing.M) {
	if job := os.Getenv(childJob); job != "" {
		if err := child(job, os.Getenv(childPath)); err != nil {
			fmt.Println("error", err)
			os.Exit(1)
		}
		os.Exit(0)
	}
	code := m.Run()
	if code == 0 && *update {
		if err := writeFaults(); err != nil {
			fmt.Println(err)
			code = 1
		}
	}
	os.Exit(code)
}

func child(job, path string) error {
	opt := OpenOptions{Planner: fourToALoad, Store: store.Options{Fault: killAt(os.Getenv(childKill))}}
	switch job {
	case "work":
		return work(path, opt)
	case "restore":
		_, _, err := Restore(path, path+".theirs", opt)
		return err
	case "backup":
		_, err := Backup(path, path+".copy", opt)
		return err
	case "upgrade":
		s, err := store.Open(path, store.Options{Format: 2, Upgrade: doubled, Fault: killAt(os.Getenv(childKill))})
		if err == nil {
			err = s.Close()
		}
		return err
	case "probe":
		return Probe(path)
	case "look":
		l, err := Open(path, opt)
		if err == nil {
			err = l.Close()
		}
		return err
	case "soak":
		return soak(path, opt)
	case "stubborn":
		return stubborn(path, opt)
	case "steps", "mats":
		return bursts(job, path, opt)
	case "hold":
		l, err := Open(path, opt)
		if err != nil {
			return err
		}
		fmt.Println(l.State().Seq)
		_, _ = os.Stdin.Read(make([]byte, 1)) // until the parent is done
		return l.Close()
	}
	return errors.New("no such job")
}

// killAt kills this process before its n-th write, sync or rename.
func killAt(n string) store.Fault {
	left, err := strconv.Atoi(n)
	if err != nil {
		return nil
	}
	return func(string) error {
		if left--; left == 0 {
			_ = syscall.Kill(os.Getpid(), syscall.SIGKILL)
			select {} // until it has come
		}
		return nil
	}
}

// work goes through steps as fast as it can and prints each event's number
// once it is acknowledged.
func work(path string, opt OpenOptions) error {
	l, err := Open(path, opt)
	if err != nil {
		return err
	}
	s := l.State()
	id := QuiltID(0)
	if q := s.Latest(); q != nil {
		id = q.ID
	} else {
		list := smallList(400, 200)
		q, _ := fourToALoad(list, Wish{Wanted: allOf(list)})
		if id, s, err = l.Start(Start{List: list, Queue: q}); err != nil {
			return err
		}
	}
	for {
		fmt.Println(s.Seq)
		a := Action(GoOn{Anyway: true})
		switch q := s.Quilt(id); {
		case s.Seq%37 == 0:
			a = Wash{}
		case s.Seq%11 == 0:
			a = Back{}
		case q.Step == Peel && s.Seq%3 == 0:
			a = GoOn{Spoiled: []int{0}}
		case q.InHand() == nil:
			return l.Close()
		}
		if s, err = l.Do(id, a); err != nil && !errors.Is(err, ErrNothingBack) {
			return err
		}
	}
}

// stubborn does a few steps, each again where it was refused, on one thread,
// so that the system calls of a step can be counted off. It prints what is
// acknowledged, and what was refused.
func stubborn(path string, opt OpenOptions) error {
	runtime.LockOSThread()
	var l *Ledger
	err := again(func() (err error) { l, err = Open(path, opt); return err })
	if err != nil {
		return err
	}
	list := smallList(12, 0)
	q, _ := fourToALoad(list, Wish{Wanted: allOf(list)})
	var id QuiltID
	if err := again(func() error { i, _, err := l.Start(Start{List: list, Queue: q}); id = i; return err }); err != nil {
		return err
	}
	fmt.Println(l.State().Seq)
	for range 11 {
		if err := again(func() error { _, err := l.Do(id, GoOn{Anyway: true}); return err }); err != nil {
			return err
		}
		fmt.Println(l.State().Seq)
	}
	return again(l.Close)
}

// again tries three times.
func again(try func() error) (err error) {
	for range 3 {
		if err = try(); err == nil {
			return nil
		}
		fmt.Println("refused", strings.ReplaceAll(err.Error(), "\n", " "))
	}
	return err
}

// bursts opens, does one thing and closes, forty times over, waiting its turn,
// and prints a line for each thing acknowledged.
func bursts(job, path string, opt OpenOptions) error {
	for done := 0; done < 40; {
		l, err := Open(path, opt)
		if errors.Is(err, ErrBusy) {
			continue
		}
		if err != nil {
			return err
		}
		s := l.State()
		a := Action(Wash{})
		if job == "steps" {
			a = GoOn{Anyway: true}
		}
		if _, err = l.Do(s.Latest().ID, a); err != nil {
			return err
		}
		fmt.Println(l.State().Seq)
		done++
		if err := l.Close(); err != nil {
			return err
		}
	}
	return nil
}

// TestTwoProcesses: one cuts, one washes mats, each opening the file for each
// step, and a third looks on: no event is lost or written twice.
func TestTwoProcesses(t *testing.T) {
	path := filepath.Join(quickDir(t), "m.db")
	l := openAt(t, path)
	startOn(t, l, 40, 40)
	l.Close()
	var children []*exec.Cmd
	for _, job := range []string{"steps", "mats"} {
		c, out := start(t, job, path, "")
		go acked(t, out)
		children = append(children, c)
	}
	ended := make(chan error)
	go func() { ended <- errors.Join(children[0].Wait(), children[1].Wait()) }()
	for last := uint64(0); ; {
		s, err := Peek(path)
		if err != nil || s.Seq < last {
			t.Fatalf("looking on: %d events after %d, %v", s.Seq, last, err)
		}
		last = s.Seq
		select {
		case err := <-ended:
			s, peekErr := Peek(path)
			if err != nil || peekErr != nil || s.Seq != 81 || s.Mats[0].Washes != 40 {
				t.Errorf("%d events, %d washes; %v, %v", s.Seq, s.Mats[0].Washes, err, peekErr)
			}
			return
		default:
		}
	}
}

func start(t *testing.T, job, path, at string) (*exec.Cmd, io.Reader) {
	t.Helper()
	c := exec.Command(os.Args[0])
	c.Env = append(os.Environ(), childJob+"="+job, childPath+"="+path, childKill+"="+at)
	out, err := c.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	return c, out
}

// acked reads the numbers a child prints until it ends; 0 when none came.
func acked(t *testing.T, r io.Reader) (last uint64) {
	for in := bufio.NewScanner(r); in.Scan(); {
		if text, ok := strings.CutPrefix(in.Text(), "error "); ok {
			t.Errorf("the child says: %s", text)
			return last
		}
		if n, err := strconv.ParseUint(in.Text(), 10, 64); err == nil {
			last = n
		}
	}
	return last
}

// intact opens the file after a kill: acknowledged <= stored <= acknowledged
// + 1, the fold clean, and each piece counted once.
func intact(t *testing.T, path string, last uint64, what string) {
	t.Helper()
	l, err := Open(path, OpenOptions{Planner: fourToALoad})
	if err != nil {
		t.Fatalf("%s: %v", what, err)
	}
	defer l.Close()
	s := l.State()
	if s.Seq < last || s.Seq > last+1 {
		t.Errorf("%s: acknowledged %d, stored %d", what, last, s.Seq)
	}
	for _, q := range s.Quilts {
		seen := map[Copy]bool{}
		for i := range q.Loads {
			for k, p := range q.Loads[i].Pieces {
				good := q.Loads[i].Done && !contains(q.Loads[i].Spoiled, k)
				if c := (Copy{p.Line, p.Copy}); good && seen[c] {
					t.Errorf("%s: piece %v was cut twice", what, c)
				} else if good {
					seen[c] = true
				}
			}
		}
		if p := q.Pieces; len(seen) != p.Done || p.Asked != p.Done+p.Left+p.Waiting+p.Short {
			t.Errorf("%s: %d good pieces, counted %+v", what, len(seen), p)
		}
	}
}

func contains(list []int, x int) bool {
	for _, y := range list {
		if x == y {
			return true
		}
	}
	return false
}

// TestKillWork kills a child at work again and again, on the same file.
func TestKillWork(t *testing.T) {
	rounds := 8
	if os.Getenv("MATSIDE_LONG") == "1" {
		rounds = 1000
	}
	path := filepath.Join(quickDir(t), "m.db")
	r := rand.New(rand.NewPCG(1, uint64(time.Now().UnixNano()))) // the moment is random anyhow
	last := uint64(0)
	for i := range rounds {
		c, out := start(t, "work", path, "")
		pause := time.Duration(r.IntN(40)) * time.Millisecond
		last = max(last, acked(t, &killer{Reader: out, first: func() {
			time.Sleep(pause)
			_ = c.Process.Kill()
		}}))
		_ = c.Wait()
		intact(t, path, last, fmt.Sprintf("kill %d", i+1))
		l, err := Open(path, OpenOptions{Planner: fourToALoad})
		if err != nil {
			t.Fatal(err)
		}
		last = l.State().Seq
		l.Close()
	}
	t.Logf("%d kills, %d events", rounds, last)
}

// killer reads what a child prints, and does first beside it at the first word.
type killer struct {
	io.Reader
	first func()
}

func (k *killer) Read(b []byte) (int, error) {
	n, err := k.Reader.Read(b)
	if n > 0 && k.first != nil {
		go k.first()
		k.first = nil
	}
	return n, err
}

// TestKillAt kills a child at its first write, sync or rename, then at the
// second, and so on: opening a new file, and the first steps on it.
func TestKillAt(t *testing.T) {
	most, step := 60, 5
	if os.Getenv("MATSIDE_LONG") == "1" {
		step = 1
	}
	for n := 1; n <= most; n += step {
		path := filepath.Join(quickDir(t), "m.db")
		c, out := start(t, "work", path, strconv.Itoa(n))
		last := acked(t, out)
		_ = c.Wait()
		intact(t, path, last, fmt.Sprintf("killed at %d", n))
	}
}

// TestKillCare kills restoring, backing up and upgrading at every write, sync
// and rename: what stands there afterwards is the old or the new, whole.
func TestKillCare(t *testing.T) {
	dir := quickDir(t)
	mine, theirs := filepath.Join(dir, "mine.db"), filepath.Join(dir, "theirs.db")
	old, other := evening(t, mine), evening(t, theirs)
	l := openAt(t, theirs)
	do(t, l, other.Quilts[0].ID, GoOn{Anyway: true}, GoOn{Anyway: true}, GoOn{Anyway: true})
	other = l.State()
	l.Close()
	if _, err := Backup(theirs, theirs+".copy", OpenOptions{}); err != nil {
		t.Fatal(err)
	}
	step := 4
	if os.Getenv("MATSIDE_LONG") == "1" {
		step = 1
	}
	for _, job := range []string{"restore", "backup", "upgrade"} {
		for n := 1; ; n += step {
			path := filepath.Join(quickDir(t), "m.db")
			copyFile(t, mine, path)
			copyFile(t, store.JournalPath(mine), store.JournalPath(path))
			copyFile(t, theirs+".copy", path+".theirs")
			c, out := start(t, job, path, strconv.Itoa(n))
			acked(t, out)
			err := c.Wait()
			what := fmt.Sprintf("%s killed at %d", job, n)
			if job == "upgrade" {
				upgraded(t, path, what)
			} else {
				s := openAt(t, path).State()
				if same := s.Seq == old.Seq || job == "restore" && s.Seq == other.Seq; !same {
					t.Errorf("%s: %d events, want %d or %d", what, s.Seq, old.Seq, other.Seq)
				}
			}
			if err == nil { // it got through
				t.Logf("%s: %d places to kill it", job, n-1)
				break
			}
		}
	}
}

func copyFile(t *testing.T, from, to string) {
	t.Helper()
	b, err := os.ReadFile(from)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(to, b, 0o600); err != nil {
		t.Fatal(err)
	}
}

// doubled is an upgrade for the test: each line is followed by a note.
func doubled(_ uint32, lines [][]byte) ([][]byte, error) {
	var out [][]byte
	for _, line := range lines {
		out = append(out, line, []byte("a note"))
	}
	return out, nil
}

// upgraded opens a file with the newer form: whatever the kill left, it ends
// as the upgrade of the old, once; and an older program is refused it.
func upgraded(t *testing.T, path, what string) {
	t.Helper()
	s, err := store.Open(path, store.Options{Format: 2, Upgrade: doubled})
	if err != nil {
		t.Fatalf("%s: %v", what, err)
	}
	n := 0
	err = s.Each(1, func(seq uint64, line []byte) error {
		if n++; (seq%2 == 0) != bytes.Equal(line, []byte("a note")) {
			return fmt.Errorf("line %d is %.40s", seq, line)
		}
		return nil
	})
	if err != nil || n == 0 {
		t.Errorf("%s: %d lines, %v", what, n, err)
	}
	s.Close()
	if kept, _ := filepath.Glob(path + ".format-1-*"); len(kept) == 0 {
		t.Errorf("%s: no copy of the older form", what)
	}
	if _, err := Open(path, OpenOptions{}); !errors.Is(err, ErrNewer) {
		t.Errorf("%s: an older program: %v", what, err)
	}
}

// TestProbeBy: a sound file passes, a file that makes bbolt fail doesn't.
func TestProbeBy(t *testing.T) {
	path := filepath.Join(t.TempDir(), "m.db")
	evening(t, path)
	t.Setenv(childJob, "probe")
	probe := func(p string) error {
		t.Setenv(childPath, p)
		return ProbeBy(os.Args[0])(p)
	}
	if err := probe(path); err != nil {
		t.Errorf("a sound file: %v", err)
	}
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	for _, n := range []int{8192, 12288, len(b) / 2} { // field notes: a panic, or a signal's death
		short := filepath.Join(t.TempDir(), "short.db")
		os.WriteFile(short, b[:n], 0o600)
		if err := probe(short); err == nil {
			t.Errorf("cut to %d bytes: no word", n)
		} else {
			t.Logf("cut to %d bytes: %v", n, err)
		}
	}
	if err := ProbeBy("/no/such/program")(path); err != nil {
		t.Errorf("a probe that can't be run must not keep her out: %v", err)
	}
}
