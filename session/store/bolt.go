package store

import (
	"encoding/binary"
	"errors"
	"fmt"
	"os"
	"runtime/debug"
	"time"

	bolt "go.etcd.io/bbolt"
)

// Format is the number of the data file's form; FormatNeeds the oldest form
// a program must know to read it.
const Format = 1

var (
	headBucket  = []byte("matside")
	eventBucket = []byte("events")
	cacheBucket = []byte("snapshot")
	formatKey   = []byte("format")
	idKey       = []byte("id")
	programKey  = []byte("program")
	cacheKey    = []byte("state")
)

// maxSize keeps a runaway file from filling her disk.
const maxSize = 1 << 30

// openBolt opens a data file for writing. A panic or fault inside bbolt is an
// error; the lock it leaves behind is given back.
func openBolt(path string, limit int) (db *bolt.DB, err error) {
	var file *os.File
	defer func() {
		if err != nil && file != nil {
			unlock(file)
			file.Close()
		}
	}()
	err = guard(func() error {
		db, err = bolt.Open(path, 0o600, &bolt.Options{Timeout: time.Second, MaxSize: limit, FreelistType: bolt.FreelistMapType,
			OpenFile: func(name string, flag int, mode os.FileMode) (*os.File, error) {
				f, err := os.OpenFile(name, flag, mode)
				if file == nil {
					file = f
				}
				return f, err
			}})
		return err
	})
	return db, err
}

// guard runs what touches a data file; a panic or a memory fault in it becomes
// an error. It holds for the calling goroutine only.
func guard(do func() error) (err error) {
	defer debug.SetPanicOnFault(debug.SetPanicOnFault(true))
	defer func() {
		if p := recover(); p != nil {
			err = fmt.Errorf("%w: %v", ErrDamaged, p)
		}
	}()
	return do()
}

// buildBolt makes a whole new data file at path, synced.
func (f Fault) buildBolt(path, id, program string, lines [][]byte) error {
	if err := f.before("write new file"); err != nil {
		return err
	}
	db, err := openBolt(path, maxSize)
	if err != nil {
		return err
	}
	err = db.Update(func(tx *bolt.Tx) error { return fillBolt(tx, id, program, lines) })
	return errors.Join(err, db.Close())
}

func fillBolt(tx *bolt.Tx, id, program string, lines [][]byte) error {
	head, err := tx.CreateBucket(headBucket)
	if err != nil {
		return err
	}
	for key, value := range map[string][]byte{string(formatKey): binary.BigEndian.AppendUint32(nil, Format),
		string(idKey): []byte(id), string(programKey): []byte(program)} {
		if err := head.Put([]byte(key), value); err != nil {
			return err
		}
	}
	if _, err := tx.CreateBucket(cacheBucket); err != nil {
		return err
	}
	events, err := tx.CreateBucket(eventBucket)
	if err != nil {
		return err
	}
	events.FillPercent = 1 // numbers only rise
	for i, line := range lines {
		seq := uint64(i + 1)
		if err := events.Put(toKey(seq), toValue(seq, line)); err != nil {
			return err
		}
	}
	return nil
}

// readData reads what is sound of a data file, without bbolt. ours is false
// when it is no data file of matside's.
func readData(path string) (f found, ours bool, err error) {
	b, metas, err := readBolt(path)
	if errors.Is(err, errNotBolt) {
		return f, false, nil
	}
	if err != nil {
		return f, false, err
	}
	for i, m := range metas {
		one, is := readTree(&boltFile{bytes: b, meta: m})
		if i == 0 && is && len(one.faults) == 0 && len(metas) == 2 {
			return one, true, nil
		}
		ours = ours || is
		f.takeIn(one)
	}
	if len(metas) < 2 {
		f.fault("the data file's head is damaged")
	}
	return f, ours, nil
}

// takeIn adds what other has and f lacks.
func (f *found) takeIn(other found) {
	if f.id == "" {
		f.id = other.id
	}
	f.newer = f.newer || other.newer
	for _, s := range other.faults {
		f.fault("%s", s)
	}
	for i, line := range other.lines {
		if line != nil && (i >= len(f.lines) || f.lines[i] == nil) {
			f.put(uint64(i+1), line)
		}
	}
}

// readTree reads the records under one meta page.
func readTree(b *boltFile) (f found, ours bool) {
	var head, events, cache []byte
	b.buckets(func(name string, value []byte) {
		switch name {
		case string(headBucket):
			head, ours = value, true
		case string(eventBucket):
			events = value
		case string(cacheBucket):
			cache = value
		}
	})
	if head != nil {
		b.bucket(head, f.readHeadEntry)
	}
	if cache != nil { // thrown away when damaged, but its pages count
		b.bucket(cache, func(uint32, []byte, []byte) {})
	}
	if events != nil {
		b.bucket(events, f.readEntry)
	}
	b.free()
	b.all()
	if ours && (head == nil || events == nil || cache == nil || f.id == "") {
		b.fault("a part of the data file is missing")
	}
	for _, s := range b.faults {
		f.fault("%s", s)
	}
	return f, ours
}

func (f *found) readHeadEntry(_ uint32, key, value []byte) {
	switch {
	case string(key) == string(idKey) && properID(string(value)):
		f.id = string(value)
	case string(key) == string(formatKey) && len(value) == 4:
		f.newer = f.newer || binary.BigEndian.Uint32(value) > Format
	}
}

func (f *found) readEntry(_ uint32, key, value []byte) {
	if len(key) != 8 {
		f.fault("a record of the data file has a damaged number")
		return
	}
	seq := binary.BigEndian.Uint64(key)
	if seq == 0 || seq > maxSeq {
		f.fault("a record of the data file has a damaged number")
		return
	}
	line, ok := fromValue(seq, value)
	if !ok || seq <= uint64(len(f.lines)) {
		f.fault("record %d of the data file is not sound", seq)
	}
	if !ok || seq <= uint64(len(f.lines)) && f.lines[seq-1] != nil {
		return
	}
	f.put(seq, line)
}
