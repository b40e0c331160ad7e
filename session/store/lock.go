package store

import (
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"
	"time"

	"example.org/matside/session/reason"
)

// lock is the right to write a data file, held in a file beside it. The
// system gives it back when the process ends, however it ends.
type lock struct{ file *os.File }

// LockPath is the lock's place beside a data file.
func LockPath(path string) string { return path + ".lock" }

// takeLock waits at most wait for another process.
func takeLock(path string, wait time.Duration, now time.Time) (*lock, error) {
	for until := time.Now().Add(wait); ; time.Sleep(20 * time.Millisecond) {
		f, err := os.OpenFile(LockPath(path), os.O_RDWR|os.O_CREATE, 0o600)
		if err != nil {
			return nil, err
		}
		if ok := tryLock(f) && stillThere(LockPath(path), f); ok {
			l := &lock{f}
			l.say(now)
			return l, nil
		}
		holder := holderOf(f)
		f.Close()
		if !time.Now().Before(until) {
			return nil, busy(holder)
		}
	}
}

// stillThere says whether the file at path is the one we hold.
func stillThere(path string, f *os.File) bool {
	here, err1 := os.Stat(path)
	ours, err2 := f.Stat()
	return err1 == nil && err2 == nil && os.SameFile(here, ours)
}

// say writes who holds the lock. It only helps the message, so an error, as
// on a full disk, is no reason to stop.
func (l *lock) say(now time.Time) {
	if l.file.Truncate(0) == nil {
		_, _ = l.file.WriteAt(fmt.Appendf(nil, "%d %s\n", os.Getpid(), now.Format(time.RFC3339)), 0)
	}
}

func (l *lock) release() {
	_ = l.file.Truncate(0)
	l.file.Close()
}

// holder is the process that has the file open, as far as it told.
type holder struct {
	pid   int
	since time.Time
}

func holderOf(f *os.File) holder {
	b, _ := io.ReadAll(io.NewSectionReader(f, 0, 200))
	pid, at, _ := strings.Cut(strings.TrimSpace(string(b)), " ")
	h := holder{}
	h.pid, _ = strconv.Atoi(pid)
	h.since, _ = time.Parse(time.RFC3339, at)
	return h
}

func busy(h holder) error {
	what := reason.Busy.Say()
	if !h.since.IsZero() {
		what = reason.BusySince.Say(h.since.Format("15:04"), h.pid)
	}
	return &Trouble{What: what, Safe: reason.NothingChanged.Say(), Way: reason.CloseOrWait.Say(), Err: ErrBusy}
}
