package main

import (
	"archive/tar"
	"archive/zip"
	"compress/gzip"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"
)

// packed is a file on its way into an archive or a package.
type packed struct {
	from, to string // where it is, and where it goes to, with slashes
	mode     os.FileMode
}

// within puts files into a folder of an archive.
func within(folder string, files []packed) []packed {
	moved := make([]packed, len(files))
	for i, f := range files {
		moved[i] = packed{f.from, folder + "/" + f.to, f.mode}
	}
	return moved
}

func writeTar(path string, files []packed, at time.Time) error {
	return create(path, func(to io.Writer) error {
		zipped := gzip.NewWriter(to)
		archive := tar.NewWriter(zipped)
		for _, f := range files {
			text, err := os.ReadFile(f.from)
			if err != nil {
				return err
			}
			head := &tar.Header{Name: f.to, Mode: int64(f.mode), Size: int64(len(text)), ModTime: at, Format: tar.FormatPAX}
			if err := archive.WriteHeader(head); err != nil {
				return err
			}
			if _, err := archive.Write(text); err != nil {
				return err
			}
		}
		return errors.Join(archive.Close(), zipped.Close())
	})
}

func writeZip(path string, files []packed, at time.Time) error {
	return create(path, func(to io.Writer) error {
		archive := zip.NewWriter(to)
		for _, f := range files {
			text, err := os.ReadFile(f.from)
			if err != nil {
				return err
			}
			head := &zip.FileHeader{Name: f.to, Method: zip.Deflate, Modified: at.UTC()}
			head.SetMode(f.mode)
			part, err := archive.CreateHeader(head)
			if err != nil {
				return err
			}
			if _, err := part.Write(text); err != nil {
				return err
			}
		}
		return archive.Close()
	})
}

func create(path string, write func(io.Writer) error) error {
	f, err := os.Create(path)
	if err != nil {
		return err
	}
	return errors.Join(write(f), f.Close())
}

// writeSums writes SHA256SUMS, as sha256sum --check reads it.
func writeSums(folder string) error {
	entries, err := os.ReadDir(folder)
	if err != nil {
		return err
	}
	var sums strings.Builder
	for _, e := range entries {
		text, err := os.ReadFile(filepath.Join(folder, e.Name()))
		if err != nil {
			return err
		}
		fmt.Fprintf(&sums, "%x  %s\n", sha256.Sum256(text), e.Name())
	}
	return os.WriteFile(filepath.Join(folder, "SHA256SUMS"), []byte(sums.String()), 0o644)
}
