package guide_test

import (
	"testing"

	"example.org/matside/session"
	"example.org/matside/tui/guide"
	"example.org/matside/tui/words"
)

// TestAgain says what becomes of spoiled pieces, and nothing where none were.
func TestAgain(t *testing.T) {
	q := &session.Quilt{}
	if got := guide.Again(words.English{}, q); got != "" {
		t.Errorf("nothing was spoiled, and it says %q", got)
	}
	q.Again.Short = make([]session.Copy, 2)
	if got := guide.Again(words.English{}, q); got != "No fabric is left for 2 pieces." {
		t.Errorf("it says %q", got)
	}
}
