package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/creack/pty"
)

// completing gives a folder with matside in it, on a path that shells get, and
// writes the completions for a shell.
func completing(t *testing.T, shell string) (file string, env []string) {
	t.Helper()
	if _, err := exec.LookPath(shell); err != nil {
		t.Skip(shell + " is not installed")
	}
	name, err := program()
	if err != nil {
		t.Fatal(err)
	}
	text, err := exec.Command(name, "completion", shell).Output()
	if err != nil {
		t.Fatal(err)
	}
	home := t.TempDir()
	file = filepath.Join(home, "_matside")
	for path, content := range map[string][]byte{file: text, filepath.Join(home, "throw.cutlist"): nil, filepath.Join(home, "other.txt"): nil} {
		if err := os.WriteFile(path, content, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	path := filepath.Dir(name) + string(os.PathListSeparator) + os.Getenv("PATH")
	return file, []string{"HOME=" + home, "PATH=" + path, "TERM=dumb", "LC_ALL=C"}
}

func TestCompletionFish(t *testing.T) {
	file, env := completing(t, "fish")
	for line, want := range map[string]string{"matside fabr": "fabric", "matside plan th": "throw.cutlist", "matside mats wa": "wash"} {
		c := exec.Command("fish", "--no-config", "-c", "source $argv[1]; complete --do-complete $argv[2]", file, line)
		c.Env, c.Dir = env, filepath.Dir(file)
		out, err := c.Output()
		if err != nil || !strings.HasPrefix(string(out), want) || strings.Contains(string(out), "other.txt") {
			t.Errorf("%s completes to %q, %v", line, out, err)
		}
	}
}

// bashCompletion is what Cobra's completions for bash stand on.
const bashCompletion = "/usr/share/bash-completion/bash_completion"

// TestCompletionTyped types at a real prompt of the shells that complete
// nowhere else.
func TestCompletionTyped(t *testing.T) {
	setUp := map[string]string{
		"bash": "source " + bashCompletion + "; source %s\n",
		"zsh":  "autoload -U compinit; compinit -u; source %s; compdef _matside matside\n",
	}
	bare := map[string][]string{"bash": {"--norc", "--noprofile", "-i"}, "zsh": {"-f", "-i"}}
	for shell, lines := range setUp {
		for typed, want := range map[string]string{"fabr": "fabric ", "plan thr": "throw.cutlist", "help caut": "cautions"} {
			t.Run(shell+" "+typed, func(t *testing.T) {
				if _, err := os.Stat(bashCompletion); shell == "bash" && err != nil {
					t.Skip("bash-completion is not installed")
				}
				file, env := completing(t, shell)
				c := exec.Command(shell, bare[shell]...)
				c.Env, c.Dir = env, filepath.Dir(file)
				typeAt(t, c, fmt.Sprintf(lines, file)+"matside "+typed+"\t", want)
			})
		}
	}
}

// typeAt types at a command and waits for what it is to say.
func typeAt(t *testing.T, c *exec.Cmd, typed, want string) {
	t.Helper()
	tty, err := pty.Start(c)
	if err != nil {
		t.Fatal(err)
	}
	defer func() {
		_ = c.Process.Kill()
		_ = c.Wait()
		_ = tty.Close()
	}()
	if _, err := tty.WriteString(typed); err != nil {
		t.Fatal(err)
	}
	said := make(chan string, 1)
	go func() {
		var all []byte
		buffer := make([]byte, 4096)
		for {
			n, err := tty.Read(buffer)
			all = append(all, buffer[:n]...)
			if err != nil || strings.Contains(string(all), want) {
				said <- string(all)
				return
			}
		}
	}()
	select {
	case all := <-said:
		if !strings.Contains(all, want) {
			t.Errorf("it said %q", all)
		}
	case <-time.After(30 * time.Second):
		t.Errorf("no %q in 30 s", want)
	}
}
