package pack

import (
	"slices"

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
	Rigid      bool       // its size suits a panel: not to be taken apart
}

// Mat is one load.
type Mat struct{ Groups []Group }

// quarter is a quarter turn in the measure of Part.Turn.
const quarter = 90_000_000

// extent gives the size of an outline's bounding box.
func extent(o outline.Outline) (w, h length.Len) {
	x0, y0, x1, y1 := bounds(o)
	return x1 - x0, y1 - y0
}

func bounds(o outline.Outline) (x0, y0, x1, y1 length.Len) {
	x0, y0, x1, y1 = o[0].X, o[0].Y, o[0].X, o[0].Y
	for _, p := range o[1:] {
		x0, x1 = min(x0, p.X), max(x1, p.X)
		y0, y1 = min(y0, p.Y), max(y1, p.Y)
	}
	return
}

// toOrigin moves o, in place, so that its bounding box starts at 0,0.
func toOrigin(o outline.Outline) outline.Outline {
	x0, y0, _, _ := bounds(o)
	for i := range o {
		o[i].X -= x0
		o[i].Y -= y0
	}
	return o
}

// mirrored is o seen from its other side, left to right; its corners are
// reversed so that they still run clockwise.
func mirrored(o outline.Outline) outline.Outline {
	m := slices.Clone(o)
	for i := range m {
		m[i].X = -m[i].X
	}
	slices.Reverse(m)
	return toOrigin(m)
}

// turned is o after a number of quarter turns counter-clockwise as seen on
// the mat, where y runs down.
func turned(o outline.Outline, quarters int) outline.Outline {
	t := slices.Clone(o)
	for range quarters & 3 {
		for i, p := range t {
			t[i] = outline.Point{X: p.Y, Y: -p.X}
		}
	}
	return toOrigin(t)
}

// Lay gives the outline of a part of a group at gx, gy.
func (j *Job) Lay(p Part, gx, gy length.Len) outline.Outline {
	o := turned(j.Kinds[p.Kind].Outline, p.Turn/quarter)
	for i := range o {
		o[i].X += gx + p.X
		o[i].Y += gy + p.Y
	}
	return o
}

// size is the size of a part's box.
func (j *Job) size(p Part) (w, h length.Len) {
	k := &j.Kinds[p.Kind]
	if p.Turn%(2*quarter) != 0 {
		return k.H, k.W
	}
	return k.W, k.H
}
