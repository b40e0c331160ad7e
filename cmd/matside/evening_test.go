//go:build linux

package main

import (
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"
)

// since is what was drawn since mark, without colours.
func (w *window) since(mark int) string { return w.text()[min(mark, len(w.text())):] }

// presses types keys and waits until the pattern is drawn after them.
func (w *window) presses(keys, pattern string) {
	w.t.Helper()
	mark := len(w.text())
	w.press(keys)
	re := regexp.MustCompile(pattern)
	for end := time.Now().Add(20 * time.Second); time.Now().Before(end); time.Sleep(5 * time.Millisecond) {
		if re.MatchString(w.since(mark)) {
			time.Sleep(pace) // as she does
			return
		}
	}
	w.t.Fatalf("after %q no %q; it showed\n%s", keys, pattern, w.since(mark))
}

// toTheEnd presses nothing but Enter until the last page.
func (w *window) toTheEnd(presses int) {
	w.t.Helper()
	for range presses {
		mark := len(w.text())
		w.press("\r")
		time.Sleep(pace)
		if strings.Contains(w.since(mark), "is all cut.") {
			return
		}
	}
	w.t.Fatalf("not at the end; it showed\n%s", w.text()[max(len(w.text())-4000, 0):])
}

// TestAnEvening cuts a small quilt in a real terminal: a spoiled piece, taken
// back, spoiled again and picked on the picture, a wash, its taking back, a
// second mat, a pause; then Enter alone to the end.
func TestAnEvening(t *testing.T) {
	list, db := ninePatch(t)
	w := open(t, nil, "cut", list, "--db", db)
	if !w.until("FABRIC", 20*time.Second) {
		t.Fatalf("no first step; it showed\n%s", w.text())
	}
	w.presses("\r", "PRESS")
	w.presses("\r", "LOAD")
	w.presses("\r", "CUT")
	w.presses("\r", "PEEL")
	w.presses("3", "3 pieces spoiled")
	w.presses("\r", "How many are these")
	w.presses("3", "A: 3|. SPOILED|█")
	w.presses("\r", "FABRIC")
	w.presses("\x7f", "PEEL")
	w.presses("\x1b[C", "row 1, piece 1")
	w.presses("x", "1 piece crossed out")
	w.presses("\r", "Cut again in load|1 piece spoiled")
	w.presses("w", "is washed")
	w.presses("u", "is taken back")
	w.presses("p", "Your pause began")
	w.presses("\r", "First number across")
	w.presses("m", "Wash due after")
	w.presses("n", "mat Two")
	w.presses("\x1b[B", "0 loads since its wash, 0 washes")
	w.presses("m", "mat Two, in use")
	w.presses("\r", "FABRIC")
	w.toTheEnd(80)
	w.press("\r")
	if code := w.leave(10 * time.Second); code != exitDone {
		t.Errorf("exit code %d", code)
	}
	s := statusOf(t, db)
	if !s.Finished || s.PiecesDone != s.PiecesAsked || s.PiecesSpoiled != 1 {
		t.Errorf("recorded: %+v", s)
	}
	if len(s.Mats) != 2 || s.Mats[1].LoadsEver == 0 || s.Mats[0].LoadsEver != 1 {
		t.Errorf("mats: %+v", s.Mats)
	}
}

// TestTheDemoWithOnlyEnter goes through the whole demo, a press a step.
func TestTheDemoWithOnlyEnter(t *testing.T) {
	if !long() {
		t.Skip("a minute of key presses: MATSIDE_LONG=1 runs it")
	}
	w := open(t, nil, "demo")
	if !w.until("FABRIC", 20*time.Second) {
		t.Fatalf("no first step; it showed\n%s", w.text())
	}
	w.toTheEnd(400)
	w.press("\r")
	if code := w.leave(10 * time.Second); code != exitDone {
		t.Errorf("exit code %d", code)
	}
}

// BenchmarkFirstPicture is from the start of the program to the first picture
// on the terminal, and to the first step where one is under way and where the
// demo is planned.
func BenchmarkFirstPicture(b *testing.B) {
	db := filepath.Join(b.TempDir(), "m.db")
	list, err := filepath.Abs("../../testdata/cutlists/first-nine-patch.cutlist")
	if err != nil {
		b.Fatal(err)
	}
	w := open(b, nil, "cut", list, "--db", db)
	w.until("FABRIC", 20*time.Second)
	w.press("q")
	w.exit(10 * time.Second)
	w.close()
	for _, c := range []struct {
		name, text string
		args       []string
	}{
		{"picture", "Getting your quilts ready", []string{"--db", db}},
		{"resumed step", "FABRIC", []string{"--db", db}},
		{"demo step", "FABRIC", []string{"demo"}},
	} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				w := open(b, nil, c.args...)
				if !w.until(c.text, 20*time.Second) {
					b.Fatalf("no %q in %s", c.text, w.text())
				}
				b.StopTimer()
				w.kill()
				b.StartTimer()
			}
		})
	}
}
