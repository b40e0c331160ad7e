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

// head is what a data file says of itself.
type head struct {
	format      uint32
	id, program string
}

// buildBolt makes a whole new data file at path, synced.
func (f Fault) buildBolt(path string, head head, lines [][]byte) error {
	if err := f.before("write new file"); err != nil {
		return err
	}
	db, err := openBolt(path, maxSize)
	if err != nil {
		return err
	}
	err = db.Update(func(tx *bolt.Tx) error { return fillBolt(tx, head, lines) })
	return errors.Join(err, db.Close())
}

func fillBolt(tx *bolt.Tx, h head, lines [][]byte) error {
	b, err := tx.CreateBucket(headBucket)
	if err != nil {
		return err
	}
	for key, value := range map[string][]byte{string(formatKey): formatValue(h.format),
		string(idKey): toValue(0, []byte(h.id)), string(programKey): []byte(h.program)} {
		if err := b.Put([]byte(key), value); err != nil {
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
func readData(path string, keep bool) (f found, ours bool, err error) {
	file, err := os.Open(path)
	if err != nil {
		return f, false, err
	}
	defer file.Close()
	info, err := file.Stat()
	if err != nil {
		return f, false, err
	}
	metas := metasOf(file)
	heads := len(metas) == 2 && metas[0].headOK && metas[1].headOK
	newest := false
	for i, m := range metas {
		one, is := readTree(&boltFile{file: file, size: uint64(info.Size()), meta: m}, keep)
		if i == 0 && is && len(one.faults) == 0 && heads {
			return one, true, nil
		}
		newest = newest || i == 0 && is
		ours = ours || is
		f.takeIn(one)
	}
	if ours && !newest { // bbolt would write on without it, and lose it for good
		f.fault("the newest state of the data file has lost its head")
	}
	if !heads {
		f.fault("the data file's head is damaged")
	}
	return f, ours, nil
}

// readTree reads the records under one meta page.
func readTree(b *boltFile, keep bool) (f found, ours bool) {
	f.keep = keep
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
		b.bucket(cache, func([]byte, []byte) {})
	}
	if events != nil {
		b.bucket(events, f.readEntry)
	}
	b.free()
	b.all()
	if ours && (head == nil || events == nil || cache == nil || f.id == "" || f.format == 0) {
		b.fault("a part of the data file is missing")
	}
	for _, s := range b.faults {
		f.fault("%s", s)
	}
	return f, ours
}

func (f *found) readHeadEntry(key, value []byte) {
	switch {
	case string(key) == string(idKey):
		if id, ok := fromValue(0, value); ok && properID(string(id)) {
			f.id = string(id)
		}
	case string(key) == string(formatKey) && len(value) == 8:
		// Twice, so that a flipped bit isn't taken for a newer program.
		if n := binary.BigEndian.Uint32(value); n == ^binary.BigEndian.Uint32(value[4:]) {
			f.format = n
		}
	case string(key) == string(programKey):
		f.program = string(value)
	}
}

func formatValue(n uint32) []byte {
	return binary.BigEndian.AppendUint32(binary.BigEndian.AppendUint32(nil, n), ^n)
}

func (f *found) readEntry(key, value []byte) {
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
	if !ok || seq <= uint64(len(f.marks)) {
		f.fault("record %d of the data file is not sound", seq)
	}
	if ok && !f.has(seq) {
		f.put(seq, line, binary.BigEndian.Uint32(value))
	}
}
