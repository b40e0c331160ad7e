package outline

import (
	"cmp"
	"slices"
)

// Convex says whether o, a simple polygon, has no corner that points inward.
// Corners on a straight side don't matter.
func (o Outline) Convex() bool {
	for i, p := range o {
		if Orient(o.prev(i), p, o.next(i)) < 0 {
			return false
		}
	}
	return true
}

// Hull is the smallest convex outline round the points, without corners on its
// straight sides; it starts at the leftmost (of these the topmost) corner. Points
// all on one line have a hull of fewer than three corners.
//
// Andrew's monotone chain (Information Processing Letters 9(5), 1979).
func Hull(points []Point) Outline {
	ps := slices.Clone(points)
	slices.SortFunc(ps, func(a, b Point) int {
		return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y))
	})
	ps = slices.Compact(ps)
	if len(ps) < 3 {
		return ps
	}
	upper := chain(ps)
	slices.Reverse(ps)
	lower := chain(ps)
	return append(upper[:len(upper)-1], lower[:len(lower)-1]...)
}

// chain is one half of a hull: of sorted points, those where the way turns
// right.
func chain(ps []Point) (c Outline) {
	for _, p := range ps {
		for len(c) >= 2 && Orient(c[len(c)-2], c[len(c)-1], p) <= 0 {
			c = c[:len(c)-1]
		}
		c = append(c, p)
	}
	return c
}

// convexOverlap says whether two convex outlines share area. They do unless the
// line along an edge of the one has all of the other on its outer side.
func convexOverlap(a, b Outline) bool {
	return !edgeParts(a, b) && !edgeParts(b, a)
}

// edgeParts says whether an edge of a has all of b on its outer side or on the
// line itself. Edge after edge of a, the corner of b that reaches farthest
// inward only moves on round b (rotating calipers), so this takes
// len(a) + len(b) steps.
func edgeParts(a, b Outline) bool {
	far := 0
	for j := range b {
		if Cross(a.next(0).Sub(a[0]), b[j].Sub(b[far])) > 0 {
			far = j
		}
	}
	for i, p := range a {
		q := a.next(i)
		e := q.Sub(p)
		for range b {
			if Cross(e, b.next(far).Sub(b[far])) <= 0 {
				break
			}
			far = (far + 1) % len(b)
		}
		if Orient(p, q, b[far]) <= 0 {
			return true
		}
	}
	return false
}
