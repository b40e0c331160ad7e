package guide

import (
	"errors"
	"fmt"
	"testing"

	"example.org/matside/session"
	"example.org/matside/session/reason"
	"example.org/matside/tui/words"
)

// That a step is not saved is said once, with what to do.
func TestNotSaved(t *testing.T) {
	full := &session.Trouble{What: reason.NoRoom.Say("m.db"), Safe: reason.AllRecordedSafe.Say(), Way: reason.MakeRoom.Say(), Err: errors.New("full")}
	want := "NOT SAVED: there is no room left on the disk for m.db; everything recorded before is safe; make room, then try again"
	if got := NotSaved(words.English{}, fmt.Errorf("not saved: %w", full)); got != want {
		t.Error(got)
	}
	if got := NotSaved(words.English{}, errors.New("torn\nin two")); got != "NOT SAVED: torn in two" {
		t.Error(got)
	}
}
