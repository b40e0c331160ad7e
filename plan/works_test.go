package plan

import (
	"fmt"
	"os"
	"runtime"
	"runtime/metrics"
	"testing"
	"time"

	"example.org/matside/plan/check"
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
)

// work is one row of the benchmark table: what is to be planned, what others
// need for it, the most loads it may take, which is no more than are asked
// for, and as how few they must be proved at the least.
type work struct {
	name, reference string
	list            func() *cutlist.List
	most, fewest    int
}

// small makes a cut list of one line in Ink.
func small(line string) func() *cutlist.List {
	return func() *cutlist.List {
		l, err := cutlist.Read("work", []byte("quilt Work\n"+line), nil)
		if err != nil {
			panic(err)
		}
		return l
	}
}

// works are the rows that go through Make. The references are those of a
// general nesting library, measured elsewhere.
var works = []work{
	{"100 half-square triangles 3 7/8 on 11 x 11", "13 loads, 8 a mat", small("fabric Ink\ncut from Ink\n100 half-square triangles 3 7/8"), 8, 7},
	{"96 quarter-square triangles 5 1/4 on 11 x 11", "10 loads", small("fabric Ink\ncut from Ink\n96 quarter-square triangles 5 1/4"), 6, 6},
	{"200 hexagons, side 1.2887, on 11 1/2 x 11 1/2", "11 loads in 10.6 s", small("mat 12 x 12 usable 11 1/2 x 11 1/2\nfabric Ink\ncut from Ink\n200 hexagons 1.2887"), 9, 8},
	{"5 000 squares 2 1/2", "under 1 s", func() *cutlist.List { return squares(5000, eighths(20)) }, 313, 313},
	{"1 000 pieces of 40 sizes in 12 fabrics", "under 5 s, under 300 MB", motley, 93, 87},
	{"a quilt of 250 pieces", "", func() *cutlist.List { return typical(250) }, 27, 24},
	{"the same of 2 500", "at most x 12", func() *cutlist.List { return typical(2500) }, 269, 234},
	{"the same of 10 000", "at most x 12", func() *cutlist.List { return typical(10000) }, 1073, 935},
}

// TestTable plans each of the works, holds it to its loads and its proof, and
// with MATSIDE_LONG=1 prints the table:
//
//	MATSIDE_LONG=1 go test -run TestTable -v ./plan
//
// Seconds and memory are for reading only. The short form leaves out the
// largest, which differ from those before them in size alone.
func TestTable(t *testing.T) {
	long := os.Getenv("MATSIDE_LONG") == "1"
	rows := works
	if !long {
		rows = works[:4]
	}
	t.Logf("%-46s %-24s %5s %6s %8s %7s", "work", "reference", "loads", "fewest", "seconds", "peak MB")
	for _, w := range rows {
		l := w.list()
		peak := watchHeap()
		start := time.Now()
		q := Make(l, Options{})
		took := time.Since(start)
		proved := ""
		if q.Fewest.Proved {
			proved = " proved"
		}
		t.Logf("%-46s %-24s %5d %6d %8.2f %7d%s", w.name, w.reference, len(q.Loads), q.Fewest.Loads, took.Seconds(), peak()>>20, proved)
		if len(q.Loads) > w.most {
			t.Errorf("%s: %d loads, they were %d", w.name, len(q.Loads), w.most)
		}
		if q.Fewest.Loads < w.fewest {
			t.Errorf("%s: %d loads proved to be needed, they were %d", w.name, q.Fewest.Loads, w.fewest)
		}
		for _, f := range check.Check(q) {
			t.Errorf("%s: %s", w.name, f)
		}
	}
}

// watchHeap looks at the memory in use every few milliseconds; the function
// it returns ends that and gives the most that was seen.
func watchHeap() func() uint64 {
	runtime.GC()
	stop, most := make(chan struct{}), make(chan uint64)
	go func() {
		var peak uint64
		sample := []metrics.Sample{{Name: "/memory/classes/heap/objects:bytes"}}
		for {
			metrics.Read(sample)
			peak = max(peak, sample[0].Value.Uint64())
			select {
			case <-stop:
				most <- peak
				return
			case <-time.After(2 * time.Millisecond):
			}
		}
	}()
	return func() uint64 { close(stop); return <-most }
}

// typical is a quilt of about n pieces in four fabrics.
func typical(n int) *cutlist.List {
	l := sheet([]cutlist.Fabric{cloth("Plum"), cloth("Oat"), cloth("Fern"), cloth("Rust")})
	add := func(fabric, share int, line cutlist.Line) {
		line.Number, line.Fabric, line.Count = 10+len(l.Lines), fabric, share*n/250
		l.Lines = append(l.Lines, line)
	}
	add(0, 40, cutlist.Line{Outline: rectangle(eighths(20), eighths(20))})
	add(0, 24, cutlist.Line{Outline: rectangle(eighths(20), eighths(36))})
	add(1, 80, cutlist.Line{Outline: halfSquare(72_482_013)})
	add(2, 40, cutlist.Line{Outline: halfSquare(72_482_013)})
	add(2, 20, cutlist.Line{Outline: rectangle(eighths(36), eighths(36))})
	add(2, 16, cutlist.Line{Outline: quarterSquare(eighths(42))})
	add(3, 12, cutlist.Line{Outline: rectangle(3*in, 6*in), Grain: cutlist.Lengthwise})
	add(3, 18, cutlist.Line{Outline: rectangle(eighths(52), eighths(52))})
	return l
}

// motley is 1 000 pieces of 40 sizes in 12 fabrics.
func motley() *cutlist.List {
	var fabrics []cutlist.Fabric
	for f := range 12 {
		fabrics = append(fabrics, cloth(fmt.Sprint("Cloth ", f)))
	}
	l := sheet(fabrics)
	for s := range 40 {
		w, h := eighths(8+(s*7)%33), eighths(8+(s*11)%41)
		l.Lines = append(l.Lines, cutlist.Line{Number: 10 + s, Fabric: s % 12, Count: 25, Outline: rectangle(w, h)})
	}
	return l
}

func squares(n int, side length.Len) *cutlist.List {
	return sheet([]cutlist.Fabric{cloth("Ink")}, cutlist.Line{Count: n, Outline: rectangle(side, side)})
}
