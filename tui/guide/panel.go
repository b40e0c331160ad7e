package guide

import (
	"example.org/matside/plan/length"
	"example.org/matside/plan/queue"
	"example.org/matside/session"
	"example.org/matside/tui/matpic"
	"example.org/matside/tui/ruler"
	"example.org/matside/tui/words"
)

// use finds the panel that a rough cut of the load in hand comes out of.
func use(q *session.Quilt, f Facts, rough int) (queue.PanelUse, bool) {
	r := f.Load.RoughCuts[rough]
	for _, u := range q.Stock {
		if u.Fabric != r.Fabric || u.Panel != r.Panel {
			continue
		}
		for _, from := range u.RoughCuts {
			if from.Load == f.Load.Number && from.RoughCut == rough {
				return u, true
			}
		}
	}
	return queue.PanelUse{}, false
}

// Panel is the panel that a rough cut of the load in hand comes out of, with
// all that comes out of it and the straight cuts to make now.
func Panel(q *session.Quilt, f Facts, rough int, say func(length.Len) string) (matpic.Panel, bool) {
	u, ok := use(q, f, rough)
	if !ok {
		return matpic.Panel{}, false
	}
	p := matpic.Panel{Fabric: u.Fabric, Width: u.Width, Height: u.Height, Say: say}
	for _, from := range u.RoughCuts {
		b := matpic.PanelBox{Box: ruler.Box{X: from.X, Y: from.Y, W: from.Width, H: from.Height}, Rough: from.RoughCut}
		switch load := q.Load(from.Load); {
		case from.Load == f.Load.Number:
			b.When = matpic.Now
			if len(f.Load.RoughCuts) > 1 {
				b.Number = from.RoughCut + 1
			}
		case load == nil || load.Done:
			b.When = matpic.Gone
		}
		p.Boxes = append(p.Boxes, b)
	}
	for _, h := range u.ByHand {
		p.Boxes = append(p.Boxes, matpic.PanelBox{Box: ruler.Box{X: h.X, Y: h.Y, W: h.Width, H: h.Height}})
	}
	p.Cuts = cutsNow(p, func(matpic.PanelBox) bool { return true })
	return p, true
}

// cutsNow are the straight cuts that free those boxes of the load in hand
// that are asked for, when those of the loads before are made.
func cutsNow(p matpic.Panel, asked func(matpic.PanelBox) bool) []ruler.Cut {
	var boxes []ruler.Box
	var gone, now []int
	for i, b := range p.Boxes {
		boxes = append(boxes, b.Box)
		switch {
		case b.When == matpic.Gone:
			gone = append(gone, i)
		case b.When == matpic.Now && asked(b):
			now = append(now, i)
		}
	}
	return ruler.Cuts(p.Width, p.Height, boxes, gone, now)
}

// ready reports whether a rough cut of the load in hand lies free already: no
// cut is left between it and the rest of its panel.
func ready(q *session.Quilt, f Facts, rough int) bool {
	p, ok := Panel(q, f, rough, nil)
	return ok && len(cutsNow(p, func(b matpic.PanelBox) bool { return b.Rough == rough })) == 0
}

// StraightCuts says the straight cuts of a panel in order, those that repeat
// the one before together with it.
func StraightCuts(w words.Words, p matpic.Panel) []string {
	var said []string
	for first := 0; first < len(p.Cuts); {
		next := first + 1
		for next < len(p.Cuts) && p.Cuts[next].Repeats(p.Cuts[next-1]) {
			next++
		}
		say := w.CutAlong
		if p.Cuts[first].Across {
			say = w.CutAcross
		}
		said = append(said, say(first+1, next, p.Say(p.Cuts[first].At)))
		first = next
	}
	return said
}

// PanelLegend names the panel of a rough cut.
func PanelLegend(w words.Words, q *session.Quilt, f Facts, rough int) string {
	u, _ := use(q, f, rough)
	return w.PanelLegend(f.List.Fabrics[u.Fabric].Name, u.Panel, w.Size(u.Width, u.Height, f.Unit))
}
