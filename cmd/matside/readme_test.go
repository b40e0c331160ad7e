package main

import (
	"bytes"
	"context"
	"os"
	"strings"
	"testing"
)

// TestReadme plans the README's first cut list and finds the README's answer.
func TestReadme(t *testing.T) {
	text, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	var list, answer string
	for i, block := range strings.Split(string(text), "```\n") {
		if i%2 == 0 {
			continue
		}
		switch {
		case strings.HasPrefix(block, "quilt "):
			list = block
		case strings.HasPrefix(block, "Porch Steps:"):
			answer = block
		}
	}
	if list == "" || answer == "" {
		t.Fatal("the README has no cut list, or no answer to it")
	}
	var out, errs bytes.Buffer
	w := world{in: strings.NewReader(list), out: &out, err: &errs, getenv: func(string) string { return "" }}
	if code := run(context.Background(), w, []string{"plan", "-"}); code != exitDone {
		t.Fatalf("exit code %d: %s", code, &errs)
	}
	if out.String() != answer {
		t.Errorf("the README says\n%s\nand the plan is\n%s", answer, &out)
	}
}
