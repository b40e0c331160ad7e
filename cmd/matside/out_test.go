package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

// left are the names in a folder, hidden ones too.
func left(t *testing.T, folder string) string {
	t.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return strings.Join(names, " ")
}

func quiet() world {
	return world{in: strings.NewReader(""), out: &bytes.Buffer{}, err: &bytes.Buffer{}, getenv: func(string) string { return "" }}
}

// TestWriteWholeOrNot: what is refused leaves everything as it was.
func TestWriteWholeOrNot(t *testing.T) {
	dir := t.TempDir()
	at := func(name string) string { return filepath.Join(dir, name) }
	if err := os.WriteFile(at("old"), []byte("old"), 0o640); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(at("old"), at("link")); err != nil {
		t.Skip(err)
	}
	if err := os.Symlink(at("nowhere"), at("dangling")); err != nil {
		t.Skip(err)
	}
	if err := os.Mkdir(at("folder"), 0o755); err != nil {
		t.Fatal(err)
	}
	const before = "dangling folder link old"
	for _, c := range []struct {
		name  string
		force bool
		says  string
	}{
		{"old", false, "is there already"}, {"link", false, "is a link"}, {"link", true, "is a link"}, {"dangling", true, "is a link"},
		{"folder", true, "is a folder"}, {"no/such", true, "no folder"}, {"old/below", true, "can't be written"},
	} {
		o := output{force: c.force}
		err := o.write(quiet(), []file{{at("new"), []byte("n")}, {at(c.name), []byte("x")}})
		if err == nil || !strings.Contains(err.Error(), c.says) && !strings.Contains(err.Error(), "of the 2 files") {
			t.Errorf("%s, force %v: %v", c.name, c.force, err)
		}
		if got := left(t, dir); got != before {
			t.Errorf("%s: the folder holds %s", c.name, got)
		}
	}
	o := output{force: true}
	if err := o.write(quiet(), []file{{at("old"), []byte("new")}, {at("more"), []byte("m")}}); err != nil {
		t.Fatal(err)
	}
	if text, _ := os.ReadFile(at("old")); string(text) != "new" {
		t.Errorf("it holds %q", text)
	}
	if info, _ := os.Stat(at("old")); info.Mode().Perm() != 0o640 && runtime.GOOS != "windows" {
		t.Errorf("it may be read by %v", info.Mode())
	}
	if got := left(t, dir); got != "dangling folder link more old" {
		t.Errorf("the folder holds %s", got)
	}
}

// TestDiskFull writes to a disk of 64 KiB: nothing is left of what had no room,
// and the folder made for it is taken away.
func TestDiskFull(t *testing.T) {
	dir := t.TempDir()
	if out, err := exec.Command("mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", dir).CombinedOutput(); err != nil {
		t.Skipf("no small disk can be made here: %s", out)
	}
	defer func() {
		if out, err := exec.Command("umount", dir).CombinedOutput(); err != nil {
			t.Errorf("%v: %s", err, out)
		}
	}()
	o := output{to: filepath.Join(dir, "loads")}
	undo, err := o.folder()
	if err != nil {
		t.Fatal(err)
	}
	err = o.write(quiet(), []file{{filepath.Join(o.to, "1"), make([]byte, 30_000)}, {filepath.Join(o.to, "2"), make([]byte, 90_000)}})
	undo()
	if err == nil || !strings.Contains(err.Error(), "The disk is full") {
		t.Errorf("it says %v", err)
	}
	if got := left(t, dir); got != "" {
		t.Errorf("left on the disk: %s", got)
	}
}
