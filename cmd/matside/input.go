package main

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/say"
	"example.org/matside/tui/files"
	"example.org/matside/tui/words"
)

// maxInput is a little over what a cut list may hold, so that the reader can
// say that the file is too long.
const maxInput = 1<<20 + 1

// source is a cut list as it came: what it is called, its text, and what it
// says.
type source struct {
	name string // as the quilter typed it, "-" for standard input
	path string // absolute; empty for standard input
	text []byte
	list *cutlist.List
}

// readSource reads the cut list called name; "-" is standard input.
func readSource(w world, name string) (source, error) {
	s := source{name: name}
	var err error
	if name == "-" {
		s.text, err = io.ReadAll(io.LimitReader(w.in, maxInput))
	} else {
		s.text, err = readFile(name)
	}
	if err != nil {
		return s, err
	}
	folder := "."
	if name != "-" {
		folder = filepath.Dir(name)
		if s.path, err = filepath.Abs(name); err != nil {
			return s, err
		}
	}
	s.list, err = cutlist.Read(printable(name), s.text, besides(folder))
	return s, err
}

func readFile(name string) ([]byte, error) {
	if info, err := os.Stat(name); err == nil && info.IsDir() {
		return nil, told{words.IsFolder.Say(printable(name)), words.NameListIn.Say(), nil}
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, unreadable(name, err, words.CheckName.Say())
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, maxInput))
	if err != nil {
		return nil, unreadable(name, err, say.Nothing)
	}
	return text, nil
}

// unreadable says why a file that she named can't be read. missing is what to
// do where there is none of that name.
func unreadable(name string, err error, missing say.Sentence) error {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return told{words.NoFile.Say(printable(name)), missing, err}
	case errors.Is(err, fs.ErrPermission):
		return told{words.CantRead.Say(printable(name), files.Bare(err)), words.WhoMayRead.Say(), err}
	}
	return told{words.CantRead.Say(printable(name), files.Bare(err)), say.Nothing, err}
}

// besides opens files that a cut list names, relative to where it lies.
func besides(folder string) func(string) ([]byte, error) {
	return func(name string) ([]byte, error) {
		if !filepath.IsAbs(name) {
			name = filepath.Join(folder, name)
		}
		return readFile(name)
	}
}
