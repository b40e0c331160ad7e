//go:build linux

package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"math/rand/v2"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"example.org/matside/session"
)

var killSeed = flag.Uint64("kill-seed", 0, "seed of the kill test; 0 takes a new one")

// pace is how fast the tests press Enter: two a second always count.
const pace = 500 * time.Millisecond

// TestKilledAndResumed presses nothing but Enter from the first screen to the
// end, while matside is killed at random moments and started again. What the
// screen confirmed is recorded, at most one step more is, and in the end
// every piece is done exactly once.
func TestKilledAndResumed(t *testing.T) {
	kills := 20
	if testing.Short() {
		kills = 3
	}
	seed := *killSeed
	if seed == 0 {
		seed = rand.Uint64()
	}
	t.Logf("run again with -kill-seed %d", seed)
	random := rand.New(rand.NewPCG(seed, 1))
	list, err := filepath.Abs("../../testdata/cutlists/first-nine-patch.cutlist")
	if err != nil {
		t.Fatal(err)
	}
	db := filepath.Join(t.TempDir(), "matside.db")
	for i := range kills {
		w := open(t, nil, "cut", list, "--db", db)
		if !w.until(`load \d+ of \d+`, 5*time.Second) {
			t.Fatalf("kill %d: no first screen; it showed\n%s", i, w.text())
		}
		// Two starts of three press a key: the list's fifteen steps outlast
		// twenty kills, and some of those come while it starts or stands still.
		if i%3 != 2 {
			w.press("\r")
		}
		time.Sleep(time.Duration(random.Int64N(int64(60 * time.Millisecond))))
		w.kill()
		confirmed, recorded := w.place(), recordedPlace(t, db)
		if recorded < confirmed || recorded > confirmed+1 {
			t.Fatalf("kill %d: the screen confirmed %d steps, recorded are %d", i, confirmed, recorded)
		}
	}
	onlyEnter(t, list, db)
	s := statusOf(t, db)
	if !s.Finished || s.PiecesDone != s.PiecesAsked || s.PiecesLeft+s.PiecesSpoiled+s.PiecesWaiting != 0 {
		t.Errorf("at the end: %+v", s)
	}
}

// onlyEnter goes on to the end of the last load and closes the window.
func onlyEnter(t *testing.T, list, db string) {
	t.Helper()
	w := open(t, nil, "cut", list, "--db", db)
	for end := time.Now().Add(5 * time.Minute); time.Now().Before(end); {
		w.press("\r")
		if w.until(`all cut`, pace) {
			break
		}
	}
	time.Sleep(pace)
	w.press("q")
	if code := w.leave(5 * time.Second); code != exitDone {
		t.Errorf("it ended with %d, not %d", code, exitDone)
	}
}

func statusOf(t *testing.T, db string) session.Status {
	t.Helper()
	name, err := program()
	if err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(name, "status", "--json", "--db", db).Output()
	if err != nil {
		t.Fatalf("status: %v", err)
	}
	var s session.Status
	if err := json.Unmarshal(out, &s); err != nil {
		t.Fatalf("status: %v in %s", err, out)
	}
	return s
}

// recordedPlace is how many steps the data file holds.
func recordedPlace(t *testing.T, db string) int {
	t.Helper()
	s := statusOf(t, db)
	if s.Finished {
		return s.LoadsDone * session.Steps
	}
	for i, name := range []string{"fabric", "press", "load", "cut", "peel"} {
		if s.Step == name {
			return s.LoadsDone*session.Steps + i
		}
	}
	t.Fatal(fmt.Errorf("the status names no step: %+v", s))
	return 0
}
