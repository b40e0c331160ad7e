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
	var boxes []ruler.Box
	var gone, now []int
	for _, from := range u.RoughCuts {
		b := matpic.PanelBox{Box: ruler.Box{X: from.X, Y: from.Y, W: from.Width, H: from.Height}, Number: from.RoughCut}
		switch load := q.Load(from.Load); {
		case from.Load == f.Load.Number:
			b.When = matpic.Now
			now = append(now, len(boxes))
		case load == nil || load.Done:
			b.When = matpic.Gone
			gone = append(gone, len(boxes))
		}
		boxes, p.Boxes = append(boxes, b.Box), append(p.Boxes, b)
	}
	for _, h := range u.ByHand {
		b := ruler.Box{X: h.X, Y: h.Y, W: h.Width, H: h.Height}
		boxes, p.Boxes = append(boxes, b), append(p.Boxes, matpic.PanelBox{Box: b})
	}
	p.Cuts = ruler.Cuts(u.Width, u.Height, boxes, gone, now)
	return p, true
}

// StraightCuts says the straight cuts of a panel in order.
func StraightCuts(w words.Words, p matpic.Panel) []string {
	var said []string
	for i, c := range p.Cuts {
		say := w.CutAlong
		if c.Across {
			say = w.CutAcross
		}
		said = append(said, say(i+1, p.Say(c.At)))
	}
	return said
}

// PanelLegend names the panel of a rough cut.
func PanelLegend(w words.Words, q *session.Quilt, f Facts, rough int) string {
	u, _ := use(q, f, rough)
	return w.PanelLegend(f.List.Fabrics[u.Fabric].Name, u.Panel, w.Size(u.Width, u.Height, f.Unit))
}
