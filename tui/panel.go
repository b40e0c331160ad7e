package tui

import (
	"example.org/matside/plan/length"
	"example.org/matside/plan/queue"
	"example.org/matside/session"
	"example.org/matside/tui/guide"
	"example.org/matside/tui/matpic"
	"example.org/matside/tui/ruler"
)

// length writes a length in the unit she has.
func (v view) length(l length.Len) string { return v.words.Length(l, v.unit()) }

// cut is the rough cut looked at.
func (s walk) cut(f guide.Facts) int { return min(s.rough, len(f.Load.RoughCuts)-1) }

// use finds the panel a rough cut of the load in hand comes out of.
func (v view) use(f guide.Facts, rough int) (queue.PanelUse, bool) {
	r := f.Load.RoughCuts[rough]
	for _, u := range v.quilt.Stock {
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

// panel is the panel of the rough cut looked at, with all that comes out of
// it and the straight cuts to make now.
func (s walk) panel(v view, f guide.Facts) (matpic.Panel, bool) {
	u, ok := v.use(f, s.cut(f))
	if !ok {
		return matpic.Panel{}, false
	}
	p := matpic.Panel{Fabric: u.Fabric, Width: u.Width, Height: u.Height, Say: v.length}
	var boxes []ruler.Box
	var gone, now []int
	for _, from := range u.RoughCuts {
		b := matpic.PanelBox{Box: ruler.Box{X: from.X, Y: from.Y, W: from.Width, H: from.Height}, Number: from.RoughCut}
		switch load := v.quilt.Load(from.Load); {
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

// straightCuts says the straight cuts in order.
func (s walk) straightCuts(v view, f guide.Facts) []line {
	if f.Step != session.Fabric {
		return nil
	}
	p, ok := s.panel(v, f)
	if !ok {
		return nil
	}
	var lines []line
	for i, c := range p.Cuts {
		say := v.words.CutAlong
		if c.Across {
			say = v.words.CutAcross
		}
		lines = append(lines, line{say(i+1, v.length(c.At)), text})
	}
	return lines
}

// panelLegend names the panel.
func (v view) panelLegend(f guide.Facts, rough int) string {
	u, _ := v.use(f, rough)
	return v.words.PanelLegend(f.List.Fabrics[u.Fabric].Name, u.Panel, v.words.Size(u.Width, u.Height, f.Unit))
}
