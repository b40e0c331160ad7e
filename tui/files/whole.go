package files

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// Beside writes a text into a new file beside its path, flushed, and gives the
// name of that file. It has the mode of what stands at path, or of any new
// file. Place puts it there; what is not wanted is the caller's to remove.
func Beside(path string, text []byte) (name string, err error) {
	mode := fs.FileMode(0o644) // less what the process is told to leave out
	old, none := os.Lstat(path)
	if none == nil {
		mode = old.Mode().Perm()
	}
	folder, base := filepath.Split(path)
	var to *os.File
	for i := 0; to == nil; i++ {
		name = filepath.Join(folder, fmt.Sprintf(".%s.%d-%d", base, os.Getpid(), i))
		to, err = os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
		if err != nil && (!errors.Is(err, fs.ErrExist) || i > 1000) {
			return "", err
		}
	}
	_, err = to.Write(text)
	if none == nil {
		err = errors.Join(err, to.Chmod(mode))
	}
	if err = errors.Join(err, to.Sync(), to.Close()); err != nil {
		_ = os.Remove(name)
	}
	return name, err
}

// Place moves a file that Beside made to its path, for good. Where it is not
// to be put over what stands there, it is not put over what came there
// meanwhile either: fs.ErrExist.
func Place(from, to string, over bool) error {
	if !over {
		switch err := os.Link(from, to); {
		case err == nil:
			return errors.Join(os.Remove(from), syncFolder(to))
		case errors.Is(err, fs.ErrExist):
			return err
		}
		// Some file systems have no links; there is a moment's risk then.
	}
	if err := os.Rename(from, to); err != nil {
		return err
	}
	return syncFolder(to)
}

// syncFolder makes a new name last; where folders can't be flushed it is left
// to the system.
func syncFolder(path string) error {
	d, err := os.Open(filepath.Dir(path))
	if err != nil {
		return nil
	}
	defer d.Close()
	_ = d.Sync()
	return nil
}
