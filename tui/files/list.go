package files

import (
	"cmp"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// Ext ends the name of a cut list.
const Ext = ".cutlist"

// Folder is what is in a folder.
type Folder struct {
	Path    string // absolute
	Above   string // the folder it is in, "" at the top
	Entries []Entry
	Hidden  int // how many other files there are that were not asked for
}

// Entry is one thing in a folder.
type Entry struct {
	Name string
	Path string
	Dir  bool
	When time.Time // last written
}

// most caps what is shown of a folder.
const most = 5000

// List lists the folders and cut lists of a folder, folders first, each by
// name without regard to case; with all, every other file too. What starts
// with a dot is left out.
func List(path string, all bool) (Folder, error) {
	path, err := filepath.Abs(path)
	if err != nil {
		return Folder{}, err
	}
	found, err := os.ReadDir(path)
	if err != nil && len(found) == 0 {
		return Folder{}, Bare(err)
	}
	f := Folder{Path: path}
	if above := filepath.Dir(path); above != path {
		f.Above = above
	}
	for _, d := range found {
		if strings.HasPrefix(d.Name(), ".") || len(f.Entries) >= most {
			continue
		}
		e := Entry{Name: d.Name(), Path: filepath.Join(path, d.Name()), Dir: d.IsDir()}
		if info, err := os.Stat(e.Path); err == nil { // through links
			if e.Dir, e.When = info.IsDir(), info.ModTime(); !e.Dir && !info.Mode().IsRegular() {
				continue
			}
		}
		if !e.Dir && !all && !strings.EqualFold(filepath.Ext(e.Name), Ext) {
			f.Hidden++
			continue
		}
		f.Entries = append(f.Entries, e)
	}
	slices.SortFunc(f.Entries, func(a, b Entry) int {
		if a.Dir != b.Dir {
			if a.Dir {
				return -1
			}
			return 1
		}
		return cmp.Or(strings.Compare(strings.ToLower(a.Name), strings.ToLower(b.Name)), strings.Compare(a.Name, b.Name))
	})
	return f, nil
}

// Bare is an error without the path in front of it, where that is told anyway.
func Bare(err error) error {
	var p *os.PathError
	if errors.As(err, &p) {
		return p.Err
	}
	return err
}
