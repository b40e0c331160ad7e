package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/spf13/cobra"
)

// TestCommandExamples runs every example that a command's help shows, each in
// a folder and with a record of its own.
func TestCommandExamples(t *testing.T) {
	n := 0
	var walk func(c *cobra.Command)
	walk = func(c *cobra.Command) {
		for _, line := range strings.Split(c.Example, "\n") {
			if line = strings.TrimSpace(line); line != "" {
				n++
				t.Run(line, func(t *testing.T) { runExample(t, line) })
			}
		}
		for _, sub := range c.Commands() {
			walk(sub)
		}
	}
	walk(newRoot(world{getenv: func(string) string { return "" }}))
	if n < 25 {
		t.Errorf("%d examples were found", n)
	}
}

// runExample runs one line where there is what the examples speak of: a cut
// list, a spreadsheet's table, a quilt called Harbour that is under way.
func runExample(t *testing.T, line string) {
	const list = "quilt Harbour\nfabric Ink\ncut from Ink\n60 squares 4 for A\n9 squares 3 for C\n"
	table := "count,size,fabric\n4,2 1/2,Ink\n"
	if strings.Contains(line, "=Needed") {
		table = "Needed,Cut,fabric\n4,2 1/2,Ink\n"
	}
	t.Chdir(t.TempDir())
	for name, text := range map[string]string{"throw.cutlist": list, "table.csv": table} {
		if strings.Contains(line, "-o "+name) {
			continue // it is to be written
		}
		if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	harbour := filepath.Join(t.TempDir(), "harbour.cutlist")
	if err := os.WriteFile(harbour, []byte(list), 0o600); err != nil {
		t.Fatal(err)
	}
	matside := commands(t)
	if _, errs, code := matside("cut", harbour); code != exitDone {
		t.Fatalf("exit code %d: %s", code, errs)
	}
	line, to, redirected := strings.Cut(line, " >")
	said, errs, code := matside(shellWords(line)[1:]...)
	if code != exitDone {
		t.Errorf("%s: exit code %d: %s", line, code, errs)
	}
	if redirected && said == "" && !strings.Contains(line, "leftovers") {
		t.Errorf("nothing goes to%s", strings.TrimPrefix(to, ">"))
	}
}

// shellWords splits a line as a shell does, with double quotes.
func shellWords(line string) []string {
	var out []string
	for i, part := range strings.Split(line, `"`) {
		if i%2 == 1 {
			out = append(out, part)
			continue
		}
		out = append(out, strings.Fields(part)...)
	}
	return out
}
