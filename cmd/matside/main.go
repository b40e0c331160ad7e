// Command matside is kept open beside the cutter: it plans the mat loads of a
// cut list, walks the quilter through each, and remembers every piece cut.
//
// This package only wires: options and paths in, the screens or plain lines
// out, an exit code at the end. Standard output carries what was asked for,
// standard error what went wrong.
package main

import (
	"context"
	"os"
	"runtime/debug"

	"example.org/matside/tui/guard"
)

func main() {
	guard.StandBy()
	// A damaged data file makes reads of its mapping fault; as a panic that can
	// be told in words, as a signal it can't.
	debug.SetPanicOnFault(true)
	w := world{
		in: os.Stdin, out: os.Stdout, err: os.Stderr,
		getenv: os.Getenv,
	}
	os.Exit(run(context.Background(), w, os.Args[1:]))
}
