package store

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"
	"unicode"

	"example.org/matside/plan/say"
	"example.org/matside/session/reason"
)

// Open opens the data file at path, or makes it and the folders it stands in.
// It puts right what it can without losing a line, and says so in Notes; what
// it can't is a *Trouble, and nothing has been changed.
func Open(path string, opt Options) (*Store, error) {
	opt.usual()
	s := &Store{path: path, opt: opt}
	if err := s.open(); err != nil {
		s.drop()
		return nil, s.explain(err)
	}
	return s, nil
}

// usual fills in what was left out.
func (o *Options) usual() {
	if o.Wait == 0 {
		o.Wait = time.Second
	}
	if o.MaxSize == 0 {
		o.MaxSize = maxSize
	}
	if o.Now == nil {
		o.Now = time.Now
	}
	o.Format = max(o.Format, 1)
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
	if err := s.finishReplacing(); err != nil {
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
	if err := s.inPlace(); err != nil {
		return err
	}
	s.keepBackup()
	return nil
}

// findPlace follows links, refuses what is no file, and makes folders.
func (s *Store) findPlace() error {
	if real, err := filepath.EvalSymlinks(s.path); err == nil {
		s.path = real
	} else if info, lerr := os.Lstat(s.path); lerr == nil && info.Mode()&os.ModeSymlink != 0 {
		return &Trouble{What: reason.LinkToNowhere.Say(s.path), Safe: reason.NothingChanged.Say(),
			Way: reason.RemoveLink.Say(), Err: err}
	}
	if err := s.isFile(); err != nil {
		return err
	}
	return os.MkdirAll(filepath.Dir(s.path), 0o700)
}

// isFile refuses what is there and is no file; a pipe would keep us waiting.
func (s *Store) isFile() error {
	for _, path := range []string{s.path, JournalPath(s.path)} {
		info, err := os.Stat(path)
		if err != nil || info.Mode().IsRegular() {
			continue
		}
		t := &Trouble{What: reason.NotAFile.Say(path), Safe: reason.NothingChanged.Say(), Way: reason.ChooseOther.Say(), Err: ErrNotOurs}
		if info.IsDir() {
			t.What, t.Way = reason.IsAFolder.Say(path), reason.NameFileIn.Say(filepath.Join(path, "matside.db"))
		}
		return t
	}
	return nil
}

// putRight reads both files and makes each what the two together say.
func (s *Store) putRight() error {
	b, err := s.look(false)
	if err != nil {
		return err
	}
	if !b.fine(s.opt.Format) {
		if b, err = s.look(true); err != nil {
			return err
		}
		if err := s.judge(b); err != nil {
			return err
		}
		if err := s.settle(b); err != nil {
			return err
		}
	}
	s.last = uint64(len(b.union))
	s.id = b.id()
	return s.openJournal()
}

// settle makes both files hold the union.
func (s *Store) settle(b *sides) error {
	if from := b.format(); from != 0 && from != s.opt.Format {
		return s.upgrade(from, b)
	}
	h := head{s.opt.Format, b.id(), s.opt.Program}
	if !b.journalOK || len(b.journal.marks) < len(b.union) {
		if err := s.remakeJournal(b, h); err != nil {
			return err
		}
	}
	switch {
	case !b.dataSound:
		return s.remakeData(b, h)
	case len(b.data.marks) < len(b.union):
		return s.catchUp(b)
	}
	return nil
}

// remakeJournal writes the journal anew. One that was damaged is kept.
func (s *Store) remakeJournal(b *sides, h head) error {
	if len(b.journal.faults) > 0 {
		if err := s.setAside(JournalPath(s.path), "damaged"); err != nil {
			return err
		}
		s.note(reason.JournalAnew.Say())
	} else if b.hasData && !b.hasJournal {
		s.note(reason.JournalMissing.Say())
	}
	return s.opt.Fault.writeJournalFile(JournalPath(s.path), h.format, h.id, b.lines(), false)
}

// remakeData builds the data file anew. One that was damaged is kept.
func (s *Store) remakeData(b *sides, h head) error {
	switch {
	case b.hasData:
		if err := s.setAside(s.path, "damaged"); err != nil {
			return err
		}
		s.note(reason.DataAnew.Say())
	case b.hasJournal && len(b.union) > 0:
		s.note(reason.DataMissing.Say())
	case !b.hasJournal:
		if old := Backups(s.path); len(old) > 0 {
			s.note(reason.NewBegun.Say(old[0]))
		}
	}
	return s.opt.Fault.aside(s.path, func(temp string) error { return s.opt.Fault.buildBolt(temp, h, b.lines()) })
}

// upgrade brings lines of an older format up to date, after a copy of both
// files is made beside them.
func (s *Store) upgrade(from uint32, b *sides) error {
	if s.opt.Upgrade == nil {
		return fmt.Errorf("store: no way from format %d to %d", from, s.opt.Format)
	}
	lines, err := s.opt.Upgrade(from, b.lines())
	if err != nil {
		return fmt.Errorf("bringing format %d up to date: %w", from, err)
	}
	for _, p := range []string{s.path, JournalPath(s.path)} {
		if err := s.setAside(p, fmt.Sprintf("format-%d", from)); err != nil && !os.IsNotExist(err) {
			return err
		}
	}
	s.note(reason.BroughtUp.Say(from, s.opt.Format))
	b.union = make([]mark, len(lines))
	return s.replaceAll(head{s.opt.Format, b.id(), s.opt.Program}, lines)
}

// setAside keeps a copy of a file under another name, so that the file itself
// stays until its successor is renamed over it.
func (s *Store) setAside(path, why string) error {
	from, err := os.Open(path)
	if err != nil {
		return err
	}
	defer from.Close()
	to := s.stamped(path, why)
	s.note(reason.KeptAs.Say(to))
	return s.opt.Fault.aside(to, func(temp string) error {
		if err := s.opt.Fault.before("write new file"); err != nil {
			return err
		}
		f, err := os.OpenFile(temp, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
		if err != nil {
			return err
		}
		_, err = io.Copy(f, from)
		return errors.Join(err, f.Close())
	})
}

func (s *Store) note(sentence say.Sentence) {
	s.noting.Lock()
	defer s.noting.Unlock()
	s.notes = append(s.notes, sentence)
}

// judge refuses what can't be put right without her.
func (s *Store) judge(b *sides) error {
	switch {
	case b.format() > s.opt.Format:
		return s.newer(b)
	case b.hasData && !b.dataOurs && (!b.hasJournal || b.journal.id == "" && len(b.journal.marks) == 0):
		way := reason.OtherWithDB.Say()
		if old := Backups(s.path); len(old) > 0 {
			way = reason.RestoreOrOther.Say(old[0])
		}
		return &Trouble{What: reason.NotOurs.Say(s.path), Safe: reason.NotTouched.Say(), Way: way, Err: ErrNotOurs}
	case b.data.id != "" && b.journal.id != "" && b.data.id != b.journal.id, b.clash() != 0:
		return &Trouble{What: reason.NotTogether.Say(s.path), Safe: reason.NeitherTouched.Say(),
			Way: reason.MoveOneOut.Say(), Err: ErrDamaged}
	case len(b.lost) > 0 || tailLost(b):
		return s.damaged(b)
	}
	return nil
}

func (s *Store) newer(b *sides) error {
	needed := reason.Format.Say(b.format())
	if b.data.program != "" {
		needed = reason.ProgramsFormat.Say(printable(b.data.program), b.format())
	}
	return &Trouble{What: reason.Newer.Say(s.path, needed), Safe: reason.NotTouched.Say(),
		Way: reason.UseThatOne.Say(), Err: ErrNewer}
}

// printable keeps what a file says of itself from reaching a terminal raw.
func printable(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsPrint(r) {
			return r
		}
		return -1
	}, s[:min(len(s), 40)])
}

// tailLost says that damage at both ends may have taken the last lines: a
// damaged journal line after the last number that either file has.
func tailLost(b *sides) bool {
	return !b.dataSound && (b.journal.badEnd || b.hasJournal && b.journal.id == "" && len(b.journal.marks) == 0)
}

func (s *Store) damaged(b *sides) error {
	what := reason.BothDamaged.Say(s.path)
	if len(b.lost) > 0 {
		what = reason.RecordsLost.Say(s.path, records(len(b.lost)), records(len(b.union)), numbers(b.lost))
	}
	return &Trouble{What: what, Safe: reason.OthersWhole.Say(), Way: reason.RepairOrBackup.Say(), Err: ErrDamaged}
}

func records(n int) say.Sentence {
	if n == 1 {
		return reason.OneRecord.Say()
	}
	return reason.Records.Say(n)
}

// numbers says at most ten.
func numbers(n []uint64) any {
	const most = 10
	var all []string
	for _, x := range n[:min(len(n), most)] {
		all = append(all, fmt.Sprint(x))
	}
	if len(n) > most {
		return reason.AndMore.Say(strings.Join(all, ", "))
	}
	return strings.Join(all, ", ")
}

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
	for seq := len(b.data.marks) + 1; seq <= len(b.union); seq++ {
		if err := s.commit(uint64(seq), b.lines()[seq-1]); err != nil {
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
		// bbolt passes some of them on as text only.
		if errors.Is(err, full) || strings.Contains(err.Error(), full.Error()) {
			return s.full(err)
		}
	}
	switch {
	case isTooBig(err):
		return s.full(err)
	case errors.Is(err, os.ErrPermission) || isReadOnly(err):
		return &Trouble{What: reason.CantWrite.Say(s.path, lastOf(err)), Safe: reason.NothingChanged.Say(),
			Way: reason.MakeWritable.Say(), Err: errors.Join(ErrNoAccess, err)}
	case errors.Is(err, ErrDamaged):
		return &Trouble{What: reason.Damaged.Say(s.path), Safe: reason.AllIn.Say(JournalPath(s.path)),
			Way: reason.StartAgain.Say(), Err: err}
	case errors.Is(err, errNotDir):
		return &Trouble{What: reason.CantMake.Say(s.path, lastOf(err)), Safe: reason.NothingChanged.Say(),
			Way: reason.ChooseOther.Say(), Err: errors.Join(ErrNoAccess, err)}
	case errors.Is(err, ErrGap), errors.Is(err, ErrClash):
		return err
	}
	return &Trouble{What: reason.FileTrouble.Say(s.path, lastOf(err)), Safe: reason.RecordedSafe.Say(),
		Way: reason.CheckDisk.Say(), Err: err}
}

func (s *Store) full(err error) error {
	return &Trouble{What: reason.NoRoom.Say(s.path), Safe: reason.AllRecordedSafe.Say(),
		Way: reason.MakeRoom.Say(), Err: errors.Join(ErrNoRoom, err)}
}

// lastOf is the innermost reason, without the path twice.
func lastOf(err error) error {
	var p *os.PathError
	if errors.As(err, &p) {
		return p.Err
	}
	return err
}
