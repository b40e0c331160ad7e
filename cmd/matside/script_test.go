package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

// TestScripts runs the command lines under testdata/scripts, one topic each.
func TestScripts(t *testing.T) {
	lists, err := filepath.Abs("../../testdata/cutlists")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir: "../../testdata/scripts",
		Setup: func(e *testscript.Env) error {
			e.Setenv("LISTS", lists)
			e.Setenv("MATSIDE_DB", filepath.Join(e.WorkDir, "data", "matside.db"))
			e.Setenv("HOME", filepath.Join(e.WorkDir, "home"))
			return os.MkdirAll(filepath.Join(e.WorkDir, "home"), 0o700)
		},
	})
}
