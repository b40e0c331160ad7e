package drawing_test

import (
	"bytes"
	"flag"
	"math"
	"os"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"example.org/matside/plan"
	"example.org/matside/plan/check"
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/drawing"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
	"example.org/matside/plan/rect"
	"example.org/matside/testdata/cutlists"
)

// TestMain keeps the random laws quick, unless asked for the long form.
func TestMain(m *testing.M) {
	checks := "100"
	if os.Getenv("MATSIDE_LONG") == "1" {
		checks = "2000"
	}
	if err := flag.Set("rapid.checks", checks); err != nil {
		panic(err)
	}
	os.Exit(m.Run())
}

// motley has every way in which pieces can meet: in whole, in part, slanted,
// not at all, of two fabrics, face down, and round.
const motley = `quilt Motley
fabric Ink
fabric Sand & "Sun", face down
fabric Moss
cut from Ink
9 squares 2 1/2 for A
6 rectangles 2 x 3 1/4 for B
11 half-square triangles 3 finished for C
cut from Sand & "Sun"
7 half-rectangle triangles 2 x 4, left, for D
8 hexagons 1 for E
5 diamonds 60 2 for F
3 tumblers 3 x 2 x 2 1/2 for G
cut from Moss
2 circles 3 for H
5 equilateral triangles 2 1/2 for I, any grain
3 octagons 2 1/4 for J
4 quarter circles 2 for K
`

const apart = `quilt Apart
gap 1/8
margin 0
fabric Ink
fabric Sand
cut from Ink
6 squares 2 for A
cut from Sand
8 half-square triangles 2 for B
`

// touching leaves no margin, so that rough cuts of two fabrics may share a cut.
const touching = `quilt Touching
margin 0
fabric Ink
fabric Sand
cut from Ink
10 squares 2 3/4 for A
cut from Sand
9 rectangles 2 3/4 x 1 3/8 for B
`

// plans are the plans that the tests look at, made once.
var plans = sync.OnceValue(func() []*queue.Queue {
	var all []*queue.Queue
	for _, text := range []string{motley, apart, touching, string(cutlists.Read(cutlists.Demo)), string(cutlists.Read("first-nine-patch.cutlist"))} {
		list, err := cutlist.Read("test", []byte(text), nil)
		if err != nil {
			panic(err)
		}
		q := plan.Make(list, plan.Options{Effort: rect.Quick})
		if faults := check.Check(q); len(faults) > 0 {
			panic(faults[0].String())
		}
		all = append(all, q)
	}
	return all
})

// eachLoad does f with every load of the plans.
func eachLoad(t *testing.T, f func(t *testing.T, q *queue.Queue, l *queue.Load)) {
	for _, q := range plans() {
		t.Run(q.List.Quilt, func(t *testing.T) {
			for i := range q.Loads {
				f(t, q, &q.Loads[i])
			}
		})
	}
}

// close is two nanometres.
const close = 2e-6

// segment is a straight stretch in millimetres.
type segment struct{ ax, ay, bx, by float64 }

func (s segment) length() float64 { return math.Hypot(s.bx-s.ax, s.by-s.ay) }

// at is the point a part f of the way along.
func (s segment) at(f float64) (x, y float64) { return s.ax + f*(s.bx-s.ax), s.ay + f*(s.by-s.ay) }

// near says how far a point is from s.
func (s segment) near(x, y float64) float64 {
	dx, dy := s.bx-s.ax, s.by-s.ay
	f := ((x-s.ax)*dx + (y-s.ay)*dy) / (dx*dx + dy*dy)
	px, py := s.at(min(max(f, 0), 1))
	return math.Hypot(x-px, y-py)
}

// parallel says whether s and o run the same way, or opposite ways.
func (s segment) parallel(o segment) bool {
	cross := (s.bx-s.ax)*(o.by-o.ay) - (s.by-s.ay)*(o.bx-o.ax)
	return math.Abs(cross) < 1e-5*s.length()*o.length()
}

// edges are the edges of a load's pieces, straight from the plan.
func edges(l *queue.Load) []segment {
	var all []segment
	for _, p := range l.Pieces {
		all = append(all, segments(p.Outline, true)...)
	}
	return all
}

func segments(points []outline.Point, closed bool) []segment {
	var all []segment
	for i, a := range points {
		if i+1 == len(points) && !closed {
			break
		}
		b := points[(i+1)%len(points)]
		all = append(all, segment{float64(a.X) / 1e6, float64(a.Y) / 1e6, float64(b.X) / 1e6, float64(b.Y) / 1e6})
	}
	return all
}

// A load is taken apart again by brute force: at many places along each edge of
// each piece, exactly one cut runs there, and all cuts together are as long as
// the edges, each counted by how many share the place.
func TestEachCutLineOnce(t *testing.T) {
	const places = 40
	eachLoad(t, func(t *testing.T, q *queue.Queue, l *queue.Load) {
		var cuts []segment
		for _, g := range drawing.Of(q.List, l, drawing.Options{}).Groups {
			for _, p := range g.Paths {
				cuts = append(cuts, segments(p.Points, p.Closed)...)
			}
		}
		all := edges(l)
		var shared, drawn, most float64
		for _, e := range all {
			most = max(most, e.length())
			for i := range places {
				x, y := e.at((float64(i) + 0.4142) / places) // no corner lies there
				count := func(of []segment) (n int) {
					for _, s := range of {
						if s.parallel(e) && s.near(x, y) < close {
							n++
						}
					}
					return n
				}
				if n := count(cuts); n != 1 {
					t.Fatalf("load %d: %d cuts at %.3f, %.3f", l.Number, n, x, y)
				}
				shared += e.length() / places / float64(count(all))
			}
		}
		for _, c := range cuts {
			drawn += c.length()
		}
		// Where a share ends between two places, up to half a step is off.
		if off := math.Abs(shared - drawn); off > most/places*float64(len(all))/4 {
			t.Errorf("load %d: the cuts are %.2f mm, the edges %.2f mm", l.Number, drawn, shared)
		}
		if off := math.Abs(float64(l.CutLength)/1e6 - drawn); off > 1e-6*float64(len(cuts)+1) {
			t.Errorf("load %d: the cuts are %.6f mm, the plan says %s mm", l.Number, drawn, l.CutLength.MM())
		}
	})
}

// TestInnerCutsFirst looks how many pieces lie along each path, place by place: in each rough cut come first the paths with two all the way, then those
// with two at some places and one at others, then those with one.
func TestInnerCutsFirst(t *testing.T) {
	eachLoad(t, func(t *testing.T, q *queue.Queue, l *queue.Load) {
		last := map[int]int{} // the rank of the last path of each rough cut
		for _, g := range drawing.Of(q.List, l, drawing.Options{}).Groups {
			for _, p := range g.Paths {
				rough, rank := rankAround(l, segments(p.Points, p.Closed))
				if rank < last[rough] {
					t.Fatalf("load %d: %v comes too late", l.Number, p)
				}
				last[rough] = rank
			}
		}
	})
}

// rankAround finds by brute force the rough cut of a path, and 0 where a piece
// lies on either side of it all the way, 2 where on one side only, else 1.
func rankAround(l *queue.Load, path []segment) (rough, rank int) {
	inner, outer := false, false
	for _, s := range path {
		var on []segment
		for _, piece := range l.Pieces {
			for _, e := range segments(piece.Outline, true) {
				if x, y := e.at(0.5); s.parallel(e) && s.near(x, y) < close || e.near(s.at(0.5)) < close && s.parallel(e) {
					on, rough = append(on, e), max(rough, piece.RoughCut)
				}
			}
		}
		places := ends(s, on)
		for i := range places[1:] {
			n := 0
			for _, e := range on {
				if e.near(s.at((places[i]+places[i+1])/2)) < close {
					n++
				}
			}
			inner, outer = inner || n == 2, outer || n == 1
		}
	}
	switch {
	case inner && outer:
		return rough, 1
	case inner:
		return rough, 0
	}
	return rough, 2
}

// ends are where along s, from 0 to 1, the edges on it begin and end.
func ends(s segment, on []segment) []float64 {
	places := []float64{0, 1}
	for _, e := range on {
		for _, f := range []float64{0, 1} {
			x, y := e.at(f)
			at := ((x-s.ax)*(s.bx-s.ax) + (y-s.ay)*(s.by-s.ay)) / (s.length() * s.length())
			places = append(places, min(max(at, 0), 1))
		}
	}
	slices.Sort(places)
	return slices.CompactFunc(places, func(a, b float64) bool { return math.Abs(b-a)*s.length() < 10*close })
}

// TestOutlines: one closed path a piece, as the plan has it.
func TestOutlines(t *testing.T) {
	eachLoad(t, func(t *testing.T, q *queue.Queue, l *queue.Load) {
		var left []outline.Outline
		for _, p := range l.Pieces {
			left = append(left, p.Outline)
		}
		for _, g := range drawing.Of(q.List, l, drawing.Options{Outlines: true}).Groups {
			for _, p := range g.Paths {
				found := -1
				for i, o := range left {
					if outline.Same(o, p.Points) {
						found = i
					}
				}
				if found < 0 || !p.Closed {
					t.Fatalf("load %d: %v is no piece's outline", l.Number, p)
				}
				left = append(left[:found], left[found+1:]...)
			}
		}
		if len(left) > 0 {
			t.Errorf("load %d: %d pieces are not drawn", l.Number, len(left))
		}
	})
}

// TestGroups: a fabric's cuts are in its group, named in the cut list's order,
// and the frame is there unless it is left out.
func TestGroups(t *testing.T) {
	eachLoad(t, func(t *testing.T, q *queue.Queue, l *queue.Load) {
		on := map[string]bool{}
		for _, r := range l.RoughCuts {
			on[q.List.Fabrics[r.Fabric].Name] = true
		}
		d := drawing.Of(q.List, l, drawing.Options{NoFrame: true})
		if len(d.Groups) != len(on) || d.Frame != nil {
			t.Errorf("load %d: %d groups for %d fabrics, frame %v", l.Number, len(d.Groups), len(on), d.Frame)
		}
		if with := drawing.Of(q.List, l, drawing.Options{}); len(with.Frame) != 2 || !with.Frame[1].Closed {
			t.Errorf("load %d: the frame is %v", l.Number, with.Frame)
		}
	})
}

// TestSmall holds two squares and a triangle to what they should look like.
func TestSmall(t *testing.T) {
	list, err := cutlist.Read("test", []byte("quilt Small & fine\nunits mm\nmat 100 x 80 usable 90 x 70\nfabric Été <1>\ncut from Été <1>\n2 squares 20"), nil)
	if err != nil {
		t.Fatal(err)
	}
	l := &queue.Load{Number: 3, RoughCuts: []queue.RoughCut{{}}, Pieces: []queue.Placement{
		{Outline: outline.Rect(10_000_000, 10_000_000, 20_000_000, 20_000_000)},
		{Outline: outline.Rect(30_000_000, 10_000_000, 20_000_000, 20_500_001)},
	}}
	d := drawing.Of(list, l, drawing.Options{})
	var svg, dxf bytes.Buffer
	if err := d.SVG(&svg); err != nil {
		t.Fatal(err)
	}
	const want = `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="100mm" height="80mm" viewBox="0 0 100 80">
<title>Small &amp; fine, load 3</title>
<desc>True size, in millimeters.</desc>
<g id="Été-1" fill="none" stroke="#000000" stroke-width="0.1">
<title>Été &lt;1&gt;</title>
<path d="M 30 10 L 30 30.500001"/>
<path d="M 30 30.500001 L 50 30.500001 L 50 10 L 10 10 L 10 30 L 30 30"/>
</g>
<g id="mat" fill="none" stroke="#999999" stroke-width="0.1">
<title>the mat and the part of it the blade reaches: not to be cut</title>
<path d="M 0 0 L 100 0 L 100 80 L 0 80 Z"/>
<path d="M 5 5 L 95 5 L 95 75 L 5 75 Z"/>
</g>
</svg>
`
	if svg.String() != want {
		t.Errorf("got\n%s\nwant\n%s", &svg, want)
	}
	if err := d.DXF(&dxf); err != nil {
		t.Fatal(err)
	}
	for _, part := range []string{"AC1009", "\nLAYER\n  2\nETE-1\n", "LINE\n  8\nETE-1\n 10\n30\n 20\n70\n 30\n0\n 11\n30\n 21\n49.499999\n 31\n0\n"} {
		if !strings.Contains(dxf.String(), part) {
			t.Errorf("the DXF has no %q:\n%s", part, &dxf)
		}
	}
}

// TestFrame: the mat, and the part of it the blade reaches where that is less.
func TestFrame(t *testing.T) {
	for _, c := range []struct {
		mat  string
		want []outline.Outline
	}{
		{"100 x 80 usable 100 x 80", []outline.Outline{outline.Rect(0, 0, 100_000_000, 80_000_000)}},
		{"100 x 80 usable 90 x 80", []outline.Outline{outline.Rect(0, 0, 100_000_000, 80_000_000), outline.Rect(5_000_000, 0, 90_000_000, 80_000_000)}},
		{"100 x 80 usable 100 x 70", []outline.Outline{outline.Rect(0, 0, 100_000_000, 80_000_000), outline.Rect(0, 5_000_000, 100_000_000, 70_000_000)}},
	} {
		list, err := cutlist.Read("test", []byte("quilt Q\nunits mm\nmargin 0\nmat "+c.mat+"\nfabric F\ncut from F\n1 square 20"), nil)
		if err != nil {
			t.Fatal(err)
		}
		var got []outline.Outline
		for _, p := range drawing.Of(list, &queue.Load{}, drawing.Options{}).Frame {
			got = append(got, p.Points)
		}
		if !slices.EqualFunc(got, c.want, slices.Equal) {
			t.Errorf("%s: %v", c.mat, got)
		}
	}
}

// TestColours: layer 0 and the first fabric are black, the others go through the six bright
// colours of the format, and the mat is grey.
func TestColours(t *testing.T) {
	d := drawing.Drawing{Frame: []drawing.Path{}}
	for _, name := range []string{"A", "B", "C", "D", "E", "F", "G", "H"} {
		d.Groups = append(d.Groups, drawing.Group{Name: name})
	}
	var dxf bytes.Buffer
	if err := d.DXF(&dxf); err != nil {
		t.Fatal(err)
	}
	got := ""
	for _, layer := range regexp.MustCompile(`\nLAYER\n  2\n(\w+)\n 70\n0\n 62\n(-?\d+)\n`).FindAllStringSubmatch(dxf.String(), -1) {
		got += layer[1] + layer[2] + " "
	}
	if want := "07 A7 B1 C2 D3 E4 F5 G6 H1 MAT8 "; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

func benchmark(b *testing.B, pieces int) {
	list, err := cutlist.Read("bench", []byte("quilt Q\nfabric F\ncut from F\n1 square 1"), nil)
	if err != nil {
		b.Fatal(err)
	}
	l := &queue.Load{Number: 1, RoughCuts: []queue.RoughCut{{}}}
	for i := range pieces {
		x, y := list.Mat.Width/100*length.Len(i%70), list.Mat.Height/100*length.Len(i/70)
		o := outline.Outline{{X: x, Y: y}, {X: x + list.Mat.Width/100, Y: y}, {X: x, Y: y + list.Mat.Height/100}}
		l.Pieces = append(l.Pieces, queue.Placement{Outline: o})
	}
	b.ReportAllocs()
	for b.Loop() {
		var w bytes.Buffer
		if err := drawing.Of(list, l, drawing.Options{}).SVG(&w); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSVG200(b *testing.B)  { benchmark(b, 200) }
func BenchmarkSVG5000(b *testing.B) { benchmark(b, 5000) }
