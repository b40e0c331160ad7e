package main

import (
	"io"
	"os"

	"golang.org/x/term"
)

// world is what a command may touch of the outside, so that tests can hand it
// another one.
type world struct {
	in       io.Reader
	out, err io.Writer
	getenv   func(string) string
}

// terminal reports whether a person sits at both ends.
func (w world) terminal() bool { return isTerminal(w.in) && isTerminal(w.out) }

func isTerminal(end any) bool {
	f, ok := end.(*os.File)
	return ok && term.IsTerminal(int(f.Fd()))
}
