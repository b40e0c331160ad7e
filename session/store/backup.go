package store

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"example.org/matside/session/reason"
)

// keepBackups is how many of the copies made at the start are kept.
const keepBackups = 7

// Backup writes all that is kept at path into one new file, a journal with an
// end line. It takes no lock: another process may have the data file open. It
// never writes over a file.
func Backup(path, to string, opt Options) (count int, err error) {
	opt.usual()
	if _, err := os.Lstat(to); err == nil {
		return 0, &Trouble{What: reason.There.Say(to), Safe: reason.NotTouched.Say(), Way: reason.NameNewFile.Say(), Err: os.ErrExist}
	}
	lines, err := Read(path)
	if err != nil {
		return 0, err
	}
	s := &Store{path: to, opt: opt}
	return len(lines), s.explain(opt.Fault.writeJournalFile(to, opt.Format, newID(), lines, true))
}

// BackupBeside makes a backup under a name that tells why and when, and notes
// it.
func (s *Store) BackupBeside(why string) error {
	to := s.stamped(s.path, why)
	if _, err := Backup(s.path, to, s.opt); err != nil {
		return err
	}
	s.note(reason.AllKeptAs.Say(to))
	return nil
}

// ReadBackup reads a backup, a journal, or a data file, all or nothing.
func ReadBackup(from string, opt Options) ([][]byte, error) {
	opt.usual()
	s := &Store{path: from, opt: opt}
	info, err := os.Stat(from)
	if err != nil {
		return nil, &Trouble{What: reason.FileTrouble.Say(from, lastOf(err)), Safe: reason.NothingChanged.Say(), Way: reason.NameBackup.Say(), Err: err}
	}
	if !info.Mode().IsRegular() {
		return nil, &Trouble{What: reason.NotAFile.Say(from), Safe: reason.NothingChanged.Say(), Way: reason.NameBackup.Say(), Err: ErrNotOurs}
	}
	f, ours, err := readData(from, true)
	if err != nil {
		return nil, s.explain(err)
	}
	if !ours {
		if f, _, err = readJournalFile(from, true, 1); err != nil {
			return nil, s.explain(err)
		}
	}
	return s.taken(&f, ours)
}

// taken is what a backup holds, if it is whole.
func (s *Store) taken(f *found, data bool) ([][]byte, error) {
	switch {
	case f.id == "" && len(f.marks) == 0:
		return nil, &Trouble{What: reason.NoBackup.Say(s.path), Safe: reason.NothingChanged.Say(), Way: reason.NameBackup.Say(), Err: ErrNotOurs}
	case f.format > s.opt.Format:
		return nil, s.newer(&sides{data: *f})
	case f.id == "" || len(f.faults) > 0 || f.gap() || f.torn || !data && !f.ended && !strings.HasSuffix(s.path, ".journal"):
		return nil, &Trouble{What: reason.NotWhole.Say(s.path), Safe: reason.NothingChanged.Say(), Way: reason.OtherBackup.Say(), Err: ErrDamaged}
	case f.format < s.opt.Format:
		if s.opt.Upgrade == nil {
			return nil, fmt.Errorf("store: no way from format %d to %d", f.format, s.opt.Format)
		}
		return s.opt.Upgrade(f.format, f.lines)
	}
	return f.lines, nil
}

// atOnce is the size up to which a journal is copied before Open returns; a
// longer one is copied meanwhile: it only grows, so its first part stands.
const atOnce = 1 << 20

// keepBackup copies the journal at the start, unless the newest backup holds
// the same, and lets the oldest go. A backup that fails is only noted: it must
// not keep her from her work.
func (s *Store) keepBackup() {
	old := Backups(s.path)
	if s.last == 0 || len(old) > 0 && endsWith(old[0], s.last) {
		return
	}
	last, size := s.last, s.size
	if size > atOnce {
		s.copying.Go(func() { s.copyBackup(last, size) })
		return
	}
	s.copyBackup(last, size)
}

func (s *Store) copyBackup(last uint64, size int64) {
	fault := s.opt.Fault.under("backup: ")
	err := fault.aside(s.stamped(s.path, "backup"), func(temp string) error { return s.copyJournal(fault, temp, last, size) })
	if err != nil {
		s.note(reason.NoBackupMade.Say(lastOf(err)))
		return
	}
	old := Backups(s.path)
	for _, p := range old[min(len(old), keepBackups):] {
		os.Remove(p)
	}
}

func (s *Store) copyJournal(fault Fault, temp string, last uint64, size int64) error {
	if err := fault.before("write new file"); err != nil {
		return err
	}
	f, err := os.OpenFile(temp, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return err
	}
	_, err = io.Copy(f, io.NewSectionReader(s.journal, 0, size))
	if err == nil {
		_, err = fmt.Fprintf(f, "end %d\n", last)
	}
	return errors.Join(err, f.Close())
}

// endsWith says whether a backup ends with line n.
func endsWith(path string, n uint64) bool {
	f, err := os.Open(path)
	if err != nil {
		return false
	}
	defer f.Close()
	end := fmt.Appendf(nil, "\nend %d\n", n)
	b := make([]byte, len(end))
	info, err := f.Stat()
	if err != nil || info.Size() < int64(len(end)) {
		return false
	}
	_, err = f.ReadAt(b, info.Size()-int64(len(end)))
	return err == nil && bytes.Equal(b, end)
}

// Backups lists the copies made at the start, the newest first.
func Backups(path string) []string {
	entries, _ := os.ReadDir(filepath.Dir(path))
	var out []string
	prefix := filepath.Base(path) + ".backup-"
	for _, e := range entries {
		if strings.HasPrefix(e.Name(), prefix) && !strings.HasSuffix(e.Name(), ".new") {
			out = append(out, filepath.Join(filepath.Dir(path), e.Name()))
		}
	}
	slices.Sort(out)
	slices.Reverse(out)
	return out
}
