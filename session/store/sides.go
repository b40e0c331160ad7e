package store

import (
	"cmp"
	"errors"
	"os"
	"sync"
)

// sides is what the two files hold.
type sides struct {
	data, journal       found
	hasData, hasJournal bool     // the file is there and not empty
	dataOurs            bool     // it is a data file of matside's
	dataSound           bool     // and has no fault
	journalOK           bool     // the journal has no fault
	union               []mark   // what either has
	lost                []uint64 // what neither has
	fresh               string   // an ID for files that have none
	kept                [][]byte
}

// look reads what is sound of both files, at the same time.
func (s *Store) look(keep bool) (*sides, error) {
	b := sides{fresh: newID()}
	var dataErr, journalErr error
	var both sync.WaitGroup
	both.Go(func() { dataErr = s.lookAtData(&b, keep) })
	both.Go(func() {
		b.journal, b.hasJournal, journalErr = readJournalFile(JournalPath(s.path), keep, 1)
		j := &b.journal
		b.hasJournal = b.hasJournal && (j.id != "" || j.torn || len(j.marks)+len(j.faults) > 0) // else 0 bytes
	})
	both.Wait()
	if err := errors.Join(dataErr, journalErr); err != nil {
		return nil, err
	}
	b.join()
	return &b, nil
}

func (s *Store) lookAtData(b *sides, keep bool) error {
	info, err := os.Stat(s.path)
	if os.IsNotExist(err) || err == nil && info.Size() == 0 {
		return nil
	}
	if err != nil {
		return err
	}
	b.hasData = true
	if b.data, b.dataOurs, err = readData(s.path, keep); err != nil {
		return err
	}
	if b.dataOurs && len(b.data.faults) == 0 && s.opt.Probe != nil {
		if err := s.opt.Probe(s.path); err != nil {
			b.data.fault("the data file did not stand the probe: %v", err)
		}
	}
	return nil
}

// join makes the union of both sides and names what neither has.
func (b *sides) join() {
	n := max(len(b.data.marks), len(b.journal.marks))
	b.union = make([]mark, n)
	if b.data.keep || b.journal.keep {
		b.kept = make([][]byte, n)
	}
	for i := range b.union {
		side := &b.journal
		if !side.has(uint64(i + 1)) {
			side = &b.data
		}
		if !side.has(uint64(i + 1)) {
			b.lost = append(b.lost, uint64(i+1))
			continue
		}
		b.union[i] = side.marks[i]
		if side.keep {
			b.kept[i] = side.lines[i]
		}
	}
	b.dataSound = b.hasData && b.dataOurs && len(b.data.faults) == 0 && !b.data.gap()
	b.journalOK = b.hasJournal && b.journal.id != "" && len(b.journal.faults) == 0 && !b.journal.torn && !b.journal.gap()
}

// fine says that both files are sound and hold the same.
func (b *sides) fine(format uint32) bool {
	return b.dataSound && b.journalOK && len(b.data.marks) == len(b.journal.marks) && b.clash() == 0 &&
		b.data.id == b.journal.id && b.data.format == format && b.journal.format == format
}

// clash names the first number under which the two hold different lines.
func (b *sides) clash() uint64 {
	for i := range min(len(b.data.marks), len(b.journal.marks)) {
		d, j := b.data.marks[i], b.journal.marks[i]
		if d.size > 0 && j.size > 0 && d != j {
			return uint64(i + 1)
		}
	}
	return 0
}

func (b *sides) id() string { return cmp.Or(b.data.id, b.journal.id, b.fresh) }

func (b *sides) format() uint32 { return max(b.data.format, b.journal.format) }

// lines are the union's; what is lost is nil.
func (b *sides) lines() [][]byte { return b.kept }
