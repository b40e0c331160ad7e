package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync"

	"example.org/matside/session"
	"example.org/matside/tui/files"
)

// stateFolder is where what is unfinished and where cut lists lie is kept, by
// the XDG Base Directory Specification: XDG_STATE_HOME where that is an
// absolute path, else .local/state under HOME; "" where neither is known.
func stateFolder(getenv func(string) string) string {
	if p := getenv("XDG_STATE_HOME"); filepath.IsAbs(p) {
		return filepath.Join(p, "matside")
	}
	if home := getenv("HOME"); home != "" {
		return filepath.Join(home, ".local", "state", "matside")
	}
	return ""
}

// lists remembers where the cut lists of the quilts lie. It is a help, not a
// record: what can't be read or written is as if it were not known.
type lists struct {
	file, db string
	mu       sync.Mutex
	lines    []whereabouts
}

// whereabouts is where the cut list of one quilt of a data file lies.
type whereabouts struct {
	db   string
	id   session.QuiltID
	path string
}

// readLists reads what is known for the data file db.
func readLists(folder, db string) *lists {
	l := &lists{db: db}
	if folder == "" {
		return l
	}
	l.file = filepath.Join(folder, "lists")
	text, _ := os.ReadFile(l.file)
	for line := range strings.SplitSeq(string(text), "\n") {
		parts := strings.Split(line, "\t")
		if len(parts) != 3 {
			continue
		}
		if id, err := strconv.Atoi(parts[1]); err == nil {
			l.lines = append(l.lines, whereabouts{parts[0], session.QuiltID(id), parts[2]})
		}
	}
	return l
}

func (l *lists) of(id session.QuiltID) string {
	l.mu.Lock()
	defer l.mu.Unlock()
	for _, x := range l.lines {
		if x.db == l.db && x.id == id {
			return x.path
		}
	}
	return ""
}

// set notes where the cut list of a quilt lies.
func (l *lists) set(id session.QuiltID, path string) {
	if path == "" || id == 0 || strings.ContainsAny(path+l.db, "\t\n") {
		return
	}
	l.mu.Lock()
	defer l.mu.Unlock()
	all := []whereabouts{{l.db, id, path}}
	const most = 200
	for _, x := range l.lines {
		if (x.db != l.db || x.id != id) && len(all) < most {
			all = append(all, x)
		}
	}
	l.lines = all
	if l.file == "" {
		return
	}
	var b strings.Builder
	for _, x := range all {
		fmt.Fprintf(&b, "%s\t%d\t%s\n", x.db, x.id, x.path)
	}
	_ = keepFile(l.file, []byte(b.String()))
}

// keepFile writes a small file of ours whole, its folder made where needed.
func keepFile(path string, data []byte) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return err
	}
	was, err := files.Read(path)
	if errors.Is(err, fs.ErrNotExist) {
		return files.Write(path, string(data), nil)
	}
	if err != nil {
		return err
	}
	return files.Write(path, string(data), &was)
}
