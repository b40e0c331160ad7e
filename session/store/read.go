package store

// Read reads all lines of the data file at path and its journal without
// opening it: it takes no lock and writes nothing, so it also serves while
// another process is writing. Missing files are no lines.
//
// A process that writes puts a line into the journal before the data file; so
// the journal is read last, and what it has is what will be kept.
func Read(path string) ([][]byte, error) {
	s := &Store{path: path, opt: Options{Format: 1}}
	j, has, err := readJournalFile(JournalPath(path), true)
	if err != nil {
		return nil, s.explain(err)
	}
	if has && j.id != "" && len(j.faults) == 0 && !j.gap() && j.format == 1 {
		return j.lines, nil // whole by itself: the data file may be half written just now
	}
	b, err := s.look(true)
	if err != nil {
		return nil, s.explain(err)
	}
	if err := s.judge(b); err != nil {
		return nil, err
	}
	return b.lines(), nil
}
