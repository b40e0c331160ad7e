package main

import (
	"errors"
	"fmt"
	"os"
	"runtime"

	"github.com/spf13/cobra"

	"example.org/matside/session"
)

// dataFile is what --db says.
func dataFile(c *cobra.Command) string {
	f := c.Flags().Lookup("db")
	if f == nil {
		return ""
	}
	return f.Value.String()
}

// openFile opens the data file that option or the environment names. The
// planner is for recuts and edited lists; nil is the usual one.
func openFile(w world, option string, planner session.Planner) (*session.Ledger, error) {
	path, err := session.Path(option, runtime.GOOS, w.getenv)
	if err != nil {
		return nil, err
	}
	return session.Open(path, session.OpenOptions{Probe: probe(), Planner: planner})
}

// withLedger opens the data file, does f, and closes the file whatever f says.
func withLedger(w world, option string, f func(*session.Ledger) error) error {
	l, err := openFile(w, option, nil)
	if err != nil {
		return err
	}
	for _, note := range l.Notes() {
		fmt.Fprintf(w.err, "matside: %s\n", note)
	}
	return errors.Join(f(l), l.Close())
}

// readState reads the data file without holding it, also while another
// window has it open. No file yet is an empty state with the first mat.
func readState(w world, option string) (session.State, error) {
	path, err := session.Path(option, runtime.GOOS, w.getenv)
	if err != nil {
		return session.State{}, err
	}
	return session.Peek(path)
}

// probe tries a data file in a process of its own, so that whatever is wrong
// with it can't end this one. nil where this program can't be found.
func probe() func(path string) error {
	self, err := os.Executable()
	if err != nil {
		return nil
	}
	return session.ProbeBy(self, "check", "--probe")
}
