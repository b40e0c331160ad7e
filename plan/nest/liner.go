package nest

import (
	"math"
	"slices"
)

// A liner finds the best place on a level or upright line. On a stretch
// inside one part the overlap rises and falls again, so the least is met where a
// stretch begins or ends, exactly where pieces touch.
type liner struct {
	stretches []stretch
	ends      []int64
}

// A stretch is where a part lies across the line: a and b are outside it.
type stretch struct {
	a, b   int64
	part   *convex
	origin vec // of the part
	pull   float64
}

// bestOnLine is the best place for piece i, as the shape it is tried as, on the
// level or upright line through it.
func (s *separator) bestOnLine(i int, at trial, level bool) trial {
	sh := &s.m.shapes[at.shape]
	last, fixed, cur := s.m.w-sh.w, at.at.y, at.at.x
	if !level {
		last, fixed, cur = s.m.h-sh.h, at.at.x, at.at.y
	}
	l := &s.line
	l.collect(s, i, at.shape, fixed, level, last)
	best := at
	// Try the ends nearest to where it lies first: of equals the nearest wins.
	for k, e := range l.ends {
		l.ends[k] = fold(e - cur)
	}
	slices.Sort(l.ends)
	l.ends = slices.Compact(l.ends)
	s.work += len(s.spots)
	for _, f := range l.ends {
		s.work += len(l.stretches)
		e := cur + unfold(f)
		t := vec{e, fixed}
		if !level {
			t = vec{fixed, e}
		}
		if loss := l.loss(e, t, best.loss); loss < best.loss {
			best = trial{spot{at.shape, t}, loss}
			if loss == 0 {
				break
			}
		}
	}
	return best
}

// collect finds the stretches of the line that other pieces' parts lie across.
func (l *liner) collect(s *separator, i, sh int, fixed int64, level bool, last int64) {
	l.stretches, l.ends = l.stretches[:0], append(l.ends[:0], 0, last)
	n := len(s.m.shapes)
	for j := range s.spots {
		q := &s.spots[j]
		if j == i {
			continue
		}
		r := s.m.regions[q.shape*n+sh]
		if r == nil {
			r = s.m.region(q.shape, sh)
		}
		off, base := fixed-q.at.y, q.at.x
		lo, hi := r.lo.y, r.hi.y
		if !level {
			off, base = fixed-q.at.x, q.at.y
			lo, hi = r.lo.x, r.hi.x
		}
		if off <= lo || off >= hi {
			continue
		}
		for k := range r.parts {
			c := &r.parts[k]
			var a, b int64
			var ok bool
			if level {
				a, b, ok = c.across(off)
			} else {
				a, b, ok = c.along(off)
			}
			a, b = a+base, b+base
			if !ok || b <= 0 || a >= last {
				continue
			}
			l.stretches = append(l.stretches, stretch{a, b, c, q.at, s.pull[i][j]})
			if a > 0 {
				l.ends = append(l.ends, a)
			}
			if b < last {
				l.ends = append(l.ends, b)
			}
		}
	}
}

// loss is the weighted overlap at t, e along the line, or any number not below
// limit once it is clear that it is not below limit.
func (l *liner) loss(e int64, t vec, limit float64) float64 {
	var sum float64
	for k := range l.stretches {
		s := &l.stretches[k]
		if e > s.a && e < s.b {
			if sum += float64(s.pull * s.part.depth(t.sub(s.origin))); sum >= limit {
				return math.Inf(1)
			}
		}
	}
	return sum
}

// fold maps 0, −1, 1, −2, 2 … to 0, 1, 2, 3, 4 …: nearest first when sorted.
func fold(d int64) int64 { return d<<1 ^ d>>63 }

func unfold(f int64) int64 { return int64(uint64(f)>>1) ^ -(f & 1) }
