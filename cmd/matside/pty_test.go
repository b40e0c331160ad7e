//go:build linux

package main

import (
	"bytes"
	"os"
	"os/exec"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/creack/pty"
	"golang.org/x/sys/unix"
)

// window is matside at work in a real pseudo-terminal.
type window struct {
	t      testing.TB
	cmd    *exec.Cmd
	tty    *os.File // our end
	far    *os.File // matside's end, held open so that its modes outlive it
	before unix.Termios
	done   chan struct{}

	mu   sync.Mutex
	seen bytes.Buffer
}

// open runs matside in a window of 80 x 24 and reads what it draws.
func open(t testing.TB, environment []string, args ...string) *window {
	t.Helper()
	return openIn(t, "", environment, args...)
}

// openIn is open in a folder.
func openIn(t testing.TB, folder string, environment []string, args ...string) *window {
	t.Helper()
	name, err := program()
	if err != nil {
		t.Fatal(err)
	}
	w := &window{t: t, cmd: exec.Command(name, args...), done: make(chan struct{})}
	w.cmd.Dir = folder
	// A terminal that answers no queries: nothing may wait for an answer.
	w.cmd.Env = append([]string{"TERM=xterm-256color", "PATH=" + os.Getenv("PATH"), "HOME=" + t.TempDir()}, environment...)
	if w.tty, w.far, err = pty.Open(); err != nil {
		t.Skipf("no pseudo-terminal here: %v", err)
	}
	w.size(24, 80)
	w.before = w.modes()
	w.cmd.Stdin, w.cmd.Stdout, w.cmd.Stderr = w.far, w.far, w.far
	w.cmd.SysProcAttr = &syscall.SysProcAttr{Setsid: true, Setctty: true}
	if err := w.cmd.Start(); err != nil {
		t.Fatal(err)
	}
	go w.read()
	return w
}

func (w *window) read() {
	defer close(w.done)
	buf := make([]byte, 1<<14)
	for {
		n, err := w.tty.Read(buf)
		w.mu.Lock()
		w.seen.Write(buf[:n])
		w.mu.Unlock()
		if err != nil {
			return
		}
	}
}

// text is all that was drawn since the window opened, without colours.
func (w *window) text() string {
	w.mu.Lock()
	defer w.mu.Unlock()
	return ansi.Strip(w.seen.String())
}

// press types keys.
func (w *window) press(keys string) {
	if _, err := w.tty.WriteString(keys); err != nil {
		w.t.Logf("typing into a closed window: %v", err)
	}
}

// until waits for a pattern to be drawn and reports whether it was.
func (w *window) until(pattern string, patience time.Duration) bool {
	re := regexp.MustCompile(pattern)
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(2 * time.Millisecond) {
		if re.MatchString(w.text()) {
			return true
		}
	}
	return false
}

// kill ends matside with no warning at all.
func (w *window) kill() {
	_ = w.cmd.Process.Kill()
	_ = w.cmd.Wait()
	w.close()
}

// close gives the terminal back.
func (w *window) close() {
	w.far.Close()
	<-w.done
	w.tty.Close()
}

// exit waits for matside to end by itself and returns its exit code. The
// terminal stays open.
func (w *window) exit(patience time.Duration) int {
	w.t.Helper()
	ended := make(chan error, 1)
	go func() { ended <- w.cmd.Wait() }()
	select {
	case <-ended:
	case <-time.After(patience):
		_ = w.cmd.Process.Kill()
		<-ended
		w.t.Errorf("matside did not end in %v; it showed\n%s", patience, w.text())
	}
	return w.cmd.ProcessState.ExitCode()
}

// leave is exit, and gives the terminal back.
func (w *window) leave(patience time.Duration) int {
	w.t.Helper()
	code := w.exit(patience)
	w.close()
	return code
}

var (
	steps     = []string{"FABRIC", "PRESS", "LOAD", "CUT", "PEEL"}
	loadDrawn = regexp.MustCompile(`load (\d+) of \d+`)
	stepDrawn = regexp.MustCompile(strings.Join(steps, "|"))
)

// place is how many steps the screen has confirmed, -1 before it showed any.
func (w *window) place() int {
	text := w.text()
	loads, drawn := loadDrawn.FindAllStringSubmatch(text, -1), stepDrawn.FindAllString(text, -1)
	if len(loads) == 0 || len(drawn) == 0 {
		return -1
	}
	load, _ := strconv.Atoi(loads[len(loads)-1][1])
	for i, s := range steps {
		if s == drawn[len(drawn)-1] {
			return (load-1)*len(steps) + i
		}
	}
	return -1
}
