//go:build linux

package main

import (
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// keys are what a step of the form is answered with, and what shows that the
// next one stands.
type keys struct{ press, until string }

// through presses each and waits; keys half a second apart, as fingers do.
func (w *window) through(steps []keys) {
	w.t.Helper()
	for _, s := range steps {
		time.Sleep(500 * time.Millisecond)
		w.press(s.press)
		if !w.until(s.until, 20*time.Second) {
			w.t.Fatalf("after %q it does not show %q:\n%s", s.press, s.until, w.text())
		}
	}
}

// TestAListWrittenInAWindowAndCut: the first page, the form, the plan and the
// cutting to the end, in a real terminal.
func TestAListWrittenInAWindowAndCut(t *testing.T) {
	folder, db := t.TempDir(), filepath.Join(t.TempDir(), "m.db")
	w := openIn(t, folder, nil, "--db", db)
	if !w.until(`Write one here`, 20*time.Second) {
		t.Fatalf("no first page; it showed\n%s", w.text())
	}
	w.through([]keys{
		{"3", `What are you making`}, {"Lamp Room\r", `What do you call the fabric`}, {"Ink\r", `What do you have of Ink`},
		{"\r", `How much of Ink is there`}, {"\r", `anything special about Ink`}, {"\r", `\+ pieces from Ink`},
		{"\r", `Which shape, from Ink`}, {"3", `How many`}, {"6\r", `What size`}, {"3\r", `finished size`}, {"1", `What are they for`},
		{"star\r", `special about these`}, {"\r", `6 half-square triangles 3 finished for star`}, {"p", `Save it where`}, {"\r", `6 pieces in 1 load`},
		{"\r", `FABRIC`}, {"\r", `PRESS`}, {"\r", `Lay Ink`}, {"\r", `Cut drawing 1`}, {"\r", `Peel off 6 pieces`}, {"\r", `is all cut`},
	})
	w.press("q")
	if code := w.leave(10 * time.Second); code != 0 {
		t.Errorf("exit code %d", code)
	}
	text, err := os.ReadFile(filepath.Join(folder, "lamp-room.cutlist"))
	if want := "quilt Lamp Room\nfabric Ink, 42 in x 1 yd\n\ncut from Ink\n6 half-square triangles 3 finished for star\n"; err != nil || string(text) != want {
		t.Errorf("saved %q, %v", text, err)
	}
	if s := statusOf(t, db); s.Quilt != "Lamp Room" || s.PiecesDone != 6 || !s.Finished {
		t.Errorf("%+v", s)
	}
}

// TestAFormSurvivesAClosedWindow: what was half typed is there again.
func TestAFormSurvivesAClosedWindow(t *testing.T) {
	folder, db := t.TempDir(), filepath.Join(t.TempDir(), "m.db")
	home := []string{"HOME=" + t.TempDir()}
	w := openIn(t, folder, home, "--db", db)
	w.until(`Write one here`, 20*time.Second)
	w.through([]keys{{"3", `What are you making`}, {"Lamp Room\r", `What do you call the fabric`}, {"blue do", `blue do`}})
	time.Sleep(300 * time.Millisecond)
	w.signal(syscall.SIGHUP)
	w.leave(10 * time.Second)
	again := openIn(t, folder, home, "--db", db)
	if !again.until(`Go on writing`, 20*time.Second) {
		t.Fatalf("it forgot the form:\n%s", again.text())
	}
	again.through([]keys{{"3", `blue do`}})
	again.press("\x03")
	again.leave(10 * time.Second)
	if strings.Contains(again.text(), "panic") {
		t.Error(again.text())
	}
}
