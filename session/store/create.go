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
	h := head{max(opt.Format, 1), newID(), opt.Program}
	if err := opt.Fault.writeJournalFile(JournalPath(path), h.format, h.id, lines, false); err != nil {
		return err
	}
	return opt.Fault.aside(path, func(temp string) error { return opt.Fault.buildBolt(temp, h, lines) })
}
