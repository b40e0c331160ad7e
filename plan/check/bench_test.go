package check

import (
	"testing"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/queue"
)

// many is a plan of count pieces of one shape, rows by cols to a load, each
// load one rough cut out of one long panel.
func many(shape outline.Outline, turn, count, cols, rows int) *queue.Queue {
	size := shape.Bounds().Max
	l := &cutlist.List{Quilt: "Many", Mat: cutlist.Mat{Width: in(12), Height: in(12), UsableWidth: in(11), UsableHeight: in(11)},
		Margin:  in(0.25),
		Fabrics: []cutlist.Fabric{{Name: "Ink"}},
		Lines:   []cutlist.Line{{Number: 1, Count: count, Shape: "piece", Outline: shape}}}
	q := &queue.Queue{List: l}
	w, h := length.Len(cols)*size.X+in(0.5), length.Len(rows)*size.Y+in(0.5)
	panel := queue.PanelUse{Panel: 1, Width: in(40)}
	perRow := int(in(40) / w)
	for made := 0; made < count; {
		n := len(q.Loads)
		load := queue.Load{Number: n + 1, Layout: n + 1, RoughCuts: []queue.RoughCut{{Panel: 1, X: in(0.25), Y: in(0.25), Width: w, Height: h}}}
		for k := 0; k < cols*rows && made < count; k++ {
			made++
			p := queue.Placement{Copy: made, Turn: turn * (k % 4)}
			lay(l, &p, in(0.5)+length.Len(k%cols)*size.X, in(0.5)+length.Len(k/cols)*size.Y)
			load.Pieces = append(load.Pieces, p)
		}
		q.Loads = append(q.Loads, load)
		panel.RoughCuts = append(panel.RoughCuts, queue.FromPanel{Load: n + 1, X: length.Len(n%perRow) * w, Y: length.Len(n/perRow) * h, Width: w, Height: h})
		panel.Height = max(panel.Height, length.Len(n/perRow+1)*h)
	}
	step := length.Yard / 8
	panel.Height = (panel.Height + step - 1) / step * step
	q.Stock = []queue.PanelUse{panel}
	q.Buy = []queue.Buy{{Width: in(40), Length: panel.Height}}
	for _, f := range Check(q) { // nothing but what a bench need not know
		if f.Kind != CutLength && f.Kind != Fewest {
			panic(f.String())
		}
	}
	return q
}

// circle is about a circle, with its corners inside the line.
func circle(diameter length.Len, corners int) (o outline.Outline) {
	for i := range corners {
		o = append(o, outline.Outline{{X: diameter / 2}}.Turn(-outline.FullTurn/corners*i)...)
	}
	return o.Normalise()
}

func BenchmarkCheck(b *testing.B) {
	cases := []struct {
		name  string
		queue *queue.Queue
	}{
		{"5000 squares 2 in", many(outline.Rect(0, 0, in(2), in(2)), outline.QuarterTurn, 5000, 5, 5)},
		{"5000 squares half in", many(outline.Rect(0, 0, in(0.5), in(0.5)), outline.QuarterTurn, 5000, 22, 22)},
		{"5000 triangles", many(outline.Outline{{X: 0, Y: 0}, {X: in(2), Y: in(2)}, {X: 0, Y: in(2)}}, outline.QuarterTurn, 5000, 5, 5)},
		{"5000 circles of 112 corners", many(circle(in(2), 112), outline.QuarterTurn, 5000, 5, 5)},
	}
	for _, c := range cases {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				Check(c.queue)
			}
		})
	}
}
