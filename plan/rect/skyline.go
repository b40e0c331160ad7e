package rect

import "example.org/matside/plan/length"

// step is a stretch of a skyline: from x to the next step's x, all below y is
// taken.
type step struct{ x, y length.Len }

// skyline is the upper edge of what lies in a bin, left to right.
type skyline struct {
	w, h  length.Len
	steps []step
}

func newSkyline(w, h length.Len) *skyline {
	return &skyline{w, h, []step{{0, 0}}}
}

// lowest finds the lowest, then leftmost place for a w x h rectangle whose
// left side stands at a step's start.
func (s *skyline) lowest(w, h length.Len) (x, y length.Len, ok bool) {
	for i, p := range s.steps {
		if p.x+w > s.w {
			break
		}
		top := p.y
		for j := i + 1; j < len(s.steps) && s.steps[j].x < p.x+w; j++ {
			top = max(top, s.steps[j].y)
		}
		if top+h <= s.h && (!ok || top < y) {
			x, y, ok = p.x, top, true
		}
	}
	return x, y, ok
}

// add raises the skyline to y over [x, x+w).
func (s *skyline) add(x, w, y length.Len) {
	var out []step
	end := length.Len(0)
	placed := false
	for i, p := range s.steps {
		end = s.w
		if i+1 < len(s.steps) {
			end = s.steps[i+1].x
		}
		if p.x < x {
			out = append(out, p)
		}
		if !placed && end > x {
			out, placed = append(out, step{x, y}), true
		}
		if end > x+w {
			out = append(out, step{max(p.x, x+w), p.y})
		}
	}
	s.steps = out
}
