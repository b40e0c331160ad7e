package store

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"
)

// long says that the longer forms are wanted.
func long() bool { return os.Getenv("MATSIDE_LONG") == "1" }

// quickDir is a folder in memory where there is one: these tests are about
// what stands in a file, not about the disk.
func quickDir(t testing.TB) string {
	dir, err := os.MkdirTemp("/dev/shm", "matside")
	if err != nil {
		return t.TempDir()
	}
	t.Cleanup(func() { os.RemoveAll(dir) })
	return dir
}

// pair is the bytes of a data file and its journal.
type pair struct{ data, journal []byte }

const pairLines = 60

// pairLine is a line of the pair; one is longer than several pages.
func pairLine(i int) []byte {
	if i == 17 {
		return fmt.Appendf(nil, `{"seq":17,"text":"%s"}`, bytes.Repeat([]byte("Ink and Sand "), 1500))
	}
	return lineOf(i)
}

func makePair(t testing.TB) pair {
	t.Helper()
	path := filepath.Join(quickDir(t), "m.db")
	s := open(t, path, Options{})
	for i := 1; i <= pairLines; i++ {
		if err := s.Append(uint64(i), pairLine(i)); err != nil {
			t.Fatal(err)
		}
	}
	if err := s.SetCached(40, bytes.Repeat([]byte("state"), 2000)); err != nil {
		t.Fatal(err)
	}
	s.Close()
	return pair{mustRead(t, path), mustRead(t, JournalPath(path))}
}

func mustRead(t testing.TB, path string) []byte {
	t.Helper()
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// outcome opens a pair of files and says how many lines were there again; an
// error must be a Trouble with a way out.
func outcome(t testing.TB, p pair) (lines int, err error) {
	t.Helper()
	dir := quickDir(t)
	defer os.RemoveAll(dir)
	path := filepath.Join(dir, "m.db")
	for name, b := range map[string][]byte{path: p.data, JournalPath(path): p.journal} {
		if b == nil {
			continue
		}
		if err := os.WriteFile(name, b, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	started := time.Now()
	s, err := Open(path, Options{})
	if took := time.Since(started); took > 4*time.Second {
		t.Errorf("opening took %v", took)
	}
	if err != nil {
		var trouble *Trouble
		if !errors.As(err, &trouble) || trouble.What.Silent() || trouble.Way.Silent() {
			t.Errorf("no way out in: %v", err)
		}
		return 0, err
	}
	defer func() {
		if err := s.Close(); err != nil {
			t.Error(err)
		}
		checkFile(t, path)
	}()
	err = s.Each(1, func(seq uint64, line []byte) error {
		if lines++; int(seq) != lines || !bytes.Equal(line, pairLine(lines)) {
			return fmt.Errorf("line %d differs", seq)
		}
		return nil
	})
	if err != nil {
		t.Errorf("silently different: %v", err)
	}
	if err := s.Append(s.Last()+1, pairLine(int(s.Last()+1))); err != nil {
		t.Errorf("writing on: %v", err)
	}
	return lines, nil
}

// wantAll asks that not one line is lost.
func wantAll(t *testing.T, p pair, what string) {
	t.Helper()
	if n, err := outcome(t, p); err != nil || n != pairLines {
		t.Errorf("%s: %d of %d lines; %v", what, n, pairLines, err)
	}
}

// TestFlippedBits flips one bit of either file.
func TestFlippedBits(t *testing.T) {
	p := makePair(t)
	places := 60
	if long() {
		places = 2000
	}
	r := rand.New(rand.NewPCG(1, 2))
	for range places {
		at, bit := r.IntN(len(p.data)), r.IntN(8)
		wantAll(t, pair{flip(p.data, at, bit), p.journal}, fmt.Sprintf("data file, byte %d, bit %d", at, bit))
		at = r.IntN(len(p.journal))
		wantAll(t, pair{p.data, flip(p.journal, at, bit)}, fmt.Sprintf("journal, byte %d, bit %d", at, bit))
	}
}

// TestFlippedHeads flips every bit of the page heads and of the meta pages, in
// the long form; some of them otherwise.
func TestFlippedHeads(t *testing.T) {
	p := makePair(t)
	step := 97
	if long() {
		step = 1
	}
	for page := range len(p.data) / 4096 {
		head := 16
		if page < 2 {
			head = 80
		}
		for i := page; i < 8*head; i += step {
			wantAll(t, pair{flip(p.data, 4096*page+i/8, i%8), p.journal}, fmt.Sprintf("page %d, bit %d", page, i))
		}
	}
}

// TestFlippedNames flips every bit of the buckets' names: bbolt would go on
// with a part that has another name, and never find it again.
func TestFlippedNames(t *testing.T) {
	p := makePair(t)
	flips := 0
	for _, name := range [][]byte{headBucket, eventBucket, cacheBucket} {
		for at := 0; ; at++ {
			next := bytes.Index(p.data[at:], name)
			if next < 0 {
				break
			}
			at += next
			for bit := 0; bit < 8*len(name); bit += 5 {
				flips++
				wantAll(t, pair{flip(p.data, at+bit/8, bit%8), p.journal}, fmt.Sprintf("%s at %d, bit %d", name, at, bit))
			}
		}
	}
	if flips < 30 {
		t.Errorf("only %d flips", flips)
	}
}

func flip(b []byte, at, bit int) []byte {
	b = bytes.Clone(b)
	b[at] ^= 1 << bit
	return b
}

// TestCutShort cuts either file at every 512 bytes.
func TestCutShort(t *testing.T) {
	p := makePair(t)
	step := 512
	if !long() {
		step = 13 * 512
	}
	for n := 0; n < len(p.data); n += step {
		wantAll(t, pair{p.data[:n], p.journal}, fmt.Sprintf("data file cut to %d bytes", n))
	}
	for n := 0; n < len(p.journal); n += step {
		wantAll(t, pair{p.data, p.journal[:n]}, fmt.Sprintf("journal cut to %d bytes", n))
	}
}

// TestPages zeroes each page of the data file, and puts another in its place.
func TestPages(t *testing.T) {
	p := makePair(t)
	pages := len(p.data) / 4096
	for i := range pages {
		b := bytes.Clone(p.data)
		clear(b[4096*i : 4096*(i+1)])
		wantAll(t, pair{b, p.journal}, fmt.Sprintf("page %d zeroed", i))
		b = bytes.Clone(p.data)
		other := (i + 1 + i%3) % pages
		copy(b[4096*i:4096*(i+1)], p.data[4096*other:])
		wantAll(t, pair{b, p.journal}, fmt.Sprintf("page %d is page %d", i, other))
	}
}

// TestGarbage puts other things in the place of one file, the other being
// whole.
func TestGarbage(t *testing.T) {
	p := makePair(t)
	noise := make([]byte, 20000)
	r := rand.New(rand.NewPCG(3, 4))
	for i := range noise {
		noise[i] = byte(r.Uint32())
	}
	for name, b := range map[string][]byte{"nothing": {}, "missing": nil, "one byte": {7}, "noise": noise, "zeros": make([]byte, 9000),
		"text": bytes.Repeat([]byte("a letter to my aunt\n"), 100)} {
		wantAll(t, pair{b, p.journal}, name+" for the data file")
		wantAll(t, pair{p.data, b}, name+" for the journal")
	}
}

// TestBothDamaged damages both files: what is sound in either is kept, the
// rest is named, nothing is different.
func TestBothDamaged(t *testing.T) {
	p := makePair(t)
	rounds := 30
	if long() {
		rounds = 1000
	}
	r := rand.New(rand.NewPCG(5, 6))
	refused := 0
	for range rounds {
		both := pair{bytes.Clone(p.data), bytes.Clone(p.journal)}
		for range 1 + r.IntN(30) {
			both.data[r.IntN(len(both.data))] ^= byte(1 + r.IntN(255))
		}
		for range 1 + r.IntN(30) {
			both.journal[r.IntN(len(both.journal))] ^= byte(1 + r.IntN(255))
		}
		if n, err := outcome(t, both); err == nil && n < pairLines-1 {
			t.Errorf("%d of %d lines and no word", n, pairLines)
		} else if err != nil {
			refused++
			repaired(t, both, p)
		}
	}
	t.Logf("%d of %d refused, then repaired", refused, rounds)
}

// repaired repairs a pair and looks at each line: either as it was, or lost
// and named.
func repaired(t *testing.T, both, whole pair) {
	t.Helper()
	dir := quickDir(t)
	defer os.RemoveAll(dir)
	path := filepath.Join(dir, "m.db")
	os.WriteFile(path, both.data, 0o600)
	os.WriteFile(JournalPath(path), both.journal, 0o600)
	report, err := Repair(path, Options{}, func(seq uint64, _ []byte) []byte { return []byte("lost") })
	if err != nil {
		var trouble *Trouble
		if !errors.As(err, &trouble) {
			t.Errorf("repair: %v", err)
		}
		return
	}
	s, err := Open(path, Options{})
	if err != nil {
		t.Errorf("opening the repaired: %v", err)
		return
	}
	defer s.Close()
	sound := soundIn(both, whole)
	err = s.Each(1, func(seq uint64, line []byte) error {
		isLost := slices.Contains(report.Lost, seq)
		switch {
		case isLost && string(line) != "lost", !isLost && !bytes.Equal(line, pairLine(int(seq))):
			return fmt.Errorf("line %d is %.30s, lost %v", seq, line, isLost)
		case isLost && sound[seq]:
			return fmt.Errorf("line %d is whole in the journal and called lost", seq)
		}
		return nil
	})
	if err != nil {
		t.Error(err)
	}
}

// soundIn are the numbers whose journal line stands untouched in the damaged
// journal: told apart from the reader under test.
func soundIn(both, whole pair) map[uint64]bool {
	out := map[uint64]bool{}
	damaged := bytes.Split(both.journal, []byte("\n"))
	for i, line := range bytes.Split(whole.journal, []byte("\n")) {
		if i > 0 && len(line) > 0 && slices.ContainsFunc(damaged, func(d []byte) bool { return bytes.Equal(d, line) }) {
			out[uint64(i)] = true
		}
	}
	return out
}

// TestStale: a data file of another evening beside a journal is refused, and
// neither is touched.
func TestStale(t *testing.T) {
	a, b := makePair(t), makePair(t)
	if _, err := outcome(t, pair{a.data, b.journal}); !errors.Is(err, ErrDamaged) {
		t.Errorf("strangers: %v", err)
	}
}

// FuzzJournal: no journal makes the reader panic, and what it takes for sound
// it writes back as it was.
func FuzzJournal(f *testing.F) {
	var b bytes.Buffer
	_ = writeJournal(&b, 1, "00112233445566ff", [][]byte{[]byte("one"), []byte("two")}, true)
	f.Add(b.Bytes())
	f.Add([]byte("matside journal 1 00112233445566ff 00000000\n1 00000000 x\n"))
	f.Fuzz(func(t *testing.T, b []byte) {
		j, err := readJournal(bytes.NewReader(b), true, 1)
		if err != nil || !j.whole() {
			return
		}
		var again bytes.Buffer
		if err := writeJournal(&again, j.format, j.id, j.lines, true); err != nil || !bytes.Equal(again.Bytes(), b) {
			t.Errorf("read %q, wrote %q", b, again.Bytes())
		}
	})
}

// FuzzPages: no data file makes our page reader panic or run on.
func FuzzPages(f *testing.F) {
	f.Add(uint16(0), uint32(5), []byte{1, 2, 3})
	var whole []byte
	f.Fuzz(func(t *testing.T, page uint16, at uint32, b []byte) {
		if whole == nil {
			whole = makePair(t).data
		}
		d := bytes.Clone(whole)
		copy(d[(int(page)*4096+int(at))%len(d):], b)
		fixMeta(d)
		path := filepath.Join(t.TempDir(), "m.db")
		os.WriteFile(path, d, 0o600)
		if _, _, err := readData(path, true); err != nil {
			t.Error(err)
		}
	})
}

// fixMeta makes the meta pages' checksums right again, so that what lies
// behind them is reached.
func fixMeta(d []byte) {
	for _, at := range []int{16, 4096 + 16} {
		h := uint64(14695981039346656037)
		for _, c := range d[at : at+56] {
			h = (h ^ uint64(c)) * 1099511628211
		}
		binary.NativeEndian.PutUint64(d[at+56:], h)
	}
}
