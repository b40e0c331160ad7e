package main

import (
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
