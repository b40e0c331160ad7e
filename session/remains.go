package session

import (
	"cmp"
	"slices"

	"example.org/matside/plan/length"
	"example.org/matside/plan/queue"
)

// Remnant is a rectangle that is left of a panel.
type Remnant struct {
	Fabric, Panel       int // as in queue.PanelUse
	X, Y, Width, Height length.Len
}

// What is worth keeping: our own choice, a strip of 2 1/2 in that is 10 in
// long, or as much in another shape.
const (
	keepNarrow = 5 * length.Inch / 2
	keepLong   = 10 * length.Inch
)

// Worth says whether it is worth keeping for the next quilt.
func (r Remnant) Worth() bool {
	return min(r.Width, r.Height) >= keepNarrow && max(r.Width, r.Height) >= keepLong
}

// Remains are what is left of each panel now: less the rough cuts of the loads
// begun and what is cut by hand. With all, less those to come too: what will
// be left in the end. The largest rectangle comes first, then the largest in
// what is left beside it, and so on; they don't overlap.
func (q *Quilt) Remains(all bool) []Remnant {
	var out []Remnant
	for _, u := range q.Stock {
		out = append(out, q.remainsOf(u, all)...)
	}
	return out
}

// box is a rectangle from one corner to the other.
type box struct{ x1, y1, x2, y2 length.Len }

func (b box) empty() bool { return b.x1 >= b.x2 || b.y1 >= b.y2 }

func (b box) overlaps(o box) bool { return b.x1 < o.x2 && o.x1 < b.x2 && b.y1 < o.y2 && o.y1 < b.y2 }

func (q *Quilt) remainsOf(u queue.PanelUse, all bool) []Remnant {
	taken := q.takenOf(u, all)
	free := []box{{0, 0, u.Width, u.Height}}
	for _, t := range taken {
		free = lessOf(free, t)
	}
	var out []Remnant
	for len(free) > 0 {
		b := slices.MaxFunc(free, byArea)
		out = append(out, Remnant{u.Fabric, u.Panel, b.x1, b.y1, b.x2 - b.x1, b.y2 - b.y1})
		free = lessOf(free, b)
	}
	return out
}

// takenOf are the rectangles that came out of a panel, or are to.
func (q *Quilt) takenOf(u queue.PanelUse, all bool) []box {
	var taken []box
	for _, r := range u.RoughCuts {
		if l := q.Load(r.Load); all || l == nil || q.begun(l) {
			taken = append(taken, box{r.X, r.Y, r.X + r.Width, r.Y + r.Height})
		}
	}
	for _, h := range u.ByHand {
		taken = append(taken, box{h.X, h.Y, h.X + h.Width, h.Y + h.Height})
	}
	return taken
}

// byArea compares by area, then by place, so that the answer is always the
// same.
func byArea(a, b box) int {
	return cmp.Or(length.Mul(a.x2-a.x1, a.y2-a.y1).Cmp(length.Mul(b.x2-b.x1, b.y2-b.y1)), cmp.Compare(b.y1, a.y1), cmp.Compare(b.x1, a.x1))
}

// lessOf are the largest free rectangles once taken is gone: each one that
// it cuts into leaves up to four, and those inside another are dropped.
func lessOf(free []box, taken box) []box {
	var out []box
	for _, f := range free {
		if !f.overlaps(taken) {
			out = append(out, f)
			continue
		}
		for _, part := range []box{{f.x1, f.y1, taken.x1, f.y2}, {taken.x2, f.y1, f.x2, f.y2},
			{f.x1, f.y1, f.x2, taken.y1}, {f.x1, taken.y2, f.x2, f.y2}} {
			if !part.empty() {
				out = append(out, part)
			}
		}
	}
	return outermost(out)
}

// outermost drops what lies inside another.
func outermost(boxes []box) []box {
	var out []box
	for i, b := range boxes {
		inside := slices.ContainsFunc(boxes[:i], func(o box) bool { return b.within(o) }) ||
			slices.ContainsFunc(boxes[i+1:], func(o box) bool { return b.within(o) && b != o })
		if !inside {
			out = append(out, b)
		}
	}
	return out
}

func (b box) within(o box) bool { return b.x1 >= o.x1 && b.y1 >= o.y1 && b.x2 <= o.x2 && b.y2 <= o.y2 }
