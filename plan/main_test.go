package plan

import (
	"flag"
	"os"
	"testing"
)

// TestMain keeps the random laws quick, unless asked for the long form.
func TestMain(m *testing.M) {
	if os.Getenv("MATSIDE_LONG") != "1" {
		if err := flag.Set("rapid.checks", "5"); err != nil {
			panic(err)
		}
	}
	os.Exit(m.Run())
}
