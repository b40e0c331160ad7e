//go:build unix

package session

import (
	"fmt"
	"os"
	"os/exec"
	"strings"
	"testing"
)

// soak opens a long log, does a hundred steps and asks for all that a screen
// shows, and prints the most memory it ever held, in kB, as the kernel counted.
func soak(path string, opt OpenOptions) error {
	l, err := Open(path, opt)
	if err != nil {
		return err
	}
	list := smallList(200, 200)
	q, _ := fourToALoad(list, Wish{Wanted: allOf(list)})
	id, s, err := l.Start(Start{List: list, Queue: q})
	for range 100 {
		if err != nil {
			return err
		}
		s.StatusAt(id, s.At)
		s.Shelf(s.At)
		s, err = l.Do(id, GoOn{Anyway: true})
	}
	if err := l.Close(); err != nil {
		return err
	}
	b, err := os.ReadFile("/proc/self/status")
	for line := range strings.Lines(string(b)) {
		if kb, ok := strings.CutPrefix(line, "VmHWM:"); ok {
			fmt.Println(strings.Fields(kb)[0])
		}
	}
	return err
}

// TestSoak: a log of a hundred thousand events, opened as it is each evening,
// takes less than 50 MB at the most, in a process of its own. Without a
// snapshot, once after an update, it takes more: the kernel counts the whole
// data file, which is then read through its mapping. How long opening and a
// step take, the benchmarks say.
func TestSoak(t *testing.T) {
	if os.Getenv("MATSIDE_LONG") != "1" {
		t.Skip("a long test: MATSIDE_LONG=1")
	}
	if _, err := os.Stat("/proc/self/status"); err != nil {
		t.Skip("the kernel doesn't say here how much memory is held")
	}
	path := bigLog(t, 100_000)
	run := func() (kB int) {
		c := exec.Command(os.Args[0])
		c.Env = append(os.Environ(), childJob+"=soak", childPath+"="+path)
		out, err := c.Output()
		if n, _ := fmt.Sscan(string(out), &kB); err != nil || n != 1 {
			t.Fatalf("%v: %s", err, out)
		}
		return kB
	}
	first, usual := run(), run()
	t.Logf("at the most %d kB when the log is read to its end, %d kB after a snapshot", first, usual)
	if usual > 50_000 {
		t.Errorf("%d kB: more than 50 MB", usual)
	}
	if first > 75_000 {
		t.Errorf("%d kB without a snapshot: more than half as much again", first)
	}
}
