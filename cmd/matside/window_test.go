//go:build linux

package main

import (
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"golang.org/x/sys/unix"
)

func ninePatch(t *testing.T) (list, db string) {
	t.Helper()
	return ninePatchList(t), filepath.Join(t.TempDir(), "matside.db")
}

func ninePatchList(t *testing.T) string {
	t.Helper()
	list, err := filepath.Abs("../../testdata/cutlists/first-nine-patch.cutlist")
	if err != nil {
		t.Fatal(err)
	}
	return list
}

// TestWaysOut leaves by key and by signal: the terminal is as it was, the
// data are whole, the exit code is plain.
func TestWaysOut(t *testing.T) {
	for _, c := range []struct {
		name string
		out  func(*window)
		code int
	}{
		{"q", func(w *window) { w.press("q") }, 0},
		{"ctrl+c", func(w *window) { w.press("\x03") }, 0},
		{"SIGTERM", func(w *window) { w.signal(syscall.SIGTERM) }, 0},
		{"SIGHUP", func(w *window) { w.signal(syscall.SIGHUP) }, 0},
		{"SIGQUIT", func(w *window) { w.signal(syscall.SIGQUIT) }, 0},
		{"SIGINT", func(w *window) { w.signal(syscall.SIGINT) }, exitInterrupted},
	} {
		t.Run(c.name, func(t *testing.T) {
			list, db := ninePatch(t)
			w := open(t, nil, "cut", list, "--db", db)
			before := w.before
			if !w.until(`FABRIC`, 5*time.Second) {
				t.Fatalf("no first screen; it showed\n%s", w.text())
			}
			w.press("\r")
			if !w.until(`PRESS`, 5*time.Second) {
				t.Fatal("Enter did not go on")
			}
			c.out(w)
			// The far end of the terminal stays open, so its modes can be asked for.
			code := w.exit(5 * time.Second)
			if after := w.modes(); after != before {
				t.Errorf("the terminal's modes are %+v, and were %+v", after, before)
			}
			if raw := w.raw(); strings.LastIndex(raw, "\x1b[?1049l") < strings.LastIndex(raw, "\x1b[?1049h") {
				t.Error("it left the other screen on")
			}
			w.close()
			if code != c.code {
				t.Errorf("exit code %d, want %d", code, c.code)
			}
			if place := recordedPlace(t, db); place != 1 {
				t.Errorf("%d steps are recorded, want 1", place)
			}
		})
	}
}

// TestHeldKey holds Enter down for three seconds: it counts once.
func TestHeldKey(t *testing.T) {
	list, db := ninePatch(t)
	w := open(t, nil, "cut", list, "--db", db)
	if !w.until(`FABRIC`, 5*time.Second) {
		t.Fatalf("no first screen; it showed\n%s", w.text())
	}
	for range 90 {
		w.press("\r")
		time.Sleep(33 * time.Millisecond)
	}
	w.kill()
	if place := recordedPlace(t, db); place != 1 {
		t.Errorf("a held key counted %d times", place)
	}
}

// TestTwoWindows opens the same data file twice: the second says who holds it.
func TestTwoWindows(t *testing.T) {
	list, db := ninePatch(t)
	first := open(t, nil, "cut", list, "--db", db)
	if !first.until(`FABRIC`, 5*time.Second) {
		t.Fatal("no first screen")
	}
	second := open(t, nil, "cut", list, "--db", db)
	if code := second.leave(5 * time.Second); code != exitFault {
		t.Errorf("the second window ended with %d, not %d", code, exitFault)
	}
	if !strings.Contains(second.text(), "open in another window") {
		t.Errorf("the second window says\n%s", second.text())
	}
	if s := statusOf(t, db); s.Quilt == "" {
		t.Error("status tells nothing while a window is open")
	}
	first.kill()
}

// TestSmallWindow says so, and works again when it has grown.
func TestSmallWindow(t *testing.T) {
	list, db := ninePatch(t)
	w := open(t, nil, "cut", list, "--db", db)
	w.until(`FABRIC`, 5*time.Second)
	w.size(19, 50)
	if !w.until(`window larger`, 5*time.Second) {
		t.Errorf("a small window says nothing; it showed\n%s", w.text())
	}
	w.size(20, 60)
	// A key that comes before the screen stands again is meant for no step.
	if !w.until(`(?s)window larger.*FABRIC`, 5*time.Second) {
		t.Errorf("the screen does not come back; it showed\n%s", w.text())
	}
	w.press("\r")
	if !w.until(`PRESS`, 5*time.Second) {
		t.Errorf("it does not go on at 60 x 20; it showed\n%s", w.text())
	}
	w.press("q")
	w.leave(5 * time.Second)
}

// TestNamesCannotWrite puts what a terminal obeys into every name: the reader
// refuses it, and tells it without obeying.
func TestNamesCannotWrite(t *testing.T) {
	folder := t.TempDir()
	list := filepath.Join(folder, "evil.cutlist")
	text := "quilt A\x1b]52;c;aGk=\x07\nfabric I\x9bnk\ncut from Ink\n2 squares 3 for \x1b[2J\n"
	if err := os.WriteFile(list, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	w := open(t, nil, "cut", list, "--db", filepath.Join(folder, "m.db"))
	if code := w.leave(5 * time.Second); code != exitFault {
		t.Errorf("exit code %d", code)
	}
	// The C1 controls are obeyed both as one byte and as UTF-8.
	if raw := w.raw(); strings.ContainsAny(raw, "\x1b\x07\u009b") || strings.Contains(raw, "I\x9bnk") {
		t.Errorf("it wrote what a terminal obeys: %q", raw)
	}
}

func (w *window) signal(s syscall.Signal) { _ = w.cmd.Process.Signal(s) }

func (w *window) size(rows, columns uint16) {
	_ = unix.IoctlSetWinsize(int(w.tty.Fd()), unix.TIOCSWINSZ, &unix.Winsize{Row: rows, Col: columns})
}

// modes are the terminal's flags as the kernel keeps them.
func (w *window) modes() unix.Termios {
	m, err := unix.IoctlGetTermios(int(w.tty.Fd()), unix.TCGETS)
	if err != nil {
		w.t.Fatalf("asking for the terminal's modes: %v", err)
	}
	return *m
}

func (w *window) raw() string {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.seen.String()
}
