package early

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"github.com/creack/pty"
)

// firstPicture builds and starts a program in a pseudo-terminal that answers
// nothing, and returns how long its first picture took, at most limit.
func firstPicture(t *testing.T, folder string, limit time.Duration) time.Duration {
	t.Helper()
	program := filepath.Join(t.TempDir(), "program")
	if out, err := exec.Command("go", "build", "-o", program, "./testdata/"+folder).CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	cmd := exec.Command(program)
	cmd.Env = append(os.Environ(), "TERM=xterm-256color", "COLORFGBG=")
	start := time.Now()
	terminal, err := pty.StartWithSize(cmd, &pty.Winsize{Rows: 24, Cols: 80})
	if err != nil {
		t.Skip("no pseudo-terminal here:", err)
	}
	defer func() { _ = cmd.Process.Kill(); _ = terminal.Close(); _ = cmd.Wait() }()
	seen := make(chan time.Duration, 1)
	go func() {
		var all []byte
		buf := make([]byte, 4096)
		for {
			n, err := terminal.Read(buf)
			if all = append(all, buf[:n]...); bytes.Contains(all, []byte("first picture")) {
				seen <- time.Since(start)
				return
			}
			if err != nil {
				return
			}
		}
	}()
	select {
	case d := <-seen:
		return d
	case <-time.After(limit):
		return limit
	}
}

// The stall is five seconds, so two tell a stall from a busy machine.
func TestNobodyWaitsForTheTerminal(t *testing.T) {
	if d := firstPicture(t, "told", 4*time.Second); d > 2*time.Second {
		t.Errorf("first picture after %v: the terminal was asked before early ran", d)
	} else {
		t.Log("first picture after", d)
	}
}

// Without early the stall is there. When this fails, early can go.
func TestTheStallIsReal(t *testing.T) {
	if os.Getenv("MATSIDE_LONG") == "" {
		t.Skip("five seconds: set MATSIDE_LONG=1")
	}
	if d := firstPicture(t, "untold", 4*time.Second); d < 4*time.Second {
		t.Errorf("first picture after %v without early", d)
	}
}

func TestDark(t *testing.T) {
	for value, want := range map[string]bool{
		"": true, "15;0": true, "0;15": false, "0;default;15": false, "15;default;0": true,
		"7;8": true, "0;7": false, "nonsense": true, ";": true,
	} {
		if got := Dark(value); got != want {
			t.Errorf("Dark(%q) = %v", value, got)
		}
	}
}
