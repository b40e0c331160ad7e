package store

import (
	"encoding/binary"
	"errors"
	"fmt"
	"hash/fnv"
	"os"
)

// This file reads a bbolt data file of format 2 without bbolt: by plain reads,
// with every offset checked and no page visited twice, so that no damage can
// end the process or keep it for ever. The layout is that of bbolt 1.5.0:
// internal/common/page.go, meta.go, bucket.go, inode.go.

const (
	boltMagic   = 0xED0CDAED
	boltVersion = 2
	pageHead    = 16
	elemSize    = 16
	metaSize    = 64

	branchFlag = 0x01
	leafFlag   = 0x02
	metaFlag   = 0x04
	listFlag   = 0x10
	bucketLeaf = 0x01
)

// boltMeta is one of the two meta pages.
type boltMeta struct {
	pageSize             uint32
	root, freelist, high uint64 // page numbers; high is one past the last
	tx                   uint64
}

// boltFile is a data file read into memory.
type boltFile struct {
	bytes   []byte
	meta    boltMeta
	visited map[uint64]bool
	faults  []string
}

func (f *boltFile) fault(format string, args ...any) {
	if len(f.faults) < 20 {
		f.faults = append(f.faults, fmt.Sprintf(format, args...))
	}
}

var errNotBolt = errors.New("no sound page at its head")

// readBolt reads a file and its sound meta pages, the newest first.
func readBolt(path string) ([]byte, []boltMeta, error) {
	b, err := os.ReadFile(path)
	if err != nil {
		return nil, nil, err
	}
	metas := metasOf(b)
	if len(metas) == 0 {
		return b, nil, errNotBolt
	}
	return b, metas, nil
}

// metasOf finds the sound meta pages. The second stands one page after the
// first, and pages have the writing machine's size: a power of two.
func metasOf(b []byte) []boltMeta {
	var metas []boltMeta
	if m, ok := metaAt(b, 0); ok {
		metas = append(metas, m)
	}
	for size := 1 << 10; size <= 1<<16; size <<= 1 {
		if m, ok := metaAt(b, size); ok && int(m.pageSize) == size {
			metas = append(metas, m)
			break
		}
	}
	if len(metas) == 2 && metas[1].tx > metas[0].tx {
		metas[0], metas[1] = metas[1], metas[0]
	}
	return metas
}

func metaAt(b []byte, at int) (m boltMeta, ok bool) {
	if len(b) < at+pageHead+metaSize {
		return m, false
	}
	p := b[at+pageHead : at+pageHead+metaSize]
	u32 := binary.NativeEndian.Uint32
	u64 := binary.NativeEndian.Uint64
	h := fnv.New64a()
	h.Write(p[:metaSize-8])
	if u32(p) != boltMagic || u32(p[4:]) != boltVersion || u64(p[56:]) != h.Sum64() {
		return m, false
	}
	m = boltMeta{pageSize: u32(p[8:]), root: u64(p[16:]), freelist: u64(p[32:]), high: u64(p[40:]), tx: u64(p[48:])}
	size := m.pageSize
	return m, size >= 1<<10 && size <= 1<<16 && size&(size-1) == 0
}

// page gives a page's flags, its element count, and its bytes with overflow.
func (f *boltFile) page(id uint64) (flags, count int, body []byte, ok bool) {
	size := uint64(f.meta.pageSize)
	if id < 2 || id >= f.meta.high || (id+1)*size > uint64(len(f.bytes)) {
		f.fault("page %d lies outside the file", id)
		return
	}
	if f.visited[id] {
		f.fault("page %d is used twice", id)
		return
	}
	f.visited[id] = true
	p := f.bytes[id*size:]
	over := uint64(binary.NativeEndian.Uint32(p[12:]))
	if binary.NativeEndian.Uint64(p) != id || id+over >= f.meta.high || (id+over+1)*size > uint64(len(f.bytes)) {
		f.fault("page %d has a damaged head", id)
		return
	}
	for o := uint64(1); o <= over; o++ {
		if f.visited[id+o] {
			f.fault("page %d is used twice", id+o)
			return
		}
		f.visited[id+o] = true
	}
	flags, count = int(binary.NativeEndian.Uint16(p[8:])), int(binary.NativeEndian.Uint16(p[10:]))
	return flags, count, p[:(over+1)*size], true
}

// each visits the leaves of the tree at page id in order.
func (f *boltFile) each(id uint64, depth int, visit func(flags uint32, key, value []byte)) {
	flags, count, p, ok := f.page(id)
	switch {
	case !ok:
	case depth > 40:
		f.fault("the tree is too deep")
	case flags == leafFlag:
		f.leaves(p, count, visit)
	case flags == branchFlag && count > 0:
		for i := range count {
			at := pageHead + i*elemSize
			if at+elemSize > len(p) {
				f.fault("page %d names more than it holds", id)
				return
			}
			f.each(binary.NativeEndian.Uint64(p[at+8:]), depth+1, visit)
		}
	default:
		f.fault("page %d is of no known kind", id)
	}
}

// leaves visits the elements of a leaf page, or of a small bucket kept inside
// its parent.
func (f *boltFile) leaves(p []byte, count int, visit func(flags uint32, key, value []byte)) {
	for i := range count {
		at := pageHead + i*elemSize
		if at+elemSize > len(p) {
			f.fault("a page names more than it holds")
			return
		}
		u32 := binary.NativeEndian.Uint32
		flags, pos, klen, vlen := u32(p[at:]), uint64(u32(p[at+4:])), uint64(u32(p[at+8:])), uint64(u32(p[at+12:]))
		from := uint64(at) + pos
		if pos < elemSize || from+klen+vlen > uint64(len(p)) {
			f.fault("an entry lies outside its page")
			continue
		}
		visit(flags, p[from:from+klen], p[from+klen:from+klen+vlen])
	}
}

// bucket visits the entries of a bucket given by its parent's value.
func (f *boltFile) bucket(value []byte, visit func(flags uint32, key, value []byte)) {
	if len(value) < 16 {
		f.fault("a bucket has a damaged head")
		return
	}
	if root := binary.NativeEndian.Uint64(value); root != 0 {
		f.each(root, 0, visit)
		return
	}
	if inner := value[16:]; len(inner) >= pageHead {
		f.leaves(inner, int(binary.NativeEndian.Uint16(inner[10:])), visit)
	}
}

// buckets visits the buckets at the top.
func (f *boltFile) buckets(visit func(name string, value []byte)) {
	f.visited = map[uint64]bool{}
	f.each(f.meta.root, 0, func(flags uint32, key, value []byte) {
		if flags&bucketLeaf != 0 {
			visit(string(key), value)
		}
	})
}

// free reads the list of free pages, and faults what can't be on it.
func (f *boltFile) free() {
	if f.meta.freelist == 1<<64-1 { // bbolt writes none when asked not to
		return
	}
	flags, count, p, ok := f.page(f.meta.freelist)
	if !ok {
		return
	}
	if flags != listFlag {
		f.fault("the list of free pages is damaged")
		return
	}
	n, at := uint64(count), uint64(pageHead)
	if count == 0xFFFF { // more than fit the count: the first entry is the count
		n, at = binary.NativeEndian.Uint64(p[at:]), at+8
	}
	if n > uint64(len(p)-int(at))/8 {
		f.fault("the list of free pages is damaged")
		return
	}
	for i := range n {
		id := binary.NativeEndian.Uint64(p[at+8*i:])
		if id < 2 || id >= f.meta.high || f.visited[id] {
			f.fault("page %d is free and in use", id)
			return
		}
		f.visited[id] = true
	}
}

// all faults a page that is neither in use nor free, which bbolt's own check
// would call unreachable.
func (f *boltFile) all() {
	for id := uint64(2); id < f.meta.high; id++ {
		if !f.visited[id] {
			f.fault("page %d belongs to nothing", id)
			return
		}
	}
}
