package store

import (
	"bytes"
	"crypto/rand"
	"encoding/binary"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"sync"
	"time"

	bolt "go.etcd.io/bbolt"

	"example.org/matside/plan/say"
	"example.org/matside/session/reason"
)

// Options of Open; the zero value is the usual.
type Options struct {
	Program string        // its version, kept in the file for a message later
	Wait    time.Duration // for another process's lock; 0: one second
	// Probe lets another process try the file first, so that whatever is
	// wrong with it can't end this one; nil: the file is read with care only.
	Probe   func(path string) error
	Now     func() time.Time // nil: time.Now
	MaxSize int              // of the data file in bytes; 0: 1 GiB
	// Format is the number of the lines' form, from 1; 0 is 1. Lines of an
	// older form go through Upgrade, after a copy of both files is made.
	Format  uint32
	Upgrade func(from uint32, lines [][]byte) ([][]byte, error)
	Fault   Fault // for tests
}

// Store is an open data file with its journal. Its methods may be called from
// several goroutines.
type Store struct {
	mu      sync.Mutex
	path    string
	id      string
	opt     Options
	lock    *lock
	db      *bolt.DB
	file    *os.File // the data file as opened by path, to see that it stays there
	journal *os.File
	size    int64 // of the journal's sound part
	last    uint64
	minimum int64          // the data file never shrinks below what it was when opened
	broken  error          // after a fault in bbolt nothing more is written
	copying sync.WaitGroup // a backup under way

	noting sync.Mutex
	notes  []say.Sentence
}

// Last is the number of the last line.
func (s *Store) Last() uint64 {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.last
}

// Notes say in her words what Open put right.
func (s *Store) Notes() []say.Sentence {
	s.noting.Lock()
	defer s.noting.Unlock()
	return slices.Clone(s.notes)
}

// Path is the data file's path.
func (s *Store) Path() string { return s.path }

func newID() string {
	var b [8]byte
	_, _ = rand.Read(b[:]) // never fails: crypto/rand ends the process instead
	return hex.EncodeToString(b[:])
}

func properID(s string) bool {
	b, err := hex.DecodeString(s)
	return err == nil && len(b) == 8
}

// Append keeps line under number seq. When it returns nil the line is on disk
// in both files, just now or already. After an error nothing has been kept,
// or, when even that is in doubt, the same Append may be tried again.
func (s *Store) Append(seq uint64, line []byte) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.broken != nil {
		return s.broken
	}
	if bytes.IndexByte(line, '\n') >= 0 {
		return fmt.Errorf("store: a line with a line break")
	}
	if seq <= s.last {
		return s.same(seq, line)
	}
	if seq != s.last+1 {
		return fmt.Errorf("%w: %d after %d", ErrGap, seq, s.last)
	}
	if err := s.inPlace(); err != nil {
		return err
	}
	if err := s.appendJournal(seq, line); err != nil {
		return s.explain(err)
	}
	if err := s.appendData(seq, line); err != nil {
		return s.explain(err)
	}
	s.last = seq
	return s.inPlace()
}

// same is nil when the line kept under seq is line.
func (s *Store) same(seq uint64, line []byte) error {
	kept, err := s.line(seq)
	if err == nil && !bytes.Equal(kept, line) {
		err = fmt.Errorf("%w: %d", ErrClash, seq)
	}
	return err
}

// line reads one record.
func (s *Store) line(seq uint64) (line []byte, err error) {
	err = guard(func() error {
		return s.db.View(func(tx *bolt.Tx) error {
			sound, ok := fromValue(seq, tx.Bucket(eventBucket).Get(toKey(seq)))
			if !ok {
				return fmt.Errorf("%w: record %d", ErrDamaged, seq)
			}
			line = bytes.Clone(sound)
			return nil
		})
	})
	return line, err
}

// appendJournal writes and syncs one journal line. What a failed write left
// behind is cut off again, now or by the next one.
func (s *Store) appendJournal(seq uint64, line []byte) error {
	b := appendJournalLine(nil, seq, line)
	if info, err := s.journal.Stat(); err != nil {
		return err
	} else if info.Size() != s.size {
		if err := s.journal.Truncate(s.size); err != nil {
			return err
		}
	}
	err := s.opt.Fault.before("write journal")
	if err == nil {
		_, err = s.journal.WriteAt(b, s.size)
	}
	if err == nil {
		err = s.opt.Fault.before("sync journal")
	}
	if err == nil {
		err = s.journal.Sync()
	}
	if err != nil {
		_ = s.journal.Truncate(s.size)
		return err
	}
	s.size += int64(len(b))
	return nil
}

// appendData commits one record. When that fails the journal's line is taken
// back, unless the record turns out to be stored after all.
func (s *Store) appendData(seq uint64, line []byte) error {
	err := s.opt.Fault.before("commit")
	if err == nil {
		err = s.commit(seq, line)
	}
	if err == nil {
		err = s.opt.Fault.before("after commit")
	}
	if err == nil {
		return nil
	}
	if errors.Is(err, ErrDamaged) { // bbolt panicked: it must not be used again
		s.broken = s.explain(err)
		return err
	}
	if kept, lookErr := s.line(seq); lookErr == nil && bytes.Equal(kept, line) {
		return nil // the journal has it on disk, and the data file shows it
	}
	s.size -= int64(len(appendJournalLine(nil, seq, line)))
	if cutErr := s.journal.Truncate(s.size); cutErr == nil {
		_ = s.journal.Sync()
	}
	return err
}

func (s *Store) commit(seq uint64, line []byte) error {
	return guard(func() error {
		return s.db.Update(func(tx *bolt.Tx) error {
			b := tx.Bucket(eventBucket)
			b.FillPercent = 1 // numbers only rise
			return b.Put(toKey(seq), toValue(seq, line))
		})
	})
}

// inPlace checks that neither file was moved, removed or replaced.
func (s *Store) inPlace() error {
	for path, f := range map[string]*os.File{s.path: s.file, JournalPath(s.path): s.journal} {
		if !stillThere(path, f) {
			return &Trouble{What: reason.Moved.Say(path),
				Safe: reason.InJournalOrData.Say(),
				Way:  reason.PutBack.Say(), Err: ErrSwapped}
		}
	}
	if info, err := s.file.Stat(); err != nil || info.Size() < s.minimum {
		return &Trouble{What: reason.CutShort.Say(s.path), Safe: reason.AllIn.Say(JournalPath(s.path)),
			Way: reason.StartAgain.Say(), Err: ErrSwapped}
	}
	return nil
}

// Each visits the lines from number from on, in order. A line's bytes are
// visit's only until it returns.
func (s *Store) Each(from uint64, visit func(seq uint64, line []byte) error) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	return guard(func() error {
		return s.db.View(func(tx *bolt.Tx) error {
			c := tx.Bucket(eventBucket).Cursor()
			for k, v := c.Seek(toKey(from)); k != nil; k, v = c.Next() {
				seq := binary.BigEndian.Uint64(k)
				line, ok := fromValue(seq, v)
				if !ok {
					return fmt.Errorf("%w: record %d", ErrDamaged, seq)
				}
				if err := visit(seq, line); err != nil {
					return err
				}
			}
			return nil
		})
	})
}

// Cached is what SetCached kept, with the number it was good for; nil when
// there is none or it isn't sound.
func (s *Store) Cached() (seq uint64, state []byte) {
	s.mu.Lock()
	defer s.mu.Unlock()
	_ = guard(func() error {
		return s.db.View(func(tx *bolt.Tx) error {
			if n, line, ok := fromCached(tx.Bucket(cacheBucket).Get(cacheKey)); ok {
				seq, state = n, bytes.Clone(line)
			}
			return nil
		})
	})
	return seq, state
}

// SetCached keeps a state folded up to seq. It may be lost at any time.
func (s *Store) SetCached(seq uint64, state []byte) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.broken != nil {
		return s.broken
	}
	err := s.opt.Fault.before("commit snapshot")
	if err == nil {
		err = guard(func() error {
			return s.db.Update(func(tx *bolt.Tx) error {
				return tx.Bucket(cacheBucket).Put(cacheKey, append(toKey(seq), toValue(seq, state)...))
			})
		})
	}
	return s.explain(err)
}

// WriteTo writes a whole copy of the data file as of now.
func (s *Store) WriteTo(w io.Writer) (n int64, err error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	err = guard(func() error {
		return s.db.View(func(tx *bolt.Tx) error {
			n, err = tx.WriteTo(w)
			return err
		})
	})
	return n, err
}

// Close closes both files and gives the lock back.
func (s *Store) Close() error {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.lock == nil {
		return nil
	}
	s.copying.Wait()
	var err error
	if s.broken == nil { // after a panic bbolt's Close may wait for ever
		err = guard(s.db.Close)
	}
	err = errors.Join(err, s.journal.Close(), s.file.Close())
	s.lock.release()
	s.lock = nil
	return err
}
