//go:build linux

package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// longList takes thorough planning far longer than a second.
func longList(t *testing.T) string {
	var b strings.Builder
	b.WriteString("quilt Long\n")
	for f := range 6 {
		fmt.Fprintf(&b, "fabric Cloth %d\ncut from Cloth %d\n", f, f)
		for s := range 7 {
			fmt.Fprintf(&b, "23 rectangles %d/8 x %d/8\n", 9+(5*s+7*f)%34, 9+(11*s+5*f)%37)
		}
	}
	name := filepath.Join(t.TempDir(), "long.cutlist")
	if err := os.WriteFile(name, []byte(b.String()), 0o600); err != nil {
		t.Fatal(err)
	}
	return name
}

// TestInterrupted interrupts planning as soon as it says that it takes long:
// the best plan so far is printed, and said to be that; nothing is cut by it.
func TestInterrupted(t *testing.T) {
	name := longList(t)
	for _, c := range []struct {
		args []string
		want []string
	}{
		{[]string{"plan"}, []string{"Long: 966 pieces", "interrupted: this is the best plan so far"}},
		{[]string{"fabric"}, []string{"Long: the fabric for", "interrupted: this is the best plan so far"}},
		{[]string{"cut"}, []string{"interrupted: nothing was started"}},
	} {
		t.Run(c.args[0], func(t *testing.T) {
			w := open(t, []string{"MATSIDE_DB=" + filepath.Join(t.TempDir(), "matside.db")}, append(c.args, name, "--effort", "thorough")...)
			if !w.until(`matside: .*, \d+ s \(Ctrl\+C`, 20*time.Second) {
				w.kill()
				t.Fatalf("no word of progress:\n%s", w.text())
			}
			w.press("\x03")
			if code := w.leave(30 * time.Second); code != exitInterrupted {
				t.Errorf("exit code %d", code)
			}
			for _, s := range c.want {
				if !strings.Contains(w.text(), s) {
					t.Errorf("no %q in\n%s", s, w.text())
				}
			}
		})
	}
}
