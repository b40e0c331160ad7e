package main

import (
	"fmt"
	"io"
	"os"

	"golang.org/x/term"

	"example.org/matside/tui/files"
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
	if out, ok := end.(*answers); ok {
		end = out.Writer
	}
	f, ok := end.(*os.File)
	return ok && term.IsTerminal(int(f.Fd()))
}

// answers is standard output, and what first kept it from being written: no
// command may end as done whose answer is lost.
type answers struct {
	io.Writer
	err error
}

func (o *answers) Write(text []byte) (int, error) {
	n, err := o.Writer.Write(text)
	if err != nil && o.err == nil {
		o.err = problem{fmt.Sprintf("standard output can't be written: %v", files.Bare(err)), "", err}
	}
	return n, err
}
