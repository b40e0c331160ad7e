package store

import (
	"fmt"
	"os"
)

// Create makes a new data file and journal at path that hold lines as the
// numbers from 1 on. It refuses a path at which something stands.
func Create(path string, lines [][]byte, opt Options) error {
	for _, p := range []string{path, JournalPath(path)} {
		if _, err := os.Lstat(p); err == nil {
			return fmt.Errorf("store: %s: %w", p, os.ErrExist)
		}
	}
	id := newID()
	err := opt.Fault.aside(JournalPath(path), func(temp string) error {
		return opt.Fault.write(temp, journalBytes(id, lines))
	})
	if err != nil {
		return err
	}
	return opt.Fault.aside(path, func(temp string) error { return opt.Fault.buildBolt(temp, id, opt.Program, lines) })
}
