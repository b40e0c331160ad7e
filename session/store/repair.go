package store

import (
	"errors"
	"fmt"
)

// Report is what a check found.
type Report struct {
	Records uint64   // in both files, or in either
	Faults  []string // what isn't sound in one of the files, for her
	Lost    []uint64 // numbers of records that neither file has
	Kept    string   // where Repair kept the files as they were
}

// Check reads both files and says what it found; it writes nothing and takes
// no lock, so a file that another process is writing to may seem one step
// ahead of the other.
func Check(path string, opt Options) (Report, error) {
	opt.usual()
	s := &Store{path: path, opt: opt}
	if err := s.isFile(); err != nil {
		return Report{}, err
	}
	b, err := s.look(false)
	if err != nil {
		return Report{}, s.explain(err)
	}
	r := Report{Records: uint64(len(b.union)), Lost: b.lost}
	r.Faults = append(append(r.Faults, b.data.faults...), b.journal.faults...)
	if err := s.judge(b); err != nil && !errors.Is(err, ErrDamaged) {
		return r, err
	}
	if n := b.clash(); n != 0 {
		r.Faults = append(r.Faults, fmt.Sprintf("the data file and the journal differ in record %d", n))
	}
	return r, nil
}

// Repair keeps every record that is sound in either file, and puts what lost
// gives in the place of those that are in neither. The files as they were are
// kept beside. lost must give a sound line.
func Repair(path string, opt Options, lost func(seq uint64, before []byte) []byte) (Report, error) {
	s, err := lockOnly(path, opt)
	if err != nil {
		return Report{}, err
	}
	defer s.drop()
	b, err := s.look(true)
	if err != nil {
		return Report{}, s.explain(err)
	}
	var r Report
	if err := s.judge(b); err != nil && (!errors.Is(err, ErrDamaged) || len(b.union) == 0) {
		return r, err
	}
	r.Records, r.Lost = uint64(len(b.union)), b.lost
	r.Faults = append(append(r.Faults, b.data.faults...), b.journal.faults...)
	if b.fine(s.opt.Format) {
		return r, nil
	}
	if r.Kept, err = s.backupFirst("damaged"); err != nil {
		return r, s.explain(err)
	}
	lines := b.lines()
	var before []byte
	for i := range lines {
		if lines[i] == nil {
			lines[i] = lost(uint64(i+1), before)
		}
		before = lines[i]
	}
	return r, s.explain(s.replaceAll(head{s.opt.Format, b.id(), s.opt.Program}, lines))
}
