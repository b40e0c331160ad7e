//go:build unix

package session

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"example.org/matside/session/store"
)

// FAULTS.md is the table of what can be wrong with the data file and of what
// is said then. The tests that bring each fault about hold it to its row;
// `go test ./session -update` writes their rows anew, and leaves those of tests
// that didn't run.
const faultsFile = "FAULTS.md"

var faults struct {
	sync.Mutex
	told map[string]string
}

// told holds what was said of a fault to its row of the table.
func told(t testing.TB, fault, said string) {
	t.Helper()
	said = everywhere(said)
	t.Logf("%-40s %s", fault, said)
	faults.Lock()
	defer faults.Unlock()
	if faults.told == nil {
		faults.told = readFaults(t)
	}
	if *update {
		faults.told[fault] = said
	} else if want := faults.told[fault]; want != said {
		t.Errorf("%s: the table in %s says\n%q, it said\n%q", fault, faultsFile, want, said)
	}
}

// everywhere is a message without what differs from run to run.
func everywhere(said string) string {
	for _, r := range [][2]string{{`/[^ ;:]*/`, "…/"}, {`process \d+`, "process N"}, {`since \d+:\d+`, "since H:MM"}, {`-\d{8}-\d{6}(-\d+)?`, "-TIME"}} {
		said = regexp.MustCompile(r[0]).ReplaceAllString(said, r[1])
	}
	return strings.ReplaceAll(strings.TrimSpace(said), "\n", " ")
}

const faultsHead = `# What can be wrong with the data file, and what is said then

Each row is brought about by a test on the real file system; the message is what matside prints, with paths shortened.
In every case the program ends by itself with exit code 1, or goes on where the message says so; never by a signal.

| what is wrong | what is said |
| --- | --- |
`

func readFaults(t testing.TB) map[string]string {
	b, err := os.ReadFile(faultsFile)
	if err != nil && !*update {
		t.Error(err)
	}
	out := map[string]string{}
	for line := range strings.Lines(string(b)) {
		if cells := strings.Split(line, " | "); len(cells) == 2 {
			out[strings.TrimPrefix(cells[0], "| ")] = strings.TrimSuffix(cells[1], " |\n")
		}
	}
	return out
}

// writeFaults writes the table, for -update, if any row of it was told.
func writeFaults() error {
	if faults.told == nil {
		return nil
	}
	var rows []string
	for fault, said := range faults.told {
		if !strings.HasPrefix(fault, "what is") && !strings.HasPrefix(fault, "---") {
			rows = append(rows, "| "+fault+" | "+said+" |\n")
		}
	}
	slices.Sort(rows)
	return os.WriteFile(faultsFile, []byte(faultsHead+strings.Join(rows, "")), 0o644)
}

// TestDamageTold: one file damaged or gone is made anew from the other, and
// she is told; with both damaged she is told what is lost and the ways back.
func TestDamageTold(t *testing.T) {
	cut := func(p string) error { return os.Truncate(p, 9000) }
	for _, c := range []struct {
		fault string
		harm  func(path, journal string) error
	}{
		{"data file cut short, journal whole", func(path, _ string) error { return cut(path) }},
		{"data file gone, journal whole", func(path, _ string) error { return os.Remove(path) }},
		{"data file full of garbage, journal whole", func(path, _ string) error { return os.WriteFile(path, bytes.Repeat([]byte("lint"), 9000), 0o600) }},
		{"data file empty, journal whole", func(path, _ string) error { return os.Truncate(path, 0) }},
		{"journal gone, data file whole", func(_, journal string) error { return os.Remove(journal) }},
		{"journal full of garbage, data file whole", func(_, journal string) error { return os.WriteFile(journal, bytes.Repeat([]byte("lint\n"), 99), 0o600) }},
		{"both gone", func(path, journal string) error { os.Remove(path); return os.Remove(journal) }},
		{"data file cut short, journal gone", func(path, journal string) error { cut(path); return os.Remove(journal) }},
		{"one record damaged in both", func(path, _ string) error { spoil(t, path, 7); return nil }},
		{"written by a newer matside", func(path, journal string) error {
			s, err := store.Open(path, store.Options{Format: 7, Program: "matside 9.1", Upgrade: func(_ uint32, lines [][]byte) ([][]byte, error) { return lines, nil }})
			if err == nil {
				err = s.Close()
			}
			return err
		}},
		{"the journal of another evening", func(path, journal string) error {
			other := filepath.Join(t.TempDir(), "other.db")
			evening(t, other)
			copyFile(t, store.JournalPath(other), journal)
			return nil
		}},
	} {
		path := filepath.Join(quickDir(t), "m.db")
		want := evening(t, path)
		openAt(t, path).Close() // makes a backup
		if err := c.harm(path, store.JournalPath(path)); err != nil {
			t.Fatal(err)
		}
		l, err := Open(path, OpenOptions{Planner: fourToALoad})
		if err != nil {
			wants(t, c.fault, err, nil)
			continue
		}
		if c.fault != "both gone" {
			samePlain(t, l.State(), want)
		}
		told(t, c.fault, strings.Trim(fmt.Sprint(l.Notes()), "[]"))
		l.Close()
	}
}
