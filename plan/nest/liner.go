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

// bestOnLine is the best place for piece i, as the shape it is tried as, on
// the line along the axis through where it is tried, no further off than half
// its size: places further off are left to the samples, which cost less.
func (s *separator) bestOnLine(i int, at trial, ax axis) trial {
	sh := &s.m.shapes[at.shape]
	last := vec{s.m.w, s.m.h}.sub(sh.size()).on(ax)
	cur, off := at.at.on(ax), at.at.off(ax)
	near := sh.size().on(ax) / 2
	l := &s.line
	l.collect(s, i, at, ax, max(0, cur-near), min(last, cur+near))
	best := at
	// Try the ends nearest to where it lies first: of equals the nearest wins.
	for k, e := range l.ends {
		l.ends[k] = fold(e - cur)
	}
	slices.Sort(l.ends)
	l.ends = slices.Compact(l.ends)
	for _, f := range l.ends {
		s.work += len(l.stretches)
		e := cur + unfold(f)
		t := ax.point(e, off)
		if loss := l.loss(e, t, best.loss); loss < best.loss {
			best = trial{spot{at.shape, t}, loss}
			if loss == 0 {
				break
			}
		}
	}
	return best
}

// collect finds the stretches of the line, from first to last, that other
// pieces' parts lie across.
func (l *liner) collect(s *separator, i int, at trial, ax axis, first, last int64) {
	l.stretches, l.ends = l.stretches[:0], append(l.ends[:0], first, last)
	sh := &s.m.shapes[at.shape]
	from := ax.point(first, at.at.off(ax))
	to := ax.point(last, at.at.off(ax)).add(sh.size())
	s.found = s.index.near(box{from, to}, s.found[:0])
	s.work += 2 * len(s.found)
	for _, j := range s.found {
		if int(j) == i {
			continue
		}
		q := &s.spots[j]
		r := s.m.region(q.shape, at.shape)
		off, base := at.at.off(ax)-q.at.off(ax), q.at.on(ax)
		for k := range r.parts {
			c := &r.parts[k]
			a, b, ok := c.stretch(ax, off)
			a, b = a+base, b+base
			if !ok || b <= first || a >= last {
				continue
			}
			l.stretches = append(l.stretches, stretch{a, b, c, q.at, s.pull[i][j]})
			if a > first {
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
