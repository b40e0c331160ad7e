package store

import (
	"fmt"
	"os"
	"path/filepath"

	"example.org/matside/session/reason"
)

// nextPath is where lines stand that are to replace both files at once: a
// backup file, whole and synced before it gets this name. While it is there
// the replacing is under way, and the next start finishes it.
func nextPath(path string) string { return path + ".next" }

// replaceAll makes both files hold lines and nothing else. Once it has got
// past writing the lines aside, a kill at any moment ends in the new state;
// before that in the old one.
func (s *Store) replaceAll(h head, lines [][]byte) error {
	if err := s.opt.Fault.writeJournalFile(nextPath(s.path), h.format, h.id, lines, true); err != nil {
		return err
	}
	return s.finishReplacing()
}

// finishReplacing does what a replacing that was broken off left to do.
func (s *Store) finishReplacing() error {
	next, there, err := readJournalFile(nextPath(s.path), true, 1)
	if err != nil || !there {
		return err
	}
	if !next.whole() {
		return &Trouble{What: reason.NextDamaged.Say(nextPath(s.path)), Safe: reason.DataAsItWas.Say(),
			Way: reason.RemoveFile.Say(), Err: ErrDamaged}
	}
	h := head{next.format, next.id, s.opt.Program}
	if err := s.opt.Fault.writeJournalFile(JournalPath(s.path), h.format, h.id, next.lines, false); err != nil {
		return err
	}
	if err := s.opt.Fault.aside(s.path, func(temp string) error { return s.opt.Fault.buildBolt(temp, h, next.lines) }); err != nil {
		return err
	}
	if err := s.opt.Fault.before("remove"); err != nil {
		return err
	}
	if err := os.Remove(nextPath(s.path)); err != nil {
		return err
	}
	return syncDir(filepath.Dir(s.path))
}

// whole says that a backup was read from its head to its end.
func (f *found) whole() bool {
	return f.id != "" && f.ended && len(f.faults) == 0 && !f.torn && !f.gap()
}

// Replace puts lines in the place of all that is kept at path, after a backup
// of what was there. It is for restoring and importing: the caller has checked
// the lines.
func Replace(path string, lines [][]byte, opt Options) (backup string, err error) {
	s, err := lockOnly(path, opt)
	if err != nil {
		return "", err
	}
	defer s.drop()
	if backup, err = s.backupFirst("before-restore"); err != nil {
		return "", s.explain(err)
	}
	return backup, s.explain(s.replaceAll(head{s.opt.Format, newID(), s.opt.Program}, lines))
}

// lockOnly takes the lock without opening the files.
func lockOnly(path string, opt Options) (*Store, error) {
	opt.usual()
	s := &Store{path: path, opt: opt}
	err := s.findPlace()
	if err == nil {
		s.lock, err = takeLock(s.path, opt.Wait, opt.Now())
	}
	if err == nil {
		err = s.finishReplacing()
	}
	if err != nil {
		s.drop()
		return nil, s.explain(err)
	}
	return s, nil
}

// backupFirst keeps what can be read of both files, and copies of the files
// themselves where they aren't sound.
func (s *Store) backupFirst(why string) (string, error) {
	b, err := s.look(true)
	if err != nil {
		return "", err
	}
	if !b.hasData && !b.hasJournal {
		return "", nil
	}
	if b.fine(s.opt.Format) {
		to := s.stamped(s.path, why)
		return to, s.opt.Fault.writeJournalFile(to, b.format(), b.id(), b.lines(), true)
	}
	for _, p := range []string{s.path, JournalPath(s.path)} {
		if err := s.setAside(p, why); err != nil && !os.IsNotExist(err) {
			return "", err
		}
	}
	return s.stamped(s.path, why), nil
}

// stamped is a name beside path that tells why and when, and is free.
func (s *Store) stamped(path, why string) string {
	base := path + "." + why + "-" + s.opt.Now().Format("20060102-150405")
	to := base
	for n := 2; ; n++ {
		if _, err := os.Lstat(to); os.IsNotExist(err) {
			return to
		}
		to = fmt.Sprintf("%s-%d", base, n)
	}
}
