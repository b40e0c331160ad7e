package main

import (
	"compress/gzip"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"
)

// packager is nfpm, which writes packages without Debian's tools; a module of
// its own, since matside needs none of it.
const packager = "github.com/goreleaser/nfpm/v2/cmd/nfpm@v2.44.0"

// writeDebian packs a target as a Debian package.
func (t target) writeDebian(version, program, work, out string, extras []packed, at time.Time) error {
	folder := filepath.Join(work, "debian-"+t.machine)
	if err := os.Mkdir(folder, 0o755); err != nil {
		return err
	}
	files := []packed{{program, "/usr/bin/matside", 0o755}}
	for _, f := range extras {
		f, err := debianFile(folder, f)
		if err != nil {
			return err
		}
		if f.to != "" {
			files = append(files, f)
		}
	}
	changes, err := compressed(folder, packed{to: "changelog.gz"}, []byte(fmt.Sprintf(
		"matside (%s) unstable; urgency=medium\n\n  * See README.md.\n\n -- %s  %s\n", version, keeper, at.Format(time.RFC1123Z))))
	if err != nil {
		return err
	}
	changes.to = "/usr/share/doc/matside/changelog.gz"
	config := filepath.Join(folder, "nfpm.yaml")
	if err := os.WriteFile(config, []byte(debianConfig(version, t.machine, append(files, changes), at)), 0o644); err != nil {
		return err
	}
	args := []string{"package", "--config", config, "--packager", "deb", "--target", out}
	env := append(os.Environ(), fmt.Sprintf("SOURCE_DATE_EPOCH=%d", at.Unix()))
	if nfpm, err := exec.LookPath("nfpm"); err == nil {
		return call(env, nfpm, args...)
	}
	return call(env, "go", append([]string{"run", packager}, args...)...)
}

// keeper stands in the package as its maintainer.
const keeper = "The matside team <matside@example.org>"

// debianFile says where a file belongs in a Debian system, by the Filesystem
// Hierarchy Standard and Debian's policy; man pages are compressed there. A
// file that has no place in it goes to "".
func debianFile(folder string, f packed) (packed, error) {
	kind, name := filepath.Split(f.to)
	switch {
	case kind == "man/":
		text, err := os.ReadFile(f.from)
		if err != nil {
			return packed{}, err
		}
		f.to = name + ".gz"
		page, err := compressed(folder, f, text)
		page.to = "/usr/share/man/man" + name[len(name)-1:] + "/" + f.to
		return page, err
	case name == "LICENSE":
		f.to = "/usr/share/doc/matside/copyright"
	case name == "README.md":
		f.to = "/usr/share/doc/matside/README.md"
	case name == "matside":
		f.to = "/usr/share/bash-completion/completions/matside"
	case name == "_matside":
		f.to = "/usr/share/zsh/vendor-completions/_matside"
	case name == "matside.fish":
		f.to = "/usr/share/fish/vendor_completions.d/matside.fish"
	default:
		f.to = ""
	}
	return f, nil
}

// compressed writes a file's text, compressed, into folder.
func compressed(folder string, f packed, text []byte) (packed, error) {
	f.from, f.mode = filepath.Join(folder, f.to), 0o644
	return f, create(f.from, func(to io.Writer) error {
		z, err := gzip.NewWriterLevel(to, gzip.BestCompression)
		if err != nil {
			return err
		}
		if _, err := z.Write(text); err != nil {
			return err
		}
		return z.Close()
	})
}

// debianConfig is what nfpm reads.
func debianConfig(version, machine string, files []packed, at time.Time) string {
	var y strings.Builder
	fmt.Fprintf(&y, "name: matside\narch: %s\nplatform: linux\nversion: %q\nmtime: %q\n", machine, version, at.UTC().Format(time.RFC3339))
	fmt.Fprintf(&y, "maintainer: %q\nsection: misc\npriority: optional\nlicense: MIT\n", keeper)
	fmt.Fprintf(&y, "description: |\n  plan a quilt's mat loads and walk through them\n"+
		"  matside plans the mat loads of a quilt's cut list, walks the quilter\n  through each, remembers every piece cut, and says when the mat is due\n  for washing.\n")
	fmt.Fprintf(&y, "contents:\n")
	for _, f := range files {
		fmt.Fprintf(&y, "  - src: %q\n    dst: %q\n    file_info:\n      mode: %#o\n      mtime: %q\n", f.from, f.to, f.mode, at.UTC().Format(time.RFC3339))
	}
	return y.String()
}
