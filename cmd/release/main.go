// Command release builds what is handed out: static programs for Linux, macOS
// and Windows on amd64 and arm64, each packed with its man pages, completions
// and licence; Debian packages; and the sums of all of them.
//
//	go run ./cmd/release -version 1.0.0 -o dist
//
// It calls the go command, and nfpm (a general packager) for the Debian
// packages. One commit makes the same bytes on every run with the same tools.
package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"time"
)

// target is a system to build for.
type target struct{ system, machine string }

var targets = []target{
	{"linux", "amd64"}, {"linux", "arm64"},
	{"darwin", "amd64"}, {"darwin", "arm64"},
	{"windows", "amd64"}, {"windows", "arm64"},
}

func main() {
	version := flag.String("version", "0.0.0", "the `VERSION` of the release")
	folder := flag.String("o", "dist", "the `FOLDER` for what is built")
	flag.Parse()
	if err := release(*version, *folder, targets, os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "release:", err)
		os.Exit(1)
	}
}

// release builds all targets into folder, in a folder beside it first, so
// that a failed run leaves nothing that looks whole.
func release(version, folder string, targets []target, told *os.File) error {
	if _, err := os.Stat(folder); err == nil {
		return fmt.Errorf("%s is there already: remove it, or choose another by -o", folder)
	}
	work, err := os.MkdirTemp(filepath.Dir(filepath.Clean(folder)), ".release-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(work)
	at, err := commitTime()
	if err != nil {
		return err
	}
	extras, err := writeExtras(version, filepath.Join(work, "extras"))
	if err != nil {
		return err
	}
	out := filepath.Join(work, "dist")
	if err := os.Mkdir(out, 0o755); err != nil {
		return err
	}
	for _, t := range targets {
		if err := t.release(version, work, out, extras, at); err != nil {
			return fmt.Errorf("%s on %s: %w", t.system, t.machine, err)
		}
		fmt.Fprintf(told, "%s on %s is built\n", t.system, t.machine)
	}
	if err := writeSums(out); err != nil {
		return err
	}
	return os.Rename(out, folder)
}

// release builds and packs one target.
func (t target) release(version, work, out string, extras []packed, at time.Time) error {
	program := filepath.Join(work, t.system+"-"+t.machine, t.program())
	if err := t.build(version, program); err != nil {
		return err
	}
	name := fmt.Sprintf("matside-%s-%s-%s", version, t.system, t.machine)
	files := append([]packed{{program, name + "/" + t.program(), 0o755}}, within(name, extras)...)
	if t.system == "windows" {
		return writeZip(filepath.Join(out, name+".zip"), files, at)
	}
	if err := writeTar(filepath.Join(out, name+".tar.gz"), files, at); err != nil {
		return err
	}
	if t.system != "linux" {
		return nil
	}
	return t.writeDebian(version, program, work, out, extras, at)
}

func (t target) program() string {
	if t.system == "windows" {
		return "matside.exe"
	}
	return "matside"
}

// build makes a static program that knows its version and its commit.
func (t target) build(version, program string) error {
	return call(append(os.Environ(), "CGO_ENABLED=0", "GOOS="+t.system, "GOARCH="+t.machine),
		"go", "build", "-trimpath", "-buildvcs=true", "-ldflags", "-s -w -X main.release="+version, "-o", program, "./cmd/matside")
}

// writeExtras writes what goes with every program, and lists it: man pages and
// completions, as the program itself writes them, and the papers.
func writeExtras(version, folder string) ([]packed, error) {
	own := target{runtime.GOOS, runtime.GOARCH}
	program := filepath.Join(folder, own.program())
	man := filepath.Join(folder, "man")
	if err := own.build(version, program); err != nil {
		return nil, err
	}
	if err := call(nil, program, "man", "-o", man); err != nil {
		return nil, err
	}
	extras := []packed{{"README.md", "README.md", 0o644}, {"LICENSE", "LICENSE", 0o644}}
	for _, shell := range []string{"bash", "zsh", "fish", "powershell"} {
		text, err := exec.Command(program, "completion", shell).Output()
		if err != nil {
			return nil, err
		}
		path := filepath.Join(folder, shell)
		if err := os.WriteFile(path, text, 0o644); err != nil {
			return nil, err
		}
		extras = append(extras, packed{path, "completions/" + completionName(shell), 0o644})
	}
	pages, err := os.ReadDir(man)
	if err != nil {
		return nil, err
	}
	for _, page := range pages {
		extras = append(extras, packed{filepath.Join(man, page.Name()), "man/" + page.Name(), 0o644})
	}
	return extras, nil
}

// completionName is what a shell looks for.
func completionName(shell string) string {
	return map[string]string{"bash": "matside", "zsh": "_matside", "fish": "matside.fish", "powershell": "matside.ps1"}[shell]
}

// commitTime is the time that everything packed carries.
func commitTime() (time.Time, error) {
	out, err := exec.Command("git", "log", "-1", "--format=%cI").Output()
	if err != nil {
		return time.Time{}, fmt.Errorf("a release is built from a git checkout: %w", err)
	}
	return time.Parse(time.RFC3339, strings.TrimSpace(string(out)))
}

// call runs a command; what it said is the error's text.
func call(env []string, name string, args ...string) error {
	c := exec.Command(name, args...)
	c.Env = env
	if out, err := c.CombinedOutput(); err != nil {
		return errors.Join(fmt.Errorf("%s %s: %w", name, args[0], err), errors.New(strings.TrimSpace(string(out))))
	}
	return nil
}
