package pack

import (
	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
)

// sheets packs pieces of one fabric, want[k] of each kind, into as few boxes
// of at most w x h as it can, each one a group at 0,0. Fussy pieces are not
// meant for it.
func (j *Job) sheets(fabric int, want []int, w, h length.Len) ([]Group, error) {
	bs := j.blocks(want)
	bins, err := rect.Pack(w+j.List.Gap, h+j.List.Gap, j.sizes(bs), j.options())
	if err != nil {
		return nil, err
	}
	out := make([]Group, len(bins))
	for i, b := range bins {
		out[i] = j.group(fabric, bs, b)
	}
	return out, nil
}

func (j *Job) options() rect.Options { return rect.Options{Effort: j.Effort, Stop: j.Stop} }

// sizes are blocks as the rectangle core wants them: each with the gap at its
// right and below, so that it keeps apart from the next.
func (j *Job) sizes(bs []block) []rect.Size {
	g := j.List.Gap
	out := make([]rect.Size, len(bs))
	for i, b := range bs {
		out[i] = rect.Size{W: b.w + g, H: b.h + g, Turn: b.turn, Count: b.count}
	}
	return out
}

// group takes the blocks of a bin apart into pieces.
func (j *Job) group(fabric int, bs []block, bin rect.Bin) Group {
	g := Group{Fabric: fabric}
	for _, p := range bin {
		b := &bs[p.Size]
		for _, part := range b.parts {
			if p.Turned {
				part = j.quarterTurned(part, b.w)
			}
			part.X += p.X
			part.Y += p.Y
			g.Parts = append(g.Parts, part)
		}
	}
	j.tighten(&g)
	return g
}

// quarterTurned is a part of a block w wide after the block has been turned
// by a quarter, counter-clockwise.
func (j *Job) quarterTurned(p Part, w length.Len) Part {
	pw, _ := j.size(p)
	return Part{Kind: p.Kind, Turn: (p.Turn + quarter) % (4 * quarter), X: p.Y, Y: w - p.X - pw}
}

// tighten moves the parts so that their box starts at 0,0, and measures it.
func (j *Job) tighten(g *Group) {
	var x0, y0, x1, y1 length.Len
	for i, p := range g.Parts {
		w, h := j.size(p)
		if i == 0 {
			x0, y0, x1, y1 = p.X, p.Y, p.X+w, p.Y+h
			continue
		}
		x0, y0, x1, y1 = min(x0, p.X), min(y0, p.Y), max(x1, p.X+w), max(y1, p.Y+h)
	}
	for i := range g.Parts {
		g.Parts[i].X -= x0
		g.Parts[i].Y -= y0
	}
	g.W, g.H = x1-x0, y1-y0
}
