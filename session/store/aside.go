package store

import (
	"os"
	"path/filepath"
)

// Fault is a hook for tests: it is asked before each write, sync and rename,
// by name, and may fail it, or end the process. Nil is no hook.
type Fault func(op string) error

func (f Fault) before(op string) error {
	if f == nil {
		return nil
	}
	return f(op)
}

// under gives every operation's name a prefix.
func (f Fault) under(prefix string) Fault {
	if f == nil {
		return nil
	}
	return func(op string) error { return f(prefix + op) }
}

// aside makes a file beside path, syncs it and renames it to path, so that at
// any moment the old or the new file stands there whole. fill gets the name
// of the file aside.
func (f Fault) aside(path string, fill func(temp string) error) error {
	temp := path + ".new"
	if err := os.RemoveAll(temp); err != nil {
		return err
	}
	err := fill(temp)
	if err == nil {
		err = f.sync(temp)
	}
	if err == nil {
		err = f.rename(temp, path)
	}
	if err != nil {
		os.Remove(temp)
	}
	return err
}

func (f Fault) sync(path string) error {
	if err := f.before("sync new file"); err != nil {
		return err
	}
	file, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return err
	}
	defer file.Close()
	return file.Sync()
}

func (f Fault) rename(from, to string) error {
	if err := f.before("rename"); err != nil {
		return err
	}
	if err := os.Rename(from, to); err != nil {
		return err
	}
	if err := f.before("sync folder"); err != nil {
		return err
	}
	return syncDir(filepath.Dir(to))
}
