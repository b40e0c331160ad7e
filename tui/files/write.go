package files

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"unicode"

	"example.org/matside/plan/say"
)

var kinds say.Kinds

// Kinds are the kinds of what is said of a file.
func Kinds() []*say.Kind { return kinds.All() }

// NotAFile is said of a folder, a pipe and their like.
var NotAFile = kinds.New("it is no file")

// The reasons why nothing was written.
var (
	// ErrChanged is returned when the file is not what was read.
	ErrChanged = errors.New("the file has changed since it was read")
	// ErrThere is returned when a file nobody has read has that name.
	ErrThere = errors.New("a file of that name is there already")
)

// maxText is a little more than a cut list may be.
const maxText = 1<<20 + 1

// Read reads a text file, up to a little more than the largest cut list.
func Read(path string) (string, error) {
	f, err := os.Open(path)
	if err != nil {
		return "", Bare(err)
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && !info.Mode().IsRegular() {
		return "", NotAFile.Err()
	}
	text, err := io.ReadAll(io.LimitReader(f, maxText))
	if err != nil {
		return "", Bare(err)
	}
	return string(text), nil
}

// Write writes text where was is what the file held when it was read; was nil
// means that there must be no file yet. The mode of a file that is there
// stays as it is.
func Write(path, text string, was *string) error {
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real
	}
	now, err := Read(path)
	switch {
	case errors.Is(err, fs.ErrNotExist): // never there, or gone: there is nothing to lose
	case err != nil:
		return err
	case was == nil:
		return ErrThere
	case now != *was:
		return ErrChanged
	}
	return replace(path, text, was != nil)
}

// replace writes a new file beside path and puts it in its place.
func replace(path, text string, over bool) error {
	name, err := Beside(path, []byte(text))
	if err != nil {
		return Bare(err)
	}
	if err = Place(name, path, over); err == nil {
		return nil
	}
	if errors.Is(err, fs.ErrExist) {
		err = ErrThere
	}
	return errors.Join(Bare(err), os.Remove(name))
}

// Stamp is what a file looks like from outside; equal stamps mean that it was
// very likely not written in between.
type Stamp struct {
	size int64
	when int64
	gone bool
}

// StampOf looks at a file without reading it.
func StampOf(path string) Stamp {
	info, err := os.Stat(path)
	if err != nil {
		return Stamp{gone: true}
	}
	return Stamp{size: info.Size(), when: info.ModTime().UnixNano()}
}

// Gone reports that there was no file.
func (s Stamp) Gone() bool { return s.gone }

// NameFor is a file name for a quilt: "Harbour Lights" gives
// "harbour-lights.cutlist".
func NameFor(quilt string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(quilt) {
		switch {
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	name := strings.Trim(b.String(), "-")
	const longest = 60
	if r := []rune(name); len(r) > longest {
		name = strings.Trim(string(r[:longest]), "-")
	}
	if name == "" {
		name = "quilt"
	}
	return name + Ext
}

// FreeName is NameFor in a folder, with a number where a file of that name is
// there already.
func FreeName(folder, quilt string) string {
	base := strings.TrimSuffix(NameFor(quilt), Ext)
	for n := 1; ; n++ {
		name := base + Ext
		if n > 1 {
			name = fmt.Sprintf("%s-%d%s", base, n, Ext)
		}
		path := filepath.Join(folder, name)
		if _, err := os.Lstat(path); errors.Is(err, fs.ErrNotExist) || n > 999 {
			return path
		}
	}
}

// StampFor is what a file with that text, written once, looks like; "" is one
// that is not there. It is for tests of what goes by stamps.
func StampFor(text string) Stamp {
	var sum int64
	for _, b := range []byte(text) {
		sum = sum*31 + int64(b)
	}
	return Stamp{size: int64(len(text)), when: sum, gone: text == ""}
}
