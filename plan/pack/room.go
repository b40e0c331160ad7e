package pack

import (
	"cmp"
	"slices"

	"example.org/matside/plan/length"
)

// box is an upright rectangle, its top left corner at x, y.
type box struct{ x, y, w, h length.Len }

// tenth is the unit of the areas that the search compares by: a square tenth
// of a millimetre, so that they fit an int64 for anything a mat can be. They
// guide only; whether pieces overlap is decided in nanometres.
const tenth = length.TenthMM

func square(w, h length.Len) int64 { return int64(w/tenth) * int64(h/tenth) }

func (b box) area() int64 { return square(b.w, b.h) }

func (b box) contains(o box) bool {
	return b.x <= o.x && b.y <= o.y && b.x+b.w >= o.x+o.w && b.y+b.h >= o.y+o.h
}

// rooms are the largest free rectangles of a mat where another group may
// lie, the largest first. They may overlap each other.
func (j *Job) rooms(m *Mat) []box {
	rooms := []box{{j.X, j.Y, j.W, j.H}}
	for _, g := range m.Groups {
		rooms = without(rooms, box{g.X - j.Apart, g.Y - j.Apart, g.W + 2*j.Apart, g.H + 2*j.Apart})
	}
	slices.SortStableFunc(rooms, func(a, b box) int { return cmp.Compare(b.area(), a.area()) })
	return rooms
}

// without takes t out of free rectangles, as the maximal-rectangles method
// does (Jylänki 2010, from memory).
func without(rooms []box, t box) []box {
	var out []box
	keep := func(b box) {
		if b.w > 0 && b.h > 0 {
			out = append(out, b)
		}
	}
	for _, r := range rooms {
		if t.x+t.w <= r.x || t.x >= r.x+r.w || t.y+t.h <= r.y || t.y >= r.y+r.h {
			keep(r)
			continue
		}
		keep(box{r.x, r.y, t.x - r.x, r.h})
		keep(box{t.x + t.w, r.y, r.x + r.w - t.x - t.w, r.h})
		keep(box{r.x, r.y, r.w, t.y - r.y})
		keep(box{r.x, t.y + t.h, r.w, r.y + r.h - t.y - t.h})
	}
	return maximal(out)
}

// maximal drops rectangles that lie in others.
func maximal(all []box) []box {
	var out []box
	for i, b := range all {
		inside := false
		for k, o := range all {
			inside = inside || k != i && o.contains(b) && (k < i || o != b)
		}
		if !inside {
			out = append(out, b)
		}
	}
	return out
}
