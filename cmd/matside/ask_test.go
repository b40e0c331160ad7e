//go:build linux

package main

import (
	"os"
	"path/filepath"
	"testing"
	"time"
)

// TestAsksBeforeWritingOver: at a terminal she is asked, and only a yes writes
// over what is there.
func TestAsksBeforeWritingOver(t *testing.T) {
	name := filepath.Join(t.TempDir(), "one.svg")
	for _, c := range []struct {
		answer, holds string
		code          int
	}{{"n\r", "mine", exitFault}, {"\r", "mine", exitFault}, {"y\r", "", exitDone}} {
		if err := os.WriteFile(name, []byte("mine"), 0o600); err != nil {
			t.Fatal(err)
		}
		w := open(t, nil, "svg", "../../testdata/cutlists/first-nine-patch.cutlist", "--load", "1", "-o", name)
		if !w.until(`one.svg is there already. Write over\? \[y/N\] `, 30*time.Second) {
			t.Fatalf("no question:\n%s", w.text())
		}
		w.press(c.answer)
		code := w.exit(30 * time.Second)
		w.close()
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if code != c.code || c.holds != "" && string(text) != c.holds || c.holds == "" && len(text) < 100 {
			t.Errorf("%q: exit code %d, and it holds %.40q", c.answer, code, text)
		}
	}
}
