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
// the best plan so far is printed whole, and said to be that; but nothing is
// drawn by it, and no file is written.
func TestInterrupted(t *testing.T) {
	name, drawn := longList(t), filepath.Join(t.TempDir(), "drawn")
	const best, none = "interrupted: this is the best plan so far", "interrupted: the plan is not finished, and nothing was written"
	for _, c := range []struct {
		args []string
		want []string
	}{
		{[]string{"plan"}, []string{"Long: 966 pieces, ", best}},
		{[]string{"fabric"}, []string{"Long: the fabric for", best}},
		{[]string{"svg", "-o", drawn}, []string{none}},
		{[]string{"dxf", "-o", drawn}, []string{none}},
		{[]string{"pdf", "-o", drawn}, []string{none}},
		{[]string{"csv", "--of", "loads", "-o", drawn}, []string{none}},
	} {
		t.Run(c.args[0], func(t *testing.T) {
			t.Parallel()
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
			if strings.Contains(w.text(), "too little fabric") {
				t.Errorf("fabric is said to be short:\n%s", w.text())
			}
			if _, err := os.Lstat(drawn); err == nil {
				t.Errorf("%s was written", drawn)
			}
		})
	}
}

// TestLeavingWhilePlanning leaves the screen in the middle of a long plan: at
// once, the terminal in order, and nothing is started.
func TestLeavingWhilePlanning(t *testing.T) {
	db := filepath.Join(t.TempDir(), "matside.db")
	for _, key := range []string{"q", "\x03"} {
		w := open(t, nil, "cut", longList(t), "--effort", "thorough", "--db", db)
		before := w.before
		if !w.until(`Packing the loads`, 20*time.Second) {
			t.Fatalf("no word of progress:\n%s", w.text())
		}
		w.press(key)
		code := w.exit(10 * time.Second)
		if after := w.modes(); after != before {
			t.Errorf("the terminal's modes are %+v, and were %+v", after, before)
		}
		w.close()
		if code != exitDone {
			t.Errorf("exit code %d", code)
		}
		if s := statusOf(t, db); s.Quilt != "" {
			t.Errorf("%s was started", s.Quilt)
		}
	}
}
