package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"

	"github.com/spf13/cobra"

	"example.org/matside/tui/files"
)

// The rule of this file: what goes out is written whole or not at all, beside
// its place and then renamed into it. Nothing that stands there already is
// written over unasked, and no link is followed.

// outputs are the commands that carry a plan out of matside.
func outputs(w world) []*cobra.Command {
	return []*cobra.Command{newDrawing(w, "svg"), newDrawing(w, "dxf"), newPDF(w), newCSV(w)}
}

// output is where files go.
type output struct {
	to    string // the file or folder, as she typed it; "-" is standard output
	force bool   // write over what stands there
}

func (o *output) options(c *cobra.Command, what string) {
	c.Flags().StringVarP(&o.to, "output", "o", "", what)
	c.Flags().BoolVar(&o.force, "force", false, "write over what stands there already")
}

// file is one file to write, made whole in memory.
type file struct {
	path string
	text []byte
}

// folder makes the folder that files are to go into, unless it is there. It
// makes no folder above it: that is more likely a slip of the pen. undo takes
// it away again if nothing came of it.
func (o *output) folder() (undo func(), err error) {
	undo = func() {}
	info, err := os.Stat(o.to)
	switch {
	case err == nil && !info.IsDir():
		return undo, problem{fmt.Sprintf("%s is a file, not a folder", printable(o.to)), "Name a folder; nothing was written.", nil}
	case err == nil:
		return undo, nil
	case !errors.Is(err, fs.ErrNotExist):
		return undo, cantWrite(o.to, err)
	}
	if err := os.Mkdir(o.to, 0o755); err != nil {
		return undo, cantWrite(o.to, err)
	}
	return func() { _ = os.Remove(o.to) }, nil // which fails where something is in it
}

// write writes files, all or none: each is written whole beside its place
// before the first takes it.
func (o *output) write(w world, all []file) error {
	over, err := o.mayWrite(w, all)
	if err != nil {
		return err
	}
	var made []string
	defer func() {
		for _, name := range made {
			_ = os.Remove(name) // gone already, where it took its place
		}
	}()
	for _, f := range all {
		name, err := files.Beside(f.path, f.text)
		if err != nil {
			return cantWrite(f.path, err)
		}
		made = append(made, name)
	}
	for i, f := range all {
		if err := files.Place(made[i], f.path, over); err != nil {
			return cantWrite(f.path, err)
		}
	}
	return nil
}

// mayWrite looks at what stands in the files' places, and asks where it may be
// written over. over is what she said.
func (o *output) mayWrite(w world, files []file) (over bool, err error) {
	there := 0
	for _, f := range files {
		info, err := os.Lstat(f.path)
		switch {
		case errors.Is(err, fs.ErrNotExist):
			continue
		case err != nil:
			return false, cantWrite(f.path, err)
		case info.IsDir():
			return false, problem{fmt.Sprintf("%s is a folder", printable(f.path)), "Name a file in it; nothing was written.", nil}
		case info.Mode()&fs.ModeSymlink != 0:
			return false, problem{fmt.Sprintf("%s is a link, and matside follows none", printable(f.path)), "Choose another name; nothing was written.", nil}
		case !info.Mode().IsRegular():
			return false, problem{fmt.Sprintf("%s is no plain file", printable(f.path)), "Choose another name, or write -o - and send it there; nothing was written.", nil}
		}
		there++
	}
	if there == 0 {
		return false, nil
	}
	what := printable(files[0].path) + " is there already"
	if len(files) > 1 {
		what = fmt.Sprintf("%d of the %d files are in %s already", there, len(files), printable(filepath.Dir(files[0].path)))
	}
	if o.force || w.terminal() && agrees(w, what+". Write over?") {
		return true, nil
	}
	return false, problem{what, "--force writes over it, or choose another name; nothing was written.", fs.ErrExist}
}

// agrees asks a question and says whether the answer was yes.
func agrees(w world, question string) bool {
	fmt.Fprintf(w.out, "%s [y/N] ", question)
	answer, _ := bufio.NewReader(w.in).ReadString('\n') // no answer is no
	switch strings.ToLower(strings.TrimSpace(answer)) {
	case "y", "yes":
		return true
	}
	return false
}

// cantWrite says in words why something can't be written.
func cantWrite(path string, err error) error {
	hint := "Nothing was written."
	switch {
	case full(err):
		hint = "The disk is full: make room, or name another place. Nothing was written."
	case errors.Is(err, fs.ErrNotExist):
		hint = "There is no folder " + printable(filepath.Dir(path)) + ": make it first, or name another place. Nothing was written."
	case errors.Is(err, fs.ErrPermission), errors.Is(err, syscall.EROFS):
		hint = "Name a folder that you may write in. Nothing was written."
	}
	return problem{fmt.Sprintf("%s can't be written: %v", printable(path), files.Bare(err)), hint, err}
}

// full says whether there was no room. Windows has a number of its own for it.
func full(err error) bool {
	const diskFull = syscall.Errno(112) // ERROR_DISK_FULL
	return errors.Is(err, syscall.ENOSPC) || errors.Is(err, syscall.EDQUOT) || runtime.GOOS == "windows" && errors.Is(err, diskFull)
}

// send writes to standard output.
func send(w world, text []byte) error {
	_, err := w.out.Write(text)
	return err
}

// made is one file in memory.
func made(path string, write func(io.Writer) error) (file, error) {
	var b strings.Builder
	err := write(&b)
	return file{path, []byte(b.String())}, err
}

// tellWritten says what was written.
func tellWritten(w world, files []file, folder string) {
	if len(files) == 1 {
		fmt.Fprintf(w.out, "%s is written\n", printable(files[0].path))
		return
	}
	fmt.Fprintf(w.out, "%d files are written in %s, %s to %s\n", len(files), printable(folder),
		printable(filepath.Base(files[0].path)), printable(filepath.Base(files[len(files)-1].path)))
}
