package session

import (
	"path/filepath"
	"runtime"
	"testing"

	"example.org/matside/session/store"
)

// bigLog is a data file of about n events: quilts of 400 pieces on 100 loads,
// with a spoiled piece, a lift and a wash now and then.
func bigLog(t testing.TB, n int) string {
	t.Helper()
	list := smallList(200, 200)
	q, _ := fourToALoad(list, Wish{Wanted: allOf(list)})
	s, now := newState(), clock()
	var lines [][]byte
	do := func(id QuiltID, a Action) {
		c, err := Decide(&s, id, a, now(), fourToALoad)
		if err != nil {
			t.Fatal(err)
		}
		e := Event{Seq: s.Seq + 1, At: now(), Quilt: belongs(c, id, a, s.Seq+1), Content: c}
		line, err := e.Encode()
		if err == nil {
			err = s.apply(&e, nil)
		}
		if err != nil {
			t.Fatal(err)
		}
		lines = append(lines, line)
	}
	for len(lines) < n {
		id := QuiltID(s.Seq + 1)
		do(0, Start{Text: "text", List: list, Queue: q})
		for i := 0; s.Quilt(id).Standing == UnderWay; i++ {
			a := GoOn{Anyway: true}
			if at := s.Quilt(id); at.Step == Peel && i%7 == 0 && !at.InHand().Recut {
				a.Spoiled, a.Lifted = []int{0}, true
			}
			do(id, a)
			if i%45 == 44 {
				do(id, Wash{})
			}
		}
	}
	path := filepath.Join(t.TempDir(), "matside.db")
	if err := store.Create(path, lines, store.Options{}); err != nil {
		t.Fatal(err)
	}
	return path
}

// BenchmarkOpen opens a log of 100 000 events; held is the memory in use
// afterwards, in MB.
func BenchmarkOpen(b *testing.B) {
	path := bigLog(b, 100_000)
	opt := OpenOptions{Planner: fourToALoad}
	if l, err := Open(path, opt); err != nil { // leaves its snapshot behind
		b.Fatal(err)
	} else {
		l.Close()
	}
	runtime.GC()
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	for b.Loop() {
		l, err := Open(path, opt)
		if err != nil {
			b.Fatal(err)
		}
		runtime.GC()
		runtime.ReadMemStats(&after)
		b.ReportMetric(float64(after.HeapAlloc-before.HeapAlloc)/1e6, "MB-held")
		l.Close()
	}
}

// BenchmarkOpenAnew is the same without the snapshot.
func BenchmarkFold(b *testing.B) {
	path := bigLog(b, 100_000)
	for b.Loop() {
		if _, err := Peek(path); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkDo puts one step on disk, at the end of a log of 100 000 events.
func BenchmarkDo(b *testing.B) {
	l, err := Open(bigLog(b, 100_000), OpenOptions{Planner: fourToALoad})
	if err != nil {
		b.Fatal(err)
	}
	defer l.Close()
	id := startOn(b, l, 2000, 2000)
	for b.Loop() {
		if _, err := l.Do(id, GoOn{Anyway: true}); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkBack takes a step back, at the end of a log of 100 000 events.
func BenchmarkBack(b *testing.B) {
	l, err := Open(bigLog(b, 100_000), OpenOptions{Planner: fourToALoad})
	if err != nil {
		b.Fatal(err)
	}
	defer l.Close()
	id := startOn(b, l, 200, 200)
	for b.Loop() {
		for _, a := range []Action{GoOn{}, Back{}} {
			if _, err := l.Do(id, a); err != nil {
				b.Fatal(err)
			}
		}
	}
}
