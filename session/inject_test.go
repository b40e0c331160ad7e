//go:build linux

package session

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// Which calls a step is made of. bbolt's own are among them: pwrite64 and
// fdatasync are its pages and meta pages, ftruncate its growing.
var calls = []string{"pwrite64", "fsync,fdatasync", "renameat,renameat2", "ftruncate,fallocate"}

// TestInjected has strace kill a child at its n-th write, sync or rename, or
// fail that call with EIO or ENOSPC, on the way from no file to a few steps
// cut: acknowledged <= stored <= acknowledged + 1, each piece counted once, and
// where the program goes on every step is there in the end.
func TestInjected(t *testing.T) {
	if _, err := exec.LookPath("strace"); err != nil {
		t.Skip("no strace here (Debian: strace)")
	}
	most, ways := 60, []string{"signal=SIGKILL", "error=EIO", "error=ENOSPC"}
	step := 1
	if os.Getenv("MATSIDE_LONG") != "1" {
		step = 29
	}
	total, hit, refused := 0, 0, 0
	for _, call := range calls {
		for i, how := range ways {
			for n := 1 + i*(step-1)/2; n <= most; n += step {
				total++
				said, ended := injected(t, call, how, n)
				if strings.Contains(said, "INJECTED") || strings.Contains(said, "SIGKILL") {
					hit++
				} else if ended {
					break // there is no n-th call
				}
				refused += strings.Count(said, "refused ")
			}
		}
	}
	t.Logf("%d runs, %d of them hit, %d steps refused and tried again", total, hit, refused)
	if hit == 0 {
		t.Error("strace hit nothing")
	}
}

// injected runs one child under strace and checks what it left behind.
func injected(t *testing.T, call, how string, n int) (said string, ended bool) {
	t.Helper()
	dir := quickDir(t)
	defer os.RemoveAll(dir)
	path := filepath.Join(dir, "m.db")
	what := fmt.Sprintf("%s %d, %s", call, n, how)
	c := exec.Command("strace", "-f", "-qq", "-o", path+".trace", "-e", "trace="+call, "-P", dir, "-P", path, "-P", path+".journal", "-P", path+".new",
		"-P", path+".journal.new", "-e", fmt.Sprintf("inject=%s:%s:when=%d", call, how, n), os.Args[0])
	c.Env = append(os.Environ(), childJob+"=stubborn", childPath+"="+path)
	out, err := c.CombinedOutput()
	trace, _ := os.ReadFile(path + ".trace")
	os.Remove(path + ".trace")
	last := uint64(0)
	for line := range strings.Lines(string(out)) {
		var seq uint64
		if k, _ := fmt.Sscan(line, &seq); k == 1 {
			last = seq
		}
	}
	if err == nil && last != 12 {
		t.Errorf("%s: it ended well after %d of 12 events", what, last)
	}
	if err != nil && !strings.Contains(how, "SIGKILL") {
		t.Errorf("%s: one fault has ended it: %v %s", what, err, out)
	}
	if strings.Contains(string(out), "panic") || strings.Contains(string(out), "goroutine") {
		t.Errorf("%s: %s", what, out)
	}
	intact(t, path, last, what)
	return string(out) + string(trace), err == nil
}
