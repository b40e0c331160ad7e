package check

import (
	"math"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
)

const inch = length.Inch

// in is x inches; eighths come out exactly.
func in(x float64) length.Len { return length.Len(math.Round(x * float64(inch))) }

// The fabrics and lines of the good list, by name.
const (
	ink  = iota // one panel that is just too short for the last square
	sand        // to be bought, shrinks
	sail        // two panels, one-way, face down
)

const (
	squares = iota // four in a block, sharing cuts
	halves         // two half-square triangles back to back
	lengths        // two rectangles lengthwise, one half turned
	sails          // a half-rectangle triangle, mirrored
	motif          // a fussy square
	border         // by hand, turned
	strip
	binding
	hexagons // any grain, turned by 30 degrees
	large    // three squares, one of them short
	singles  // two squares, a load each, from one drawing
)

func goodList() *cutlist.List {
	triangle := func(w, h float64) outline.Outline {
		return outline.Outline{{X: 0, Y: 0}, {X: in(w), Y: in(h)}, {X: 0, Y: in(h)}}
	}
	rect := func(w, h float64) outline.Outline { return outline.Rect(0, 0, in(w), in(h)) }
	third := in(math.Sqrt(3) / 2)
	hexagon := outline.Outline{{X: in(0.5), Y: 0}, {X: in(1.5), Y: 0}, {X: in(2), Y: third},
		{X: in(1.5), Y: 2 * third}, {X: in(0.5), Y: 2 * third}, {X: 0, Y: third}}
	l := &cutlist.List{
		Quilt:  "Good",
		Margin: in(0.25),
		Mat:    cutlist.Mat{Width: in(12), Height: in(12), UsableWidth: in(11), UsableHeight: in(11)},
		Fabrics: []cutlist.Fabric{
			ink:  {Name: "Ink", Stock: []cutlist.Panel{{Width: in(42), Height: in(13.5)}}},
			sand: {Name: "Sand", ShrinkAlong: 30_000},
			sail: {Name: "Sail", OneWay: true, FaceDown: true, Stock: []cutlist.Panel{{Width: in(18), Height: in(21)}, {Width: in(18), Height: in(21)}}},
		},
		Lines: []cutlist.Line{
			squares:  {Fabric: ink, Count: 4, Shape: "square", Outline: rect(2, 2)},
			halves:   {Fabric: ink, Count: 2, Shape: "half-square triangle", Outline: triangle(3, 3)},
			lengths:  {Fabric: sand, Count: 2, Shape: "rectangle", Outline: rect(2, 3), Grain: cutlist.Lengthwise},
			sails:    {Fabric: sail, Count: 1, Shape: "half-rectangle triangle", Outline: triangle(2, 3)},
			motif:    {Fabric: sand, Count: 1, Shape: "square", Outline: rect(2, 2), Grain: cutlist.Crosswise, Fussy: true},
			border:   {Fabric: ink, Kind: cutlist.ByHand, Count: 1, Shape: "rectangle", Outline: rect(4, 30)},
			strip:    {Fabric: ink, Kind: cutlist.Strips, Count: 2, Shape: "strip", StripWidth: in(2)},
			binding:  {Fabric: sand, Kind: cutlist.Binding, Shape: "binding", StripWidth: in(2.5), Length: in(100)},
			hexagons: {Fabric: ink, Count: 2, Shape: "hexagon", Outline: hexagon, Grain: cutlist.AnyGrain},
			large:    {Fabric: ink, Count: 3, Shape: "square", Outline: rect(5, 5)},
			singles:  {Fabric: ink, Count: 2, Shape: "square", Outline: rect(2, 2)},
		},
	}
	for i := range l.Lines {
		l.Lines[i].Number = i + 10
	}
	return l
}

// put is a placement with the top left corner of its bounding box at x, y.
func put(l *cutlist.List, line, copy, rough int, x, y float64, turn int) queue.Placement {
	p := queue.Placement{Line: line, Copy: copy, RoughCut: rough, Turn: turn, Mirrored: l.Fabrics[l.Lines[line].Fabric].FaceDown}
	lay(l, &p, in(x), in(y))
	return p
}

// lay gives a placement the outline that its turn and mirroring ask for.
func lay(l *cutlist.List, p *queue.Placement, x, y length.Len) {
	o := l.Lines[p.Line].Outline
	if p.Mirrored {
		o = o.Mirror()
	}
	p.Outline = o.Turn(p.Turn).Normalise().Move(x, y)
}

func rough(fabric, panel int, x, y, w, h float64) queue.RoughCut {
	return queue.RoughCut{Fabric: fabric, Panel: panel, X: in(x), Y: in(y), Width: in(w), Height: in(h)}
}

func from(load, rough int, x, y, w, h float64) queue.FromPanel {
	return queue.FromPanel{Load: load, RoughCut: rough, X: in(x), Y: in(y), Width: in(w), Height: in(h)}
}

func hand(line, copy int, x, y, w, h float64) queue.HandCut {
	return queue.HandCut{Line: line, Copy: copy, X: in(x), Y: in(y), Width: in(w), Height: in(h)}
}

// good is a plan without a fault, and with as little to spare as can be: margins,
// the usable part, shared cuts and panels are all met to the nanometre. The
// lengths of its cuts are added up by hand.
func good() *queue.Queue {
	l := goodList()
	half := 2 * outline.QuarterTurn
	single := func(n int) queue.Load {
		return queue.Load{Number: n, Layout: 3, CutLength: in(8),
			RoughCuts: []queue.RoughCut{rough(ink, 1, 0.25, 0.25, 2.5, 2.5)},
			Pieces:    []queue.Placement{put(l, singles, n-2, 0, 0.5, 0.5, 0)}}
	}
	return &queue.Queue{
		List: l,
		Loads: []queue.Load{
			{Number: 1, Layout: 1,
				RoughCuts: []queue.RoughCut{
					rough(ink, 1, 0.25, 0.25, 4.5, 4.5), rough(ink, 1, 4.75, 0.25, 3.5, 3.5), rough(ink, 1, 0.25, 5.25, 4.75, 2.5)},
				Pieces: []queue.Placement{
					put(l, squares, 1, 0, 0.5, 0.5, 0), put(l, squares, 2, 0, 2.5, 0.5, 0),
					put(l, squares, 3, 0, 0.5, 2.5, outline.QuarterTurn), put(l, squares, 4, 0, 2.5, 2.5, half),
					put(l, halves, 1, 1, 5, 0.5, 0), put(l, halves, 2, 1, 5, 0.5, half),
					put(l, hexagons, 1, 2, 0.5, 5.5, 30*outline.Degree), put(l, hexagons, 2, 2, 3, 5.5, 30*outline.Degree)},
				// Six lines of 4, four of 3, a diagonal and two hexagons with sides of 1.
				CutLength: in(6*4 + 4*3 + 3*math.Sqrt2 + 12)},
			{Number: 2, Layout: 2,
				RoughCuts: []queue.RoughCut{
					rough(sand, 1, 0.25, 0.25, 4.5, 3.5), rough(sand, 1, 5, 0.25, 2.5, 2.5),
					rough(sail, 2, 7.5, 0.25, 2.5, 3.5), rough(ink, 1, 0.25, 5.75, 10.5, 5.5)},
				Pieces: []queue.Placement{
					put(l, lengths, 1, 0, 0.5, 0.5, 0), put(l, lengths, 2, 0, 2.5, 0.5, half),
					put(l, motif, 1, 1, 5.25, 0.5, 0), put(l, sails, 1, 2, 7.75, 0.5, 0),
					put(l, large, 1, 3, 0.5, 6, 0), put(l, large, 2, 3, 5.5, 6, 0)},
				CutLength: in(2*4 + 3*3 + 8 + 2 + 3 + math.Sqrt(13) + 2*10 + 3*5)},
			single(3), single(4),
		},
		Stock: []queue.PanelUse{
			{Fabric: ink, Panel: 1, Width: in(42), Height: in(13.5),
				RoughCuts: []queue.FromPanel{from(2, 3, 0, 8, 10.5, 5.5), from(1, 0, 11, 8, 4.5, 4.5), from(1, 1, 16, 8, 3.5, 3.5),
					from(1, 2, 20, 8, 4.75, 2.5), from(3, 0, 25, 8, 2.5, 2.5), from(4, 0, 28, 8, 2.5, 2.5)},
				ByHand: []queue.HandCut{hand(strip, 1, 0, 0, 42, 2), hand(strip, 2, 0, 2, 42, 2), hand(border, 1, 0, 4, 30, 4)}},
			{Fabric: sand, Panel: 1, Width: in(40), Height: washedSand(13.5),
				RoughCuts: []queue.FromPanel{from(2, 0, 0, 7.5, 4.5, 3.5), from(2, 1, 5, 7.5, 2.5, 2.5)},
				ByHand:    []queue.HandCut{hand(binding, 1, 0, 0, 40, 2.5), hand(binding, 2, 0, 2.5, 40, 2.5), hand(binding, 3, 0, 5, 40, 2.5)}},
			{Fabric: sail, Panel: 2, Width: in(18), Height: in(21), RoughCuts: []queue.FromPanel{from(2, 2, 0, 0, 2.5, 3.5)}},
		},
		Buy:    []queue.Buy{{Fabric: sand, Width: in(40), Length: in(13.5)}},
		Short:  []queue.Short{{Fabric: ink, Missing: []int{large: 1, singles: 0}, Length: in(5.5)}},
		Fewest: queue.Fewest{Loads: 3},
	}
}

// washedSand is what is left of x inches of sand less 3 %.
func washedSand(x float64) length.Len { return in(x) / 100 * 97 }
