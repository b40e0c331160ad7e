package store

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// Open opens the data file at path, or makes it and the folders it stands in.
// It puts right what it can without losing a line, and says so in Notes; what
// it can't is a *Trouble, and nothing has been changed.
func Open(path string, opt Options) (*Store, error) {
	if opt.Wait == 0 {
		opt.Wait = time.Second
	}
	if opt.MaxSize == 0 {
		opt.MaxSize = maxSize
	}
	if opt.Now == nil {
		opt.Now = time.Now
	}
	s := &Store{path: path, opt: opt}
	if err := s.open(); err != nil {
		s.drop()
		return nil, s.explain(err)
	}
	return s, nil
}

// drop closes what a failed open has opened.
func (s *Store) drop() {
	if s.db != nil {
		_ = guard(s.db.Close)
	}
	for _, f := range []*os.File{s.file, s.journal} {
		if f != nil {
			f.Close()
		}
	}
	if s.lock != nil {
		s.lock.release()
		s.lock = nil
	}
}

func (s *Store) open() (err error) {
	if err := s.findPlace(); err != nil {
		return err
	}
	if s.lock, err = takeLock(s.path, s.opt.Wait, s.opt.Now()); err != nil {
		return err
	}
	if err := s.putRight(); err != nil {
		return err
	}
	if s.db, err = openBolt(s.path, s.opt.MaxSize); err != nil {
		return err
	}
	if s.file, err = os.Open(s.path); err != nil {
		return err
	}
	info, err := s.file.Stat()
	if err != nil {
		return err
	}
	s.minimum = info.Size()
	return s.inPlace()
}

// findPlace follows links, refuses what is no file, and makes folders.
func (s *Store) findPlace() error {
	if real, err := filepath.EvalSymlinks(s.path); err == nil {
		s.path = real
	} else if info, lerr := os.Lstat(s.path); lerr == nil && info.Mode()&os.ModeSymlink != 0 {
		return &Trouble{What: s.path + " is a link to a file that isn't there", Safe: "nothing was changed",
			Way: "remove the link, or choose another data file with --db FILE", Err: err}
	}
	if info, err := os.Stat(s.path); err == nil && !info.Mode().IsRegular() {
		kind := "not a file"
		if info.IsDir() {
			kind = "a folder"
		}
		return &Trouble{What: s.path + " is " + kind, Safe: "nothing was changed",
			Way: "name a file in it: --db " + filepath.Join(s.path, "matside.db"), Err: ErrNotOurs}
	}
	return os.MkdirAll(filepath.Dir(s.path), 0o700)
}

// sides is what the two files hold.
type sides struct {
	data, journal         found
	hasData, hasJournal   bool // the file is there and not empty
	dataOurs              bool
	union                 [][]byte
	lost                  []uint64
	dataSound, journalOK  bool
	dataLines, journalLns int
}

// putRight reads both files and makes each what the two together say.
func (s *Store) putRight() error {
	b, err := s.look()
	if err != nil {
		return err
	}
	if err := s.judge(b); err != nil {
		return err
	}
	return s.settle(b)
}

// look reads what is sound of both files.
func (s *Store) look() (*sides, error) {
	var b sides
	var err error
	if b.journal, b.hasJournal, err = readJournalFile(s.path); err != nil {
		return nil, err
	}
	info, err := os.Stat(s.path)
	if err != nil && !os.IsNotExist(err) {
		return nil, err
	}
	if b.hasData = err == nil && info.Size() > 0; b.hasData {
		if b.data, b.dataOurs, err = readData(s.path); err != nil {
			return nil, err
		}
		if b.dataOurs && len(b.data.faults) == 0 && s.opt.Probe != nil {
			if err := s.opt.Probe(s.path); err != nil {
				b.data.fault("the data file did not stand the probe: %v", err)
			}
		}
	}
	b.join()
	return &b, nil
}

// join makes the union of both sides and names what neither has.
func (b *sides) join() {
	n := max(len(b.data.lines), len(b.journal.lines))
	b.union = make([][]byte, n)
	for i := range b.union {
		switch {
		case i < len(b.journal.lines) && b.journal.lines[i] != nil:
			b.union[i] = b.journal.lines[i]
		case i < len(b.data.lines) && b.data.lines[i] != nil:
			b.union[i] = b.data.lines[i]
		default:
			b.lost = append(b.lost, uint64(i+1))
		}
	}
	b.dataLines, b.journalLns = len(b.data.lines), len(b.journal.lines)
	b.dataSound = b.hasData && b.dataOurs && len(b.data.faults) == 0 && !slices.ContainsFunc(b.data.lines, isNil)
	b.journalOK = b.hasJournal && b.journal.id != "" && len(b.journal.faults) == 0 && !b.journal.torn &&
		!slices.ContainsFunc(b.journal.lines, isNil)
}

func isNil(line []byte) bool { return line == nil }

// clash names the first number under which the two hold different lines.
func (b *sides) clash() uint64 {
	for i := range min(len(b.data.lines), len(b.journal.lines)) {
		d, j := b.data.lines[i], b.journal.lines[i]
		if d != nil && j != nil && !bytes.Equal(d, j) {
			return uint64(i + 1)
		}
	}
	return 0
}

// judge refuses what can't be put right without her.
func (s *Store) judge(b *sides) error {
	switch {
	case b.data.newer || b.journal.newer:
		return &Trouble{What: s.path + " was written by a newer matside", Safe: "it was not touched",
			Way: "use that newer matside, or another data file with --db FILE", Err: ErrNewer}
	case b.hasData && !b.dataOurs && !b.journalHas():
		return &Trouble{What: s.path + " is not a matside data file", Safe: "it was not touched",
			Way: "choose another with --db FILE", Err: ErrNotOurs}
	case b.data.id != "" && b.journal.id != "" && b.data.id != b.journal.id, b.clash() != 0:
		return &Trouble{What: s.path + " and its journal belong to different evenings", Safe: "neither was touched",
			Way: "move the one that doesn't belong out of the folder, then start again", Err: ErrDamaged}
	case len(b.lost) > 0 || tailLost(b):
		return s.damaged(b)
	}
	return nil
}

// journalHas says that the journal alone is worth something.
func (b *sides) journalHas() bool {
	return b.hasJournal && (len(b.journal.lines) > 0 || b.journal.id != "")
}

// tailLost says that damage at both ends may have taken the last lines: a
// damaged journal line after the last number that either file has.
func tailLost(b *sides) bool {
	return !b.dataSound && b.journal.badEnd
}

func (s *Store) damaged(b *sides) error {
	what := fmt.Sprintf("both %s and its journal are damaged", s.path)
	if len(b.lost) > 0 {
		what += ": " + plural(len(b.lost), "record") + " of " + plural(len(b.union), "record") + " can't be read (" + numbers(b.lost) + ")"
	} else {
		what += ": the last record can't be read"
	}
	return &Trouble{What: what, Safe: "all other records are whole; nothing was changed",
		Way: "matside check --repair keeps all that can be read, or matside restore BACKUP goes back to a backup", Err: ErrDamaged}
}

func plural(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}

// numbers prints at most ten.
func numbers(n []uint64) string {
	var words []string
	for i, x := range n {
		if i == 10 {
			words = append(words, "and more")
			break
		}
		words = append(words, fmt.Sprint(x))
	}
	return strings.Join(words, ", ")
}

// settle makes both files hold the union.
func (s *Store) settle(b *sides) error {
	id := cmp.Or(b.data.id, b.journal.id)
	if id == "" {
		id = newID()
	}
	if !b.journalOK || b.journalLns < len(b.union) {
		if err := s.remakeJournal(b, id); err != nil {
			return err
		}
	}
	if !b.dataSound {
		if err := s.remakeData(b, id); err != nil {
			return err
		}
	}
	if err := s.openJournal(); err != nil {
		return err
	}
	s.last = uint64(len(b.union))
	if b.dataSound && b.dataLines < len(b.union) {
		return s.catchUp(b)
	}
	return nil
}

// remakeJournal writes the journal anew. One that was damaged is kept.
func (s *Store) remakeJournal(b *sides, id string) error {
	if len(b.journal.faults) > 0 {
		if err := s.setAside(JournalPath(s.path)); err != nil {
			return err
		}
		s.note("The journal was damaged and has been made anew from the data file; nothing is lost.")
	} else if b.hasData && !b.hasJournal {
		s.note("The journal was missing and has been made anew from the data file; nothing is lost.")
	}
	return s.opt.Fault.aside(JournalPath(s.path), func(temp string) error {
		return s.opt.Fault.write(temp, journalBytes(id, b.union))
	})
}

// remakeData builds the data file anew. One that was damaged is kept.
func (s *Store) remakeData(b *sides, id string) error {
	switch {
	case b.hasData:
		if err := s.setAside(s.path); err != nil {
			return err
		}
		s.note("The data file was damaged and has been made anew from the journal; nothing is lost.")
	case b.hasJournal && len(b.union) > 0:
		s.note("The data file was missing and has been made anew from the journal; nothing is lost.")
	}
	return s.opt.Fault.aside(s.path, func(temp string) error {
		return s.opt.Fault.buildBolt(temp, id, s.opt.Program, b.union)
	})
}

// setAside keeps a copy of a damaged file under another name, so that the
// file itself stays until its successor is renamed over it.
func (s *Store) setAside(path string) error {
	b, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	to := path + ".damaged-" + s.opt.Now().Format("20060102-150405")
	s.note("The damaged file is kept as " + to + ".")
	return s.opt.Fault.aside(to, func(temp string) error { return s.opt.Fault.write(temp, b) })
}

func (s *Store) note(sentence string) { s.notes = append(s.notes, sentence) }

func (s *Store) openJournal() error {
	f, err := os.OpenFile(JournalPath(s.path), os.O_RDWR, 0)
	if err != nil {
		return err
	}
	s.journal = f
	info, err := f.Stat()
	if err != nil {
		return err
	}
	s.size = info.Size()
	return nil
}

// catchUp commits lines that the journal has and the data file has not: the
// last step before a kill.
func (s *Store) catchUp(b *sides) (err error) {
	if s.db, err = openBolt(s.path, s.opt.MaxSize); err != nil {
		return err
	}
	for seq := b.dataLines + 1; seq <= len(b.union); seq++ {
		if err := s.commit(uint64(seq), b.union[seq-1]); err != nil {
			return err
		}
	}
	err = s.db.Close()
	s.db = nil
	return err
}

// explain turns what the system said into a Trouble.
func (s *Store) explain(err error) error {
	var t *Trouble
	if err == nil || errors.As(err, &t) {
		return err
	}
	for _, full := range noRoom {
		if errors.Is(err, full) {
			return s.full(err)
		}
	}
	switch {
	case isTooBig(err):
		return s.full(err)
	case errors.Is(err, os.ErrPermission) || isReadOnly(err):
		return &Trouble{What: fmt.Sprintf("%s can't be written: %v", s.path, lastOf(err)), Safe: "nothing was changed",
			Way: "make the file and its folder writable, or choose another with --db FILE", Err: errors.Join(ErrNoAccess, err)}
	case errors.Is(err, ErrDamaged):
		return &Trouble{What: s.path + " is damaged", Safe: "everything recorded is in " + JournalPath(s.path),
			Way: "leave matside and start again: it makes the file anew", Err: err}
	case errors.Is(err, ErrGap), errors.Is(err, ErrClash):
		return err
	}
	return &Trouble{What: fmt.Sprintf("%s: %v", s.path, lastOf(err)), Safe: "what was recorded before is safe",
		Way: "try again; if it stays so, check the disk", Err: err}
}

func (s *Store) full(err error) error {
	return &Trouble{What: "there is no room left on the disk for " + s.path, Safe: "everything recorded before is safe",
		Way: "make room, then try again", Err: errors.Join(ErrNoRoom, err)}
}

// lastOf is the innermost reason, without the path twice.
func lastOf(err error) error {
	var p *os.PathError
	if errors.As(err, &p) {
		return p.Err
	}
	return err
}
