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
	j, has, err := readJournalFile(JournalPath(path), true, 1)
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

// ReadSince reads the cached state, and the lines after the number it is good
// for, without opening the files. It is for a quick look: ok is false when
// there is no such state, or anything at all isn't as it should be, and then
// Read has the last word.
func ReadSince(path string) (seq uint64, state []byte, lines [][]byte, ok bool) {
	if (&Store{path: path}).isFile() != nil { // a pipe would keep us waiting
		return 0, nil, nil, false
	}
	seq, state, id, err := readCached(path)
	if err != nil || seq == 0 {
		return 0, nil, nil, false
	}
	j, has, err := readJournalFile(JournalPath(path), true, seq+1)
	if err != nil || !has || j.id != id || len(j.faults) > 0 || j.gap() || j.format != 1 || uint64(len(j.lines)) < seq {
		return 0, nil, nil, false
	}
	return seq, state, j.lines[seq:], true
}

// ReadCached reads the cached state without opening the file; 0 when there is
// none, or when the file is being written just now and can't be read.
func ReadCached(path string) (seq uint64, state []byte, err error) {
	seq, state, _, err = readCached(path)
	return seq, state, err
}

func readCached(path string) (seq uint64, state []byte, id string, err error) {
	file, err := os.Open(path)
	if os.IsNotExist(err) {
		return 0, nil, "", nil
	}
	if err != nil {
		return 0, nil, "", err
	}
	defer file.Close()
	info, err := file.Stat()
	if err != nil {
		return 0, nil, "", err
	}
	metas := metasOf(file)
	if len(metas) == 0 {
		return 0, nil, "", nil
	}
	// The newest alone: an older one would give an older state.
	b := &boltFile{file: file, size: uint64(info.Size()), meta: metas[0]}
	var head, cache []byte
	b.buckets(func(name string, value []byte) {
		switch name {
		case string(headBucket):
			head = bytes.Clone(value)
		case string(cacheBucket):
			cache = bytes.Clone(value)
		}
	})
	if head == nil || cache == nil {
		return 0, nil, "", nil
	}
	var f found
	b.bucket(head, f.readHeadEntry)
	b.bucket(cache, func(_, v []byte) {
		if n, line, ok := fromCached(v); ok {
			seq, state, id = n, bytes.Clone(line), f.id
		}
	})
	return seq, state, id, nil
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
