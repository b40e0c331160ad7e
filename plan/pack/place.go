package pack

import (
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// Part is one piece of a kind, with the top left corner of its box at X, Y
// in the frame of what it is part of.
type Part struct {
	Kind int
	Turn int // micro-degrees counter-clockwise as seen on the mat
	X, Y length.Len
}

// Group is the pieces of one rough cut. Its box, W x H, is theirs; the rough
// cut is that box with the margin round it.
type Group struct {
	Fabric     int
	X, Y, W, H length.Len // X, Y on the mat
	Parts      []Part     // in the group's own frame
}

// Mat is one load.
type Mat struct{ Groups []Group }

const quarter = outline.QuarterTurn

// Lay gives the outline of a part of a group at gx, gy.
func (j *Job) Lay(p Part, gx, gy length.Len) outline.Outline {
	return j.Kinds[p.Kind].at(p.Turn).Move(gx+p.X, gy+p.Y)
}

// at is the kind's outline at a turn, its box at 0,0.
func (k *Kind) at(turn int) outline.Outline {
	if turn%quarter == 0 && k.quarters != nil {
		return k.quarters[turn/quarter]
	}
	return k.base.Turn(turn).Normalise()
}

// size is the size of a part's box.
func (j *Job) size(p Part) (w, h length.Len) {
	k := &j.Kinds[p.Kind]
	switch {
	case p.Turn%(2*quarter) == 0:
		return k.W, k.H
	case p.Turn%quarter == 0:
		return k.H, k.W
	}
	b := k.at(p.Turn).Bounds()
	return b.Width(), b.Height()
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
