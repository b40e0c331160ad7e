package files

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func put(t *testing.T, folder string, names ...string) {
	t.Helper()
	for _, name := range names {
		path := filepath.Join(folder, name)
		if strings.HasSuffix(name, "/") {
			if err := os.MkdirAll(path, 0o755); err != nil {
				t.Fatal(err)
			}
		} else if err := os.WriteFile(path, []byte(name), 0o640); err != nil {
			t.Fatal(err)
		}
	}
}

func names(f Folder) string {
	var all []string
	for _, e := range f.Entries {
		name := e.Name
		if e.Dir {
			name += "/"
		}
		all = append(all, name)
	}
	return strings.Join(all, " ")
}

func TestFoldersFirstAndOnlyCutLists(t *testing.T) {
	dir := t.TempDir()
	put(t, dir, "b.cutlist", "A.CUTLIST", "notes.txt", "zoo/", "Attic/", ".hidden/", ".x.cutlist")
	if err := os.Symlink(filepath.Join(dir, "zoo"), filepath.Join(dir, "link")); err != nil {
		t.Fatal(err)
	}
	f, err := List(dir, false)
	if err != nil || names(f) != "Attic/ link/ zoo/ A.CUTLIST b.cutlist" || f.Hidden != 1 || f.Above != filepath.Dir(dir) {
		t.Errorf("%q, %d hidden, %v", names(f), f.Hidden, err)
	}
	if f, err = List(dir, true); err != nil || names(f) != "Attic/ link/ zoo/ A.CUTLIST b.cutlist notes.txt" {
		t.Errorf("all: %q, %v", names(f), err)
	}
	if f, err = List("/", false); err != nil || f.Above != "" {
		t.Errorf("above the top: %q, %v", f.Above, err)
	}
	if _, err = List(filepath.Join(dir, "nowhere"), false); err == nil || strings.Contains(err.Error(), dir) {
		t.Errorf("a folder that is not there: %v", err)
	}
}

func TestWriteNeverOverWhatWasNotRead(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.cutlist")
	if err := Write(path, "one", nil); err != nil {
		t.Fatal(err)
	}
	if err := Write(path, "two", nil); !errors.Is(err, ErrThere) {
		t.Errorf("a second new one: %v", err)
	}
	was := "else"
	if err := Write(path, "two", &was); !errors.Is(err, ErrChanged) {
		t.Errorf("over another: %v", err)
	}
	was = "one"
	if err := os.Chmod(path, 0o600); err != nil {
		t.Fatal(err)
	}
	link := filepath.Join(dir, "link.cutlist")
	if err := os.Symlink(path, link); err != nil {
		t.Fatal(err)
	}
	if err := Write(link, "two", &was); err != nil {
		t.Fatal(err)
	}
	if text, err := Read(path); text != "two" || err != nil {
		t.Errorf("%q, %v", text, err)
	}
	if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("mode %v, %v", info.Mode(), err)
	}
	if left, _ := filepath.Glob(filepath.Join(dir, ".*")); len(left) > 0 {
		t.Errorf("left lying about: %v", left)
	}
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	if err := Write(path, "three", &was); err != nil {
		t.Errorf("one that is gone can't be written again: %v", err)
	}
	if err := Write(filepath.Join(dir, "no", "a.cutlist"), "x", nil); err == nil {
		t.Error("written into a folder that is not there")
	}
}

// TestNeverOverWhatCameMeanwhile: a file that wasn't there when she was asked
// stays as it is.
func TestNeverOverWhatCameMeanwhile(t *testing.T) {
	name := filepath.Join(t.TempDir(), "a")
	from, err := Beside(name, []byte("ours"))
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, []byte("theirs"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := Place(from, name, false); !errors.Is(err, fs.ErrExist) {
		t.Skipf("no hard links here: %v", err)
	}
	if text, _ := os.ReadFile(name); string(text) != "theirs" {
		t.Errorf("it holds %q", text)
	}
	if err := Place(from, name, true); err != nil {
		t.Fatal(err)
	}
	if text, _ := os.ReadFile(name); string(text) != "ours" {
		t.Errorf("it holds %q", text)
	}
	if _, err := os.Lstat(from); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("%s is left: %v", from, err)
	}
}

func TestStamp(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.cutlist")
	if !StampOf(path).Gone() {
		t.Error("a file that is not there is there")
	}
	put(t, filepath.Dir(path), "a.cutlist")
	a := StampOf(path)
	if b := StampOf(path); a != b || a.Gone() {
		t.Errorf("%v, %v", a, b)
	}
	if err := os.WriteFile(path, []byte("longer than before"), 0o600); err != nil {
		t.Fatal(err)
	}
	if StampOf(path) == a {
		t.Error("a change is not noticed")
	}
}

func TestNames(t *testing.T) {
	for quilt, want := range map[string]string{
		"Harbour Lights": "harbour-lights.cutlist", "  5\" charm, again!": "5-charm-again.cutlist", "../../etc": "etc.cutlist", "": "quilt.cutlist", "Äpfel 雨": "äpfel-雨.cutlist",
	} {
		if got := NameFor(quilt); got != want {
			t.Errorf("%q: %q, want %q", quilt, got, want)
		}
	}
	dir := t.TempDir()
	put(t, dir, "a.cutlist", "a-2.cutlist")
	if got := FreeName(dir, "A"); got != filepath.Join(dir, "a-3.cutlist") {
		t.Error(got)
	}
}
