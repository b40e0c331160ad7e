package main

import (
	"os"
	"strings"
	"testing"
)

// TestReadme plans the README's first cut list and finds the README's answer,
// and runs every command line that stands in a block of its own.
func TestReadme(t *testing.T) {
	text, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	var list, answer string
	var lines []string
	for i, block := range strings.Split(string(text), "```\n") {
		switch {
		case i%2 == 0:
		case strings.HasPrefix(block, "quilt "):
			list = block
		case strings.HasPrefix(block, "Porch Steps:"):
			answer = block
		case strings.HasPrefix(block, "matside "):
			lines = append(lines, strings.Split(strings.TrimSpace(block), "\n")...)
		}
	}
	if list == "" || answer == "" || len(lines) < 6 {
		t.Fatalf("the README has the cut list %q, the answer %q, and the commands %q", list, answer, lines)
	}
	t.Chdir(t.TempDir())
	if err := os.WriteFile("porch.cutlist", []byte(list), 0o600); err != nil {
		t.Fatal(err)
	}
	matside := commands(t)
	for _, line := range append([]string{"matside plan porch.cutlist"}, lines...) {
		line, to, _ := strings.Cut(line, " > ")
		said, errs, code := matside(strings.Fields(line)[1:]...)
		if code != exitDone {
			t.Errorf("%s: exit code %d: %s", line, code, errs)
		}
		if line == "matside plan porch.cutlist" && said != answer {
			t.Errorf("the README says\n%s\nand the plan is\n%s", answer, said)
		}
		if to != "" && said == "" {
			t.Errorf("%s wrote nothing into %s", line, to)
		}
	}
}
