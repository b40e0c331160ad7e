package store

import (
	"bytes"
	"encoding/binary"
	"os"
)

// Read reads all lines of the data file at path and its journal without
// opening it: it takes no lock and writes nothing, so it also serves while
// another process is writing. Missing files are no lines.
//
// A process that writes puts a line into the journal before the data file; so
// the journal is read last, and what it has is what will be kept.
func Read(path string) ([][]byte, error) {
	s := &Store{path: path, opt: Options{Format: 1}}
	if err := s.isFile(); err != nil {
		return nil, err
	}
	j, has, err := readJournalFile(JournalPath(path), true)
	if err != nil {
		return nil, s.explain(err)
	}
	if has && j.id != "" && len(j.faults) == 0 && !j.gap() && j.format == 1 {
		return j.lines, nil // whole by itself: the data file may be half written just now
	}
	b, err := s.look(true)
	if err != nil {
		return nil, s.explain(err)
	}
	if err := s.judge(b); err != nil {
		return nil, err
	}
	return b.lines(), nil
}

// ReadCached reads the cached state without opening the file; 0 when there is
// none, or when the file is being written just now and can't be read.
func ReadCached(path string) (seq uint64, state []byte, err error) {
	file, err := os.Open(path)
	if os.IsNotExist(err) {
		return 0, nil, nil
	}
	if err != nil {
		return 0, nil, err
	}
	defer file.Close()
	info, err := file.Stat()
	if err != nil {
		return 0, nil, err
	}
	for _, m := range metasOf(file) {
		b := &boltFile{file: file, size: uint64(info.Size()), meta: m}
		b.buckets(func(name string, value []byte) {
			if name != string(cacheBucket) {
				return
			}
			b.bucket(value, func(_, v []byte) {
				if n, line, ok := fromCached(v); ok {
					seq, state = n, bytes.Clone(line)
				}
			})
		})
		break // an older one would give an older state
	}
	return seq, state, nil
}

// fromCached takes a cached state apart, or says that it isn't sound.
func fromCached(v []byte) (seq uint64, state []byte, ok bool) {
	if len(v) < 8 {
		return 0, nil, false
	}
	seq = binary.BigEndian.Uint64(v)
	state, ok = fromValue(seq, v[8:])
	return seq, state, ok
}
