package check

import (
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// box is a small rectangle for searching by hand.
type box struct{ x, y, w, h int }

func (b box) hitsAny(others []box) bool {
	for _, o := range others {
		if b.x < o.x+o.w && o.x < b.x+b.w && b.y < o.y+o.h && o.y < b.y+b.h {
			return true
		}
	}
	return false
}

func asBoxes(boxes []box) (out []outline.Box) {
	for _, b := range boxes {
		out = append(out, outline.NewBox(length.Len(b.x), length.Len(b.y), length.Len(b.w), length.Len(b.h)))
	}
	return out
}

// freed tries every cut, one after another, and all that may follow it.
func freed(boxes []box) bool {
	if len(boxes) < 2 {
		return true
	}
	for at := range 9 {
		for _, across := range []bool{true, false} {
			if a, b, ok := parted(boxes, at, across); ok && len(a) > 0 && len(b) > 0 && freed(a) && freed(b) {
				return true
			}
		}
	}
	return false
}

// parted is the boxes on either side of a cut, if it meets none of them.
func parted(boxes []box, at int, across bool) (a, b []box, ok bool) {
	for _, x := range boxes {
		from, to := x.y, x.y+x.h
		if across {
			from, to = x.x, x.x+x.w
		}
		switch {
		case to <= at:
			a = append(a, x)
		case from >= at:
			b = append(b, x)
		default:
			return nil, nil, false
		}
	}
	return a, b, true
}
