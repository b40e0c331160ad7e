package plan

import (
	"testing"

	"example.org/matside/plan/check"
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

const in = length.Inch

// eighths makes a length of so many eighths of an inch.
func eighths(n int) length.Len { return length.Len(n) * in / 8 }

func rectangle(w, h length.Len) outline.Outline {
	return outline.Outline{{X: 0, Y: 0}, {X: w, Y: 0}, {X: w, Y: h}, {X: 0, Y: h}}
}

// halfSquare has its square corner bottom left.
func halfSquare(a length.Len) outline.Outline {
	return outline.Outline{{X: 0, Y: 0}, {X: a, Y: a}, {X: 0, Y: a}}
}

func quarterSquare(a length.Len) outline.Outline {
	return outline.Outline{{X: a / 2, Y: 0}, {X: a, Y: a / 2}, {X: 0, Y: a / 2}}
}

// sheet is a cut list on the usual mat.
func sheet(fabrics []cutlist.Fabric, lines ...cutlist.Line) *cutlist.List {
	l := &cutlist.List{Quilt: "Test", Seam: in / 4, Margin: in / 4, Fabrics: fabrics, Lines: lines,
		Mat: cutlist.Mat{Width: 12 * in, Height: 12 * in, UsableWidth: 11 * in, UsableHeight: 11 * in}}
	for i := range l.Lines {
		l.Lines[i].Number = 10 + i
	}
	return l
}

func cloth(name string, stock ...cutlist.Panel) cutlist.Fabric {
	return cutlist.Fabric{Name: name, Stock: stock}
}

func TestKnownLoads(t *testing.T) {
	for _, c := range []struct {
		name    string
		outline outline.Outline
		count   int
		loads   int // at most
		proved  bool
	}{
		{"64 squares of 2 3/4", rectangle(eighths(22), eighths(22)), 64, 4, true},
		{"25 squares of 2 (common practice, no source)", rectangle(2*in, 2*in), 25, 1, true},
		{"96 quarter-square triangles 5 1/4", quarterSquare(eighths(42)), 96, 6, true},
		{"100 half-square triangles 3 7/8", halfSquare(eighths(31)), 100, 13, false},
	} {
		l := sheet([]cutlist.Fabric{cloth("Ink")}, cutlist.Line{Count: c.count, Outline: c.outline})
		q := Make(l, Options{})
		for _, f := range check.Check(q) {
			t.Errorf("%s: %s", c.name, f)
		}
		if len(q.Loads) > c.loads || c.proved && !q.Fewest.Proved {
			t.Errorf("%s: %d loads, %+v, want %d", c.name, len(q.Loads), q.Fewest, c.loads)
		}
	}
}
