package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"example.org/matside/session"
)

// While a session holds the data file, what would look into it says so and
// nothing else.
func TestCareOfAFileThatIsHeld(t *testing.T) {
	file := filepath.Join(t.TempDir(), "held.db")
	ledger, err := session.Open(file, session.OpenOptions{})
	if err != nil {
		t.Fatal(err)
	}
	defer ledger.Close()
	matside := commands(t)
	for _, args := range [][]string{{"check", "--repair"}, {"restore", file}, {"mats", "wash", "One"}} {
		said, errs, code := matside(append([]string{"--db", file}, args...)...)
		if said != "" || !strings.Contains(errs, "already open in another window") || code != exitFault {
			t.Errorf("%v: code %d\n%s%s", args, code, said, errs)
		}
	}
}

// What can't be written to standard output is told in plain words by every
// command.
func TestStandardOutputIsFull(t *testing.T) {
	full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
	if err != nil {
		t.Skip(err)
	}
	defer full.Close()
	name, err := program()
	if err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{{"plan", "../../testdata/cutlists/first-nine-patch.cutlist"}, {"status"}, {"help", "sizes"}, {"completion", "bash"}, {"examples", "teacup-row"}} {
		var errs strings.Builder
		c := exec.Command(name, args...)
		c.Env = append(os.Environ(), "HOME="+t.TempDir(), "MATSIDE_DB="+filepath.Join(t.TempDir(), "a.db"))
		c.Stdout, c.Stderr = full, &errs
		if c.Run() == nil || errs.String() != "matside: standard output can't be written: no space left on device\n" {
			t.Errorf("%v: %s", args, errs.String())
		}
	}
}
