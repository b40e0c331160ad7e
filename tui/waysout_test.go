//go:build linux

package tui

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/creack/pty"
	"golang.org/x/sys/unix"
)

// terminal is a program in a pseudo-terminal that answers no query.
type terminal struct {
	t      *testing.T
	cmd    *exec.Cmd
	ours   *os.File
	theirs *os.File // kept open, so that its modes can be read when the program is gone
	before unix.Termios
	told   bytes.Buffer // standard error

	mu  sync.Mutex
	all []byte
}

func (x *terminal) shown() string {
	x.mu.Lock()
	defer x.mu.Unlock()
	return string(x.all)
}

func (x *terminal) modes() unix.Termios {
	m, err := unix.IoctlGetTermios(int(x.theirs.Fd()), unix.TCGETS)
	if err != nil {
		x.t.Fatal(err)
	}
	return *m
}

func (x *terminal) until(text string) bool {
	for end := time.Now().Add(10 * time.Second); time.Now().Before(end); time.Sleep(2 * time.Millisecond) {
		if strings.Contains(x.shown(), text) {
			return true
		}
	}
	return false
}

func start(t *testing.T, program, wrong string) *terminal {
	t.Helper()
	x := &terminal{t: t, cmd: exec.Command(program, wrong)}
	if wrong == "killed" || wrong == "panic in a goroutine" {
		// As at home, a shell leads the session: with its leader gone a
		// terminal is hung up, and nobody could give it back.
		x.cmd = exec.Command("sh", "-c", `"$0" "$1"; true`, program, wrong)
	}
	var err error
	if x.ours, x.theirs, err = pty.Open(); err != nil {
		t.Skip("no pseudo-terminal here:", err)
	}
	_ = pty.Setsize(x.ours, &pty.Winsize{Rows: 24, Cols: 80})
	x.before = x.modes()
	x.cmd.Env = append(os.Environ(), "TERM=xterm-256color")
	x.cmd.Stdin, x.cmd.Stdout, x.cmd.Stderr = x.theirs, x.theirs, &x.told
	x.cmd.SysProcAttr = &syscall.SysProcAttr{Setsid: true, Setctty: true}
	if err := x.cmd.Start(); err != nil {
		t.Fatal(err)
	}
	go func() {
		buf := make([]byte, 1<<14)
		for {
			n, err := x.ours.Read(buf)
			x.mu.Lock()
			x.all = append(x.all, buf[:n]...)
			x.mu.Unlock()
			if err != nil {
				return
			}
		}
	}()
	t.Cleanup(func() { _ = x.cmd.Process.Kill(); x.theirs.Close(); x.ours.Close() })
	return x
}

// ended waits for the end and reports whether it came in time.
func (x *terminal) ended() bool {
	done := make(chan struct{})
	go func() { _ = x.cmd.Wait(); close(done) }()
	select {
	case <-done:
		return true
	case <-time.After(10 * time.Second):
		return false
	}
}

// However she or the machine ends it, the terminal is as it was before, the
// alternate screen is left, the cursor is there, and the step under way is
// written down.
func TestWaysOut(t *testing.T) {
	program := filepath.Join(t.TempDir(), "evening")
	if out, err := exec.Command("go", "build", "-o", program, "./testdata/evening").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	send := func(s syscall.Signal) func(*terminal) {
		return func(x *terminal) { _ = x.cmd.Process.Signal(s) }
	}
	keys := func(k string) func(*terminal) {
		return func(x *terminal) { _, _ = x.ours.WriteString(k) }
	}
	for _, c := range []struct {
		name, wrong string
		out         func(*terminal)
		told        string
	}{
		{"q", "", keys("q"), "step fabric, crash false, interrupted false"},
		{"ctrl+c", "", keys("\x03"), "step fabric, crash false, interrupted false"},
		{"merged with another key", "", keys("xq"), "step fabric, crash false, interrupted false"},
		{"SIGINT", "", send(syscall.SIGINT), "step fabric, crash false, interrupted true"},
		{"SIGTERM", "", send(syscall.SIGTERM), "step fabric, crash false, interrupted false"},
		{"SIGHUP", "", send(syscall.SIGHUP), "step fabric, crash false, interrupted false"},
		{"SIGQUIT", "", send(syscall.SIGQUIT), "step fabric, crash false, interrupted false"},
		{"q while saving", "slow", keys("\rq"), "step press, crash false, interrupted false"},
		{"SIGTERM while saving", "slow", func(x *terminal) {
			keys("\r")(x)
			if x.until("saving") {
				send(syscall.SIGTERM)(x)
			}
		}, "step press, crash false, interrupted false"},
		{"SIGHUP while saving", "slow", func(x *terminal) {
			keys("\r")(x)
			if x.until("saving") {
				send(syscall.SIGHUP)(x)
			}
		}, "step press, crash false, interrupted false"},
		{"panic in Update", "panic in Update", keys("\r"), "step fabric, crash true, interrupted false"},
		{"panic in a goroutine", "panic in a goroutine", func(*terminal) {}, ""},
		{"SIGKILL", "killed", func(*terminal) {}, ""},
		{"panic in View", "panic in View", keys("?"), "step fabric, crash true, interrupted false"},
		{"panic in a command", "panic in a command", func(x *terminal) {
			keys("\r")(x)
			if x.until("NOT SAVED") {
				keys("q")(x)
			}
		}, "step fabric, crash false, interrupted false"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			x := start(t, program, c.wrong)
			if !x.until("Backspace") {
				t.Fatalf("no first picture: %q", x.shown())
			}
			c.out(x)
			if !x.ended() {
				t.Fatal("it did not end")
			}
			if got := strings.TrimSpace(x.told.String()); got != c.told && c.told != "" {
				t.Errorf("told %q, want %q", got, c.told)
			}
			x.until("\x1b[?1049l") // what it wrote last may still be on its way
			if c.told == "" && !x.until("What was shown as done is saved.") {
				t.Errorf("it ended without a word")
			}
			if after := x.modes(); after != x.before {
				t.Errorf("terminal modes changed: %+v, were %+v", after, x.before)
			}
			if out := x.shown(); strings.LastIndex(out, "\x1b[?1049l") < strings.LastIndex(out, "\x1b[?1049h") || strings.LastIndex(out, "\x1b[?25h") < strings.LastIndex(out, "\x1b[?25l") {
				t.Errorf("alternate screen or cursor not given back: %q", out[max(0, len(out)-200):])
			}
		})
	}
}
