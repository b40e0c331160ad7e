package store

// Read reads all lines of the data file at path and its journal without
// opening it: it takes no lock and writes nothing, so it also serves while
// another process is writing. Missing files are no lines.
//
// A process that writes puts a line into the journal before the data file; so
// the journal is read last, and what it has is what will be kept.
func Read(path string) ([][]byte, error) {
	s := &Store{path: path}
	b, err := s.look()
	if err != nil {
		return nil, s.explain(err)
	}
	if b.journalOK || b.journal.torn && len(b.journal.faults) == 0 && b.journal.id != "" {
		return b.journal.lines, nil // whole by itself: the data file may be half written just now
	}
	if err := s.judge(b); err != nil {
		return nil, err
	}
	return b.union, nil
}
