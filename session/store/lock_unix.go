//go:build unix

package store

import (
	"errors"
	"os"
	"syscall"
)

func tryLock(f *os.File) bool {
	return syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB) == nil
}

// unlock gives a data file's own lock back, also while it is mapped.
func unlock(f *os.File) { _ = syscall.Flock(int(f.Fd()), syscall.LOCK_UN) }

// syncDir makes a rename in a folder last.
func syncDir(dir string) error {
	d, err := os.Open(dir)
	if err != nil {
		return err
	}
	defer d.Close()
	return d.Sync()
}

var errNotDir = syscall.ENOTDIR

var noRoom = []error{syscall.ENOSPC, syscall.EDQUOT, syscall.EFBIG}

// isReadOnly says that the file system takes no writes.
func isReadOnly(err error) bool { return errors.Is(err, syscall.EROFS) }
