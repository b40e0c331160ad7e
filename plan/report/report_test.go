package report

import (
	"bytes"
	"flag"
	"io"
	"os"
	"path/filepath"
	"testing"

	"example.org/matside/plan/check"
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
)

var update = flag.Bool("update", false, "write the golden files anew")

const in = length.Inch

// lampRoom is a plan made by hand in which there is some of everything: loads
// alike, two fabrics on a mat, a fabric to buy, one that falls short and one
// that nothing is cut from, binding, strips and a border.
func lampRoom(t *testing.T) *queue.Queue {
	t.Helper()
	list, err := cutlist.Read("lamp-room.cutlist", []byte(`quilt Lamp Room
fabric Ink
fabric Sand, 18 x 21, shrinks 3% x 5%
fabric Rust
cut from Ink
9 squares 2 1/2 for A
2 half-square triangles 3
binding 2 1/2 around 10 x 10 for edge
2 strips 2
cut from Sand
3 rectangles 3 x 6, any grain
1 rectangle 4 x 12 for border, by hand
2 quarter circles 2 for moon
`), nil)
	if err != nil {
		t.Fatal(err)
	}
	const ink, sand = 0, 1
	const squares, triangles, binding, strips, rectangles, border, moons = 0, 1, 2, 3, 4, 5, 6
	lay := func(line, copy, rough, turn int, x, y length.Len) queue.Placement {
		return queue.Placement{Line: line, Copy: copy, RoughCut: rough, Turn: turn * outline.QuarterTurn,
			Outline: list.Lines[line].Outline.Turn(turn*outline.QuarterTurn).Normalise().Move(x, y)}
	}
	four := func(number, first int) queue.Load {
		l := queue.Load{Number: number, Layout: 1, CutLength: 30 * in, RoughCuts: []queue.RoughCut{
			{Fabric: ink, Panel: 1, X: in / 2, Y: in / 2, Width: 11 * in / 2, Height: 11 * in / 2}}}
		for i := range 4 {
			l.Pieces = append(l.Pieces, lay(squares, first+i, 0, 0, 3*in/4+length.Len(i%2)*5*in/2, 3*in/4+length.Len(i/2)*5*in/2))
		}
		return l
	}
	last := queue.Load{Number: 3, Layout: 2, CutLength: 99*in/2 + 107_763_073, RoughCuts: []queue.RoughCut{
		{Fabric: ink, Panel: 1, X: in / 4, Y: in / 4, Width: 6 * in, Height: 7 * in / 2},
		{Fabric: sand, Panel: 1, X: in / 4, Y: 15 * in / 4, Width: 13 * in / 2, Height: 13 * in / 2}},
		Pieces: []queue.Placement{lay(squares, 9, 0, 0, in/2, in/2), lay(triangles, 1, 0, 0, 3*in, in/2), lay(triangles, 2, 0, 2, 3*in, in/2),
			lay(rectangles, 1, 1, 0, in/2, 4*in), lay(rectangles, 2, 1, 0, 7*in/2, 4*in)}}
	from := func(load, rough int, x, y, w, h length.Len) queue.FromPanel {
		return queue.FromPanel{Load: load, RoughCut: rough, X: x, Y: y, Width: w, Height: h}
	}
	hand := func(line, copy int, x, y, w, h length.Len) queue.HandCut {
		return queue.HandCut{Line: line, Copy: copy, X: x, Y: y, Width: w, Height: h}
	}
	q := &queue.Queue{List: list, Loads: []queue.Load{four(1, 1), four(2, 5), last},
		Stock: []queue.PanelUse{
			{Fabric: ink, Panel: 1, Width: 40 * in, Height: 18 * in, RoughCuts: []queue.FromPanel{
				from(1, 0, 0, 9*in, 11*in/2, 11*in/2), from(2, 0, 11*in/2, 9*in, 11*in/2, 11*in/2), from(3, 0, 11*in, 9*in, 6*in, 7*in/2)},
				ByHand: []queue.HandCut{hand(binding, 1, 0, 0, 40*in, 5*in/2), hand(binding, 2, 0, 5*in/2, 40*in, 5*in/2),
					hand(strips, 1, 0, 5*in, 40*in, 2*in), hand(strips, 2, 0, 7*in, 40*in, 2*in)}},
			{Fabric: sand, Panel: 1, Width: 443_484_000, Height: 506_730_000,
				RoughCuts: []queue.FromPanel{from(3, 1, 4*in, 0, 13*in/2, 13*in/2)}, ByHand: []queue.HandCut{hand(border, 1, 0, 0, 4*in, 12*in)}}},
		Buy:    []queue.Buy{{Fabric: ink, Width: 40 * in, Length: 18 * in}},
		Short:  []queue.Short{{Fabric: sand, Missing: []int{rectangles: 1, border: 0, moons: 2}, Length: 10 * in}},
		Fewest: queue.Fewest{Loads: 2}}
	for _, f := range check.Check(q) {
		t.Errorf("the plan made by hand: %v", f)
	}
	return q
}

// TestReports holds each report of one plan to its file, byte for byte.
func TestReports(t *testing.T) {
	q := lampRoom(t)
	metric := *q.List
	metric.Unit, metric.Margin = length.Cm, 0
	other := *q
	other.List, other.Short, other.Fewest = &metric, nil, queue.Fewest{Loads: 3, Proved: true}
	fewer := *q
	fewer.Loads, fewer.Buy = q.Loads[:2], []queue.Buy{{Fabric: 0, Width: 40 * in, Length: 27 * in}, {Fabric: 2, Width: 40 * in, Length: 9 * in}}
	none := queue.Queue{List: q.List}
	for name, write := range map[string]func(io.Writer) error{
		"plan.txt":        func(w io.Writer) error { return Text(w, q) },
		"plan-metric.txt": func(w io.Writer) error { return Text(w, &other) },
		"plan.json":       func(w io.Writer) error { return JSON(w, q) },
		"fabric.txt":      func(w io.Writer) error { return Fabric(w, q) },
		"fabric-none.txt": func(w io.Writer) error { return Fabric(w, &none) },
		"trade.txt":       func(w io.Writer) error { return Trade(w, []*queue.Queue{&fewer, q}) },
		"trade-one.txt":   func(w io.Writer) error { return Trade(w, []*queue.Queue{q}) },
		"trade.json":      func(w io.Writer) error { return TradeJSON(w, []*queue.Queue{&fewer, q}) },
	} {
		var got bytes.Buffer
		if err := write(&got); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		golden := filepath.Join("testdata", name)
		if *update {
			if err := os.WriteFile(golden, got.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(golden)
		if err != nil || !bytes.Equal(got.Bytes(), want) {
			t.Errorf("%s: %v\n%s", name, err, got.Bytes())
		}
	}
}
