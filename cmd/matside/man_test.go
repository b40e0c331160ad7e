package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/spf13/cobra"
)

// writePages writes the man pages into a folder of the test's.
func writePages(t *testing.T) []file {
	t.Helper()
	root := newRoot(world{getenv: func(string) string { return "" }})
	files := manPages(root, t.TempDir(), time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC))
	for _, f := range files {
		if err := os.WriteFile(f.path, f.text, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return files
}

// TestManPages finds a page for each command and topic.
func TestManPages(t *testing.T) {
	has := map[string]bool{}
	for _, f := range writePages(t) {
		has[filepath.Base(f.path)] = true
	}
	for _, name := range topicNames {
		if !has["matside-"+name+".7"] {
			t.Errorf("no page for the topic %s", name)
		}
	}
	var walk func(c *cobra.Command)
	walk = func(c *cobra.Command) {
		if c.Runnable() && !c.Hidden && c.Name() != "help" && !has[manName(c)+".1"] {
			t.Errorf("no page for %s", c.CommandPath())
		}
		for _, sub := range c.Commands() {
			walk(sub)
		}
	}
	walk(newRoot(world{getenv: func(string) string { return "" }}))
}

// TestManPagesLint has mandoc's linter look at each page.
func TestManPagesLint(t *testing.T) {
	mandoc, err := exec.LookPath("mandoc")
	if err != nil {
		t.Skip("mandoc is not installed")
	}
	args := []string{"-Tlint", "-W", "warning"}
	for _, f := range writePages(t) {
		args = append(args, f.path)
	}
	if out, err := exec.Command(mandoc, args...).CombinedOutput(); err != nil || len(out) > 0 {
		t.Errorf("%v\n%s", err, out)
	}
}

// TestManPagesRead has man format pages, and finds their words.
func TestManPagesRead(t *testing.T) {
	if _, err := exec.LookPath("groff"); err != nil {
		t.Skip("groff is not installed")
	}
	if err := exec.Command("man", "--version").Run(); err != nil {
		t.Skip("man is not installed")
	}
	want := map[string]string{"matside.1": "walks you through", "matside-plan.1": "--effort", "matside-cutlist.7": "50 squares 2 for A"}
	for _, f := range writePages(t) {
		words, ok := want[filepath.Base(f.path)]
		if !ok {
			continue
		}
		c := exec.Command("man", "-l", f.path)
		c.Env = append(os.Environ(), "MANWIDTH=200", "MAN_KEEP_FORMATTING=", "PAGER=cat", "LC_ALL=C")
		out, err := c.Output()
		if err != nil {
			t.Errorf("%s: %v", f.path, err)
		}
		if !bytes.Contains(out, []byte(words)) {
			t.Errorf("%s has no %q", f.path, words)
		}
		delete(want, filepath.Base(f.path))
	}
	if len(want) > 0 {
		t.Errorf("not read: %v", want)
	}
}

// TestHelpTellsTopics asks for a topic as she would.
func TestHelpTellsTopics(t *testing.T) {
	var out bytes.Buffer
	w := world{in: strings.NewReader(""), out: &out, err: &out, getenv: func(string) string { return "" }}
	if code := run(t.Context(), w, []string{"help", "cautions"}); code != exitDone || !strings.Contains(out.String(), "Spray adhesive") {
		t.Errorf("exit code %d, and\n%s", code, &out)
	}
}
