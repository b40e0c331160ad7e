package bound

import (
	"slices"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// limit says that no mat holds so many of one shape together with so many of
// another, or so many of one by themselves, the other being it too and none.
type limit struct {
	shape [2]int
	count [2]int
}

// limiter looks for limits within a number of steps.
type limiter struct {
	*sharing
	*few
	most  []int // of each shape on a mat; more than mostFew where few can't tell
	limit []limit
}

// findLimits finds what few can prove impossible, and returns the loads that
// shapes by themselves need for that.
func (s *sharing) findLimits(steps int) (mats int) {
	if max(s.W, s.H)+s.rim() > mostSide || len(s.pins) == 0 {
		return 0
	}
	l := &limiter{sharing: s, few: newFew(s.W+s.rim(), s.H+s.rim(), s.convex(), steps)}
	for k := range s.shapes {
		l.most = append(l.most, l.alone(k))
		mats = max(mats, (s.shapes[k].count+l.most[k]-1)/l.most[k])
	}
	for a := range s.shapes {
		for b := range a {
			if l.most[a] <= mostFew && l.most[b] <= mostFew {
				l.pair(a, b)
			}
		}
	}
	s.limits = l.limit
	return mats
}

// convex are the shapes, those that aren't convex without ways.
func (s *sharing) convex() []shape {
	out := slices.Clone(s.shapes)
	for k := range out {
		if slices.ContainsFunc(out[k].ways, func(o outline.Outline) bool { return !o.Convex() }) {
			out[k].ways = nil
		}
	}
	return out
}

// excluded says that area or pins forbid so many of the shapes on a mat.
func (l *limiter) excluded(a, n, b, m int) bool {
	area := l.sharing.shapes[a].area.Times(n).Add(l.sharing.shapes[b].area.Times(m))
	if length.Mul(l.W+l.rim(), l.H+l.rim()).Less(area) {
		return true
	}
	return slices.ContainsFunc(l.pins, func(p *pins) bool {
		return p.worth[a]*int64(n)+p.worth[b]*int64(m) > p.whole
	})
}

// impossible says that few proves it; it is asked once and noted.
func (l *limiter) impossible(a, n, b, m int) bool {
	count := make([]int, len(l.shapes))
	count[a] += n
	count[b] += m
	if l.steps <= 0 || l.few.may(count) {
		return false
	}
	l.limit = append(l.limit, limit{[2]int{a, b}, [2]int{n, m}})
	return true
}

// alone is the most of a shape that a mat holds, as far as can be told.
func (l *limiter) alone(k int) int {
	n := 1
	for n <= l.shapes[k].count && !l.excluded(k, n+1, k, 0) {
		n++
	}
	if l.from[k] == l.from[k+1] {
		return max(n, mostFew+1)
	}
	for n > 1 && n <= mostFew && l.impossible(k, n, k, 0) {
		n--
	}
	return n
}

// pair goes along the line between what two shapes can be on a mat and what
// they can't: of the one more and more, of the other fewer and fewer.
func (l *limiter) pair(a, b int) {
	n, m := 1, min(l.most[b], mostFew-1)
	for n <= l.most[a] && m > 0 {
		switch {
		case n+m > mostFew, l.excluded(a, n, b, m), l.impossible(a, n, b, m):
			m--
		default:
			n++
		}
	}
}
