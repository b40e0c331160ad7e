package store

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"hash/fnv"
	"io"
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
	headOK               bool // the page around it calls itself a meta page
}

// boltFile reads a data file page by page.
type boltFile struct {
	file    io.ReaderAt
	size    uint64
	meta    boltMeta
	visited map[uint64]bool
	faults  []string
	buffers [maxDepth + 2][]byte // one for each depth, used again and again
}

// maxDepth of a tree: bbolt's fan-out makes one of 2^32 pages far flatter.
const maxDepth = 32

func (f *boltFile) fault(format string, args ...any) {
	if len(f.faults) < 20 {
		f.faults = append(f.faults, fmt.Sprintf(format, args...))
	}
}

// metasOf finds the sound meta pages, the newest first. The second stands one
// page after the first, and pages have the writing machine's size: a power of
// two.
func metasOf(file io.ReaderAt) []boltMeta {
	var metas []boltMeta
	if m, ok := metaAt(file, 0); ok {
		metas = append(metas, m)
	}
	for size := int64(1 << 10); size <= 1<<16; size <<= 1 {
		if m, ok := metaAt(file, size); ok && int64(m.pageSize) == size {
			metas = append(metas, m)
			break
		}
	}
	if len(metas) == 2 && metas[1].tx > metas[0].tx {
		metas[0], metas[1] = metas[1], metas[0]
	}
	return metas
}

func metaAt(file io.ReaderAt, at int64) (m boltMeta, ok bool) {
	var page [pageHead + metaSize]byte
	if _, err := file.ReadAt(page[:], at); err != nil {
		return m, false
	}
	p := page[pageHead:]
	u32 := binary.NativeEndian.Uint32
	u64 := binary.NativeEndian.Uint64
	h := fnv.New64a()
	h.Write(p[:metaSize-8])
	if u32(p) != boltMagic || u32(p[4:]) != boltVersion || u64(p[56:]) != h.Sum64() {
		return m, false
	}
	m = boltMeta{pageSize: u32(p[8:]), root: u64(p[16:]), freelist: u64(p[32:]), high: u64(p[40:]), tx: u64(p[48:])}
	m.headOK = u64(page[:]) == min(uint64(at), 1) && binary.NativeEndian.Uint16(page[8:]) == metaFlag
	size := m.pageSize
	return m, size >= 1<<10 && size <= 1<<16 && size&(size-1) == 0
}

// page reads a page with its overflow; the bytes are good until the next page
// of the same depth.
func (f *boltFile) page(id uint64, depth int) (flags, count int, body []byte, ok bool) {
	size := uint64(f.meta.pageSize)
	if id < 2 || id >= f.meta.high || !f.within(id, 1) {
		f.fault("page %d lies outside the file", id)
		return
	}
	body = f.read(id, 1, depth)
	if body == nil {
		return
	}
	over := uint64(binary.NativeEndian.Uint32(body[12:]))
	if binary.NativeEndian.Uint64(body) != id || id+over >= f.meta.high || !f.within(id, over+1) {
		f.fault("page %d has a damaged head", id)
		return
	}
	for o := range over + 1 {
		if f.visited[id+o] {
			f.fault("page %d is used twice", id+o)
			return
		}
		f.visited[id+o] = true
	}
	if over > 0 {
		if body = f.read(id, over+1, depth); body == nil {
			return
		}
	}
	flags, count = int(binary.NativeEndian.Uint16(body[8:])), int(binary.NativeEndian.Uint16(body[10:]))
	return flags, count, body[:(over+1)*size], true
}

// within says whether the file holds n pages from id on.
func (f *boltFile) within(id, n uint64) bool {
	pages := f.size / uint64(f.meta.pageSize)
	return id < pages && n <= pages-id
}

func (f *boltFile) read(id, n uint64, depth int) []byte {
	size := uint64(f.meta.pageSize)
	if uint64(cap(f.buffers[depth])) < n*size {
		f.buffers[depth] = make([]byte, n*size)
	}
	b := f.buffers[depth][:n*size]
	if _, err := f.file.ReadAt(b, int64(id*size)); err != nil {
		f.fault("page %d can't be read: %v", id, err)
		return nil
	}
	return b
}

// span is where the keys of a page must lie: from low on, and below high. An
// empty high is no bound.
type span struct{ low, high []byte }

// each visits the leaves of the tree at page id in order.
func (f *boltFile) each(id uint64, depth int, keys span, visit func(flags uint32, key, value []byte)) {
	if depth > maxDepth {
		f.fault("the tree is too deep")
		return
	}
	flags, count, p, ok := f.page(id, depth)
	switch {
	case !ok:
	case flags == leafFlag:
		f.leaves(p, count, keys, visit)
	case flags == branchFlag && count > 0:
		f.branches(p, count, depth, keys, visit)
	default:
		f.fault("page %d is of no known kind", id)
	}
}

// branches visits the pages that a branch page names, each in its own span.
func (f *boltFile) branches(p []byte, count, depth int, keys span, visit func(flags uint32, key, value []byte)) {
	u32 := binary.NativeEndian.Uint32
	key := func(i int) []byte {
		at := uint64(pageHead + i*elemSize)
		return f.slice(p, at+uint64(u32(p[at:])), uint64(u32(p[at+4:])))
	}
	if pageHead+count*elemSize > len(p) {
		f.fault("a page names more than it holds")
		count = (len(p) - pageHead) / elemSize
	}
	for i := range count {
		child := span{key(i), keys.high}
		if i+1 < count {
			child.high = key(i + 1)
		}
		f.inSpan(child.low, keys)
		f.each(binary.NativeEndian.Uint64(p[pageHead+i*elemSize+8:]), depth+1, child, visit)
	}
}

// slice is n bytes of a page, or nothing and a fault when they aren't there.
func (f *boltFile) slice(p []byte, from, n uint64) []byte {
	if from < pageHead || from+n > uint64(len(p)) {
		f.fault("an entry lies outside its page")
		return nil
	}
	return p[from : from+n]
}

func (f *boltFile) inSpan(key []byte, keys span) {
	if bytes.Compare(key, keys.low) < 0 || len(keys.high) > 0 && bytes.Compare(key, keys.high) >= 0 {
		f.fault("an entry stands out of its order")
	}
}

// leaves visits the elements of a leaf page, or of a small bucket kept inside
// its parent.
func (f *boltFile) leaves(p []byte, count int, keys span, visit func(flags uint32, key, value []byte)) {
	u32 := binary.NativeEndian.Uint32
	if pageHead+count*elemSize > len(p) {
		f.fault("a page names more than it holds")
		count = (len(p) - pageHead) / elemSize
	}
	for i := range count {
		at := uint64(pageHead + i*elemSize)
		flags, from, klen, vlen := u32(p[at:]), at+uint64(u32(p[at+4:])), uint64(u32(p[at+8:])), uint64(u32(p[at+12:]))
		both := f.slice(p, from, klen+vlen)
		if both == nil {
			continue
		}
		key := both[:klen]
		f.inSpan(key, keys)
		keys.low = append(bytes.Clone(key), 0) // the next one stands after it
		visit(flags, key, both[klen:])
	}
}

// bucket visits the entries of a bucket given by its parent's value.
func (f *boltFile) bucket(value []byte, visit func(key, value []byte)) {
	plain := func(flags uint32, key, value []byte) {
		if flags != 0 {
			f.fault("an entry has a damaged head")
		}
		visit(key, value)
	}
	if len(value) < 16 {
		f.fault("a bucket has a damaged head")
		return
	}
	if root := binary.NativeEndian.Uint64(value); root != 0 {
		f.each(root, 0, span{}, plain)
		return
	}
	inner := value[16:]
	if len(inner) < pageHead || binary.NativeEndian.Uint16(inner[8:]) != leafFlag {
		f.fault("a bucket has a damaged head")
		return
	}
	f.leaves(inner, int(binary.NativeEndian.Uint16(inner[10:])), span{}, plain)
}

// buckets visits the buckets at the top.
func (f *boltFile) buckets(visit func(name string, value []byte)) {
	f.visited = map[uint64]bool{}
	f.each(f.meta.root, 0, span{}, func(flags uint32, key, value []byte) {
		if flags != bucketLeaf {
			f.fault("an entry has a damaged head")
		}
		visit(string(key), bytes.Clone(value))
	})
}

// free reads the list of free pages, and faults what can't be on it.
func (f *boltFile) free() {
	if f.meta.freelist == 1<<64-1 { // bbolt writes none when asked not to
		return
	}
	flags, count, p, ok := f.page(f.meta.freelist, 0)
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
