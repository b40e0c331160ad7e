package guide

import (
	"errors"
	"strings"

	"example.org/matside/session"
	"example.org/matside/tui/words"
)

// NotSaved says in one line that a step was not saved, why, and what to do.
func NotSaved(w words.Words, err error) string {
	var trouble *session.Trouble
	if errors.As(err, &trouble) {
		err = trouble // without what it was wrapped in: that it was not saved is said here
	}
	return w.SaveFailed(strings.Join(strings.Fields(w.Error(err)), " "))
}
