//go:build linux

package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.org/matside/session"
)

var killSeed = flag.Uint64("kill-seed", 0, "seed of the kill test; 0 takes a new one")

// pace is how fast the tests press Enter: two a second always count.
const pace = 500 * time.Millisecond

// TestKilledAndResumed presses nothing but Enter from the first screen on,
// while matside is killed at random moments and started again. What the screen
// confirmed is recorded, at most one step more is, and every piece is done
// exactly once. The short form goes to the end of a small quilt, the long one
// kills a thousand times.
func TestKilledAndResumed(t *testing.T) {
	random := seeded(t)
	kills, list := 12, ninePatchList(t)
	if testing.Short() {
		kills = 3
	}
	if long() {
		kills, list = 1000, manySquares(t, 1200)
	}
	db := filepath.Join(t.TempDir(), "matside.db")
	before, ahead := 0, 0
	for i := range kills {
		w := open(t, nil, "cut", list, "--db", db)
		if !w.until(`load \d+ of \d+`, 20*time.Second) {
			t.Fatalf("kill %d: no first screen; it showed\n%s", i, w.text())
		}
		// Two starts of three press a key: some kills come while it starts or
		// stands still.
		if i%3 != 2 {
			w.press("\r")
		}
		time.Sleep(time.Duration(random.Int64N(int64(60 * time.Millisecond))))
		w.kill()
		confirmed, recorded := w.place(), recordedPlace(t, db)
		if recorded < confirmed || recorded > confirmed+1 || recorded < before || recorded > before+1 {
			t.Fatalf("kill %d: the screen confirmed %d steps, recorded are %d, and %d before", i, confirmed, recorded, before)
		}
		if before = recorded; recorded > confirmed {
			ahead++
		}
	}
	t.Logf("%d kills; %d steps recorded; %d times one more than the screen had confirmed", kills, before, ahead)
	if !long() {
		onlyEnter(t, list, db)
	}
	s := statusOf(t, db)
	if s.PiecesDone+s.PiecesLeft != s.PiecesAsked || s.PiecesSpoiled+s.PiecesWaiting != 0 || !long() && !s.Finished {
		t.Errorf("at the end: %+v", s)
	}
}

func long() bool { return os.Getenv("MATSIDE_LONG") == "1" }

func seeded(t *testing.T) *rand.Rand {
	seed := *killSeed
	if seed == 0 {
		seed = rand.Uint64()
	}
	t.Logf("run again with -kill-seed %d", seed)
	return rand.New(rand.NewPCG(seed, 1))
}

// manySquares is a cut list of n squares, four to a load.
func manySquares(t *testing.T, n int) string {
	t.Helper()
	name := filepath.Join(t.TempDir(), "many.cutlist")
	text := fmt.Sprintf("quilt Many Squares\nfabric Ink\ncut from Ink\n%d squares 5 for A\n", n)
	if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return name
}

// TestKilledCare kills matside while it backs up and while it restores: the
// data file is the old or the new one, whole, and a backup that is there is
// whole.
func TestKilledCare(t *testing.T) {
	random, rounds := seeded(t), 6
	if long() {
		rounds = 200
	}
	folder := t.TempDir()
	db, backup := filepath.Join(folder, "matside.db"), filepath.Join(folder, "yesterday")
	name, err := program()
	if err != nil {
		t.Fatal(err)
	}
	matside := func(args ...string) *exec.Cmd { return exec.Command(name, append(args, "--db", db)...) }
	steps := func(n int) {
		c := matside("cut", "--plain", manySquares(t, 400))
		c.Stdin = strings.NewReader(strings.Repeat("1\n", n))
		if out, err := c.CombinedOutput(); err != nil {
			t.Fatalf("%v: %s", err, out)
		}
	}
	steps(150)
	if out, err := matside("backup", backup).CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	old := recordedPlace(t, db)
	killed := map[string]int{}
	for i := range rounds {
		steps(3)
		was := recordedPlace(t, db)
		copied := filepath.Join(folder, fmt.Sprint("copy-", i))
		for _, args := range [][]string{{"backup", copied}, {"restore", backup}} {
			c := matside(args...)
			if err := c.Start(); err != nil {
				t.Fatal(err)
			}
			time.Sleep(time.Duration(random.Int64N(int64(50 * time.Millisecond))))
			_ = c.Process.Kill()
			if c.Wait() != nil {
				killed[args[0]]++
			}
			now := recordedPlace(t, db)
			if now != was && !(args[0] == "restore" && now == old) {
				t.Fatalf("%s killed: %d steps, and %d before; the backup has %d", args[0], now, was, old)
			}
		}
		// Starting again finishes what a kill left half done.
		steps(0)
		if out, err := matside("check").CombinedOutput(); err != nil {
			t.Fatalf("round %d: %v: %s", i, err, out)
		}
		if _, err := os.Lstat(copied); err == nil {
			if out, err := exec.Command(name, "restore", copied, "--db", copied+".db").CombinedOutput(); err != nil {
				t.Fatalf("a backup that was killed: %v: %s", err, out)
			}
			if got := recordedPlace(t, copied+".db"); got != was {
				t.Errorf("a backup of %d steps holds %d", was, got)
			}
			os.Remove(copied + ".db")
		}
	}
	t.Logf("%d rounds, killed before the end: %v", rounds, killed)
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
