package store

import (
	"errors"
	"os"

	"golang.org/x/sys/windows"
)

// The byte locked lies far behind the text, which others may then still read.
const lockedByte = 1 << 30

func tryLock(f *os.File) bool {
	const flags = windows.LOCKFILE_EXCLUSIVE_LOCK | windows.LOCKFILE_FAIL_IMMEDIATELY
	return windows.LockFileEx(windows.Handle(f.Fd()), flags, 0, 1, 0, &windows.Overlapped{Offset: lockedByte}) == nil
}

func unlock(*os.File) {}

// syncDir has nothing to do: a folder can't be synced here.
func syncDir(string) error { return nil }

var errNotDir = windows.ERROR_DIRECTORY

var noRoom = []error{windows.ERROR_DISK_FULL, windows.ERROR_HANDLE_DISK_FULL}

// isReadOnly says that the file system takes no writes.
func isReadOnly(err error) bool { return errors.Is(err, windows.ERROR_WRITE_PROTECT) }
