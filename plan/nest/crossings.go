package nest

import (
	"cmp"
	"math"
	"slices"
)

// crossings calls add with whole places next to each crossing of the edge of
// a with the edge of b moved by d. The places are next to the true crossing, not
// on it: the caller asks which of them are free.
func crossings(a, b *convex, d vec, add func(vec)) {
	if a.lo.x > b.hi.x+d.x || a.hi.x < b.lo.x+d.x || a.lo.y > b.hi.y+d.y || a.hi.y < b.lo.y+d.y {
		return
	}
	if a.find != nil && b.find != nil {
		crossingSides(a, b, d, func(i int) { cutSide(a, i, b, d, add) })
		crossingSides(b, a, d.neg(), func(i int) { cutSide(b, i, a, d.neg(), func(t vec) { add(t.add(d)) }) })
		return
	}
	for i := range a.halves {
		cutSide(a, i, b, d, add)
	}
}

// crossingSides finds the sides of a with one end in b moved by d and one not.
// Both having many sides, edges cross nowhere else.
func crossingSides(a, b *convex, d vec, found func(i int)) {
	n := len(a.halves)
	first, _, _ := side(a, 0)
	was := b.covers(first.sub(d))
	for i := range n {
		_, to, _ := side(a, i)
		is := b.covers(to.sub(d))
		if is != was {
			found(i)
		}
		was = is
	}
}

// cutSide adds the places next to where the i-th side of a crosses the edge of
// b moved by d.
func cutSide(a *convex, i int, b *convex, d vec, add func(vec)) {
	h := &a.halves[i]
	from, to, ok := side(a, i)
	if !ok {
		return
	}
	px, py := float64(-h.n.y), float64(h.n.x)
	for j := range b.halves {
		g := &b.halves[j]
		speed := float64(px*float64(g.n.x)) + float64(py*float64(g.n.y))
		if speed == 0 {
			continue
		}
		room := float64(g.k-g.n.x*(from.x-d.x)-g.n.y*(from.y-d.y)) / speed
		x := float64(from.x) + float64(px*room)
		y := float64(from.y) + float64(py*room)
		if !between(x, y, from, to) || !onEdge(b, x-float64(d.x), y-float64(d.y)) {
			continue
		}
		fx, fy := int64(math.Floor(x)), int64(math.Floor(y))
		add(vec{fx, fy})
		add(vec{fx + 1, fy})
		add(vec{fx, fy + 1})
		add(vec{fx + 1, fy + 1})
	}
}

// side is the i-th side of c, as nearly as whole places tell: from the crossing
// with the half before to that with the half after.
func side(c *convex, i int) (from, to vec, ok bool) {
	n := len(c.halves)
	x0, y0, ok0 := crossing(&c.halves[(i+n-1)%n], &c.halves[i])
	x1, y1, ok1 := crossing(&c.halves[i], &c.halves[(i+1)%n])
	if !ok0 || !ok1 {
		return vec{}, vec{}, false
	}
	return vec{int64(math.Round(x0)), int64(math.Round(y0))}, vec{int64(math.Round(x1)), int64(math.Round(y1))}, true
}

// between reports whether x, y is inside the box of from and to, give or take.
func between(x, y float64, from, to vec) bool {
	const slack = 2
	return x >= float64(min(from.x, to.x)-slack) && x <= float64(max(from.x, to.x)+slack) &&
		y >= float64(min(from.y, to.y)-slack) && y <= float64(max(from.y, to.y)+slack)
}

// onEdge reports whether x, y is in c or on its edge, give or take.
func onEdge(c *convex, x, y float64) bool {
	const slack = 2
	for i := range c.halves {
		h := &c.halves[i]
		if float64(float64(h.k)-float64(float64(h.n.x)*x)-float64(float64(h.n.y)*y))*h.inv < -slack {
			return false
		}
	}
	return true
}

// sorted sorts places by y, then x, and drops doubles.
func sorted(ts []vec) []vec {
	slices.SortFunc(ts, func(a, b vec) int {
		return cmp.Or(cmp.Compare(a.y, b.y), cmp.Compare(a.x, b.x))
	})
	return slices.Compact(ts)
}

func abs(a int64) int64 {
	if a < 0 {
		return -a
	}
	return a
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
