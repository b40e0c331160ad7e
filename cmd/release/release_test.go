package main

import (
	"archive/tar"
	"archive/zip"
	"compress/gzip"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"
)

// atRoot runs a test where release is run: at the top of the checkout.
func atRoot(t *testing.T) {
	t.Helper()
	t.Chdir("../..")
	if err := exec.Command("git", "rev-parse", "HEAD").Run(); err != nil {
		t.Skip("this is no git checkout")
	}
}

// TestRelease builds this machine's own program, unpacks it and asks it for its
// version.
func TestRelease(t *testing.T) {
	if os.Getenv("MATSIDE_LONG") == "" {
		t.Skip("it builds all of matside: MATSIDE_LONG=1 runs it")
	}
	atRoot(t)
	own := target{runtime.GOOS, runtime.GOARCH}
	folder := filepath.Join(t.TempDir(), "dist")
	if err := release("1.2.3", folder, []target{own}, os.Stderr); err != nil {
		t.Fatal(err)
	}
	archives, err := filepath.Glob(filepath.Join(folder, "*.tar.gz"))
	if err != nil || len(archives) != 1 {
		t.Fatalf("%v, %v", archives, err)
	}
	to := t.TempDir()
	if out, err := exec.Command("tar", "-xzf", archives[0], "-C", to, "--strip-components=1").CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	out, err := exec.Command(filepath.Join(to, "matside"), "version").Output()
	if err != nil || !strings.HasPrefix(string(out), "matside 1.2.3, commit ") || strings.Contains(string(out), "unknown") {
		t.Errorf("%q, %v", out, err)
	}
	sums := exec.Command("sha256sum", "--check", "--strict", "SHA256SUMS")
	sums.Dir = folder
	if out, err := sums.CombinedOutput(); err != nil {
		t.Errorf("%v: %s", err, out)
	}
}

// TestDebianPackage installs the package, uses it, removes it, and finds
// nothing left. It needs root, dpkg, nfpm, and no other matside installed.
func TestDebianPackage(t *testing.T) {
	if os.Geteuid() != 0 {
		t.Skip("it installs a package, which takes root")
	}
	for _, name := range []string{"dpkg", "nfpm"} {
		if _, err := exec.LookPath(name); err != nil {
			t.Skip(name + " is not installed")
		}
	}
	if exec.Command("dpkg", "--status", "matside").Run() == nil {
		t.Skip("matside is installed already, and stays so")
	}
	atRoot(t)
	folder := filepath.Join(t.TempDir(), "dist")
	if err := release("0.0.1", folder, []target{{"linux", runtime.GOARCH}}, os.Stderr); err != nil {
		t.Fatal(err)
	}
	debs, err := filepath.Glob(filepath.Join(folder, "*.deb"))
	if err != nil || len(debs) != 1 {
		t.Fatalf("%v, %v", debs, err)
	}
	dpkg(t, "--install", debs[0])
	files := strings.Fields(dpkg(t, "--listfiles", "matside"))
	out, err := exec.Command("/usr/bin/matside", "version").Output()
	if err != nil || !strings.HasPrefix(string(out), "matside 0.0.1, commit ") {
		t.Errorf("%q, %v", out, err)
	}
	if !slices.Contains(files, "/usr/share/man/man1/matside.1.gz") || !slices.Contains(files, "/usr/share/doc/matside/copyright") {
		t.Errorf("the package holds %v", files)
	}
	dpkg(t, "--purge", "matside")
	for _, name := range files {
		if info, err := os.Lstat(name); err == nil && !info.IsDir() {
			t.Errorf("%s is left behind", name)
		}
	}
	if _, err := os.Stat("/usr/share/doc/matside"); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("its folder is left behind: %v", err)
	}
}

func dpkg(t *testing.T, args ...string) string {
	t.Helper()
	out, err := exec.Command("dpkg", args...).CombinedOutput()
	if err != nil {
		t.Fatalf("dpkg %v: %v: %s", args, err, out)
	}
	return string(out)
}

// TestArchives writes the same bytes twice and reads them back.
func TestArchives(t *testing.T) {
	folder := t.TempDir()
	from := filepath.Join(folder, "from")
	if err := os.WriteFile(from, []byte("text"), 0o600); err != nil {
		t.Fatal(err)
	}
	at := time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC)
	files := within("matside-1", []packed{{from, "bin", 0o755}, {from, "man/page", 0o644}})
	for name, write := range map[string]func(string, []packed, time.Time) error{"a.tar.gz": writeTar, "a.zip": writeZip} {
		path, again := filepath.Join(folder, name), filepath.Join(folder, "again-"+name)
		if err := errors.Join(write(path, files, at), write(again, files, at)); err != nil {
			t.Fatal(err)
		}
		one, err1 := os.ReadFile(path)
		two, err2 := os.ReadFile(again)
		if err1 != nil || err2 != nil || string(one) != string(two) {
			t.Errorf("%s differs on its second run", name)
		}
	}
	if got := inTar(t, filepath.Join(folder, "a.tar.gz")); got != "matside-1/bin -rwxr-xr-x text\nmatside-1/man/page -rw-r--r-- text\n" {
		t.Errorf("the archive holds\n%s", got)
	}
	z, err := zip.OpenReader(filepath.Join(folder, "a.zip"))
	if err != nil {
		t.Fatal(err)
	}
	defer z.Close()
	if len(z.File) != 2 || z.File[0].Name != "matside-1/bin" || z.File[0].Mode() != 0o755 || !z.File[0].Modified.Equal(at) {
		t.Errorf("the zip holds %v", z.File)
	}
}

// inTar lists an archive: name, mode, content.
func inTar(t *testing.T, path string) string {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	z, err := gzip.NewReader(f)
	if err != nil {
		t.Fatal(err)
	}
	var all strings.Builder
	for r := tar.NewReader(z); ; {
		head, err := r.Next()
		if errors.Is(err, io.EOF) {
			return all.String()
		}
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		all.WriteString(head.Name + " " + head.FileInfo().Mode().String() + " " + string(text) + "\n")
	}
}
