package nest

import (
	"math"
	"math/bits"
)

// A half is the open half-plane of all t with n·t < k.
type half struct {
	n   vec
	k   int64
	inv float64 // 1/|n|: turns an excess into nanometres
}

// excess is how far inside t lies, in units of |n|; not positive is outside.
func (h *half) excess(t vec) int64 { return h.k - h.n.x*t.x - h.n.y*t.y }

// A convex is an open convex region: the common part of its halves, which go
// round by angle. lo and hi bound it.
type convex struct {
	halves []half
	lo, hi vec
	// corners are places on or next to its corners, none in a better place
	// than the corner itself; they are where pieces come to touch.
	corners []vec
	find    *finder // nil: few sides
}

// A region is where a piece must not be put: the offsets from one piece's
// place to another's at which the two share area or come nearer than the gap. It
// is the union of its open parts; its edge is touching, and is allowed.
type region struct {
	parts   []convex
	lo, hi  vec
	corners []vec // of the parts, and where the parts' edges cross
}

// maxNormal bounds a half's normal so that k − n·t stays inside int64 for
// every offset t met in a container of the given size. For one up to a metre
// normals are exact; in a larger one they are rounded and the half-plane is
// moved out until it holds the whole polygon again.
func maxNormal(size int64) int64 {
	return (math.MaxInt64 / 8) / max(size, 1)
}

// newRegion makes the region for b moving round a, both given as convex parts.
// size is the largest coordinate that will be met.
func newRegion(a, b []ring, gap, size int64) *region {
	r := &region{}
	for _, p := range a {
		for _, q := range b {
			r.parts = append(r.parts, newConvex(minkowski(p, q.reflected()), gap, maxNormal(size)))
		}
	}
	r.lo, r.hi = r.parts[0].lo, r.parts[0].hi
	for _, c := range r.parts {
		r.lo = vec{min(r.lo.x, c.lo.x), min(r.lo.y, c.lo.y)}
		r.hi = vec{max(r.hi.x, c.hi.x), max(r.hi.y, c.hi.y)}
	}
	r.findCorners()
	return r
}

// reflected is the ring through the origin: −r.
func (r ring) reflected() ring {
	m := make(ring, len(r))
	for i, p := range r {
		m[i] = p.neg()
	}
	return m
}

// minkowski is the sum of two convex rings: their edges merged by angle.
func minkowski(a, b ring) ring {
	i0, j0 := a.lowest(), b.lowest()
	out := make(ring, 0, len(a)+len(b))
	at := a[i0].add(b[j0])
	for i, j := 0, 0; i < len(a) || j < len(b); {
		out = append(out, at)
		ea := a[(i0+i+1)%len(a)].sub(a[(i0+i)%len(a)])
		eb := b[(j0+j+1)%len(b)].sub(b[(j0+j)%len(b)])
		turn := 0
		switch {
		case j == len(b):
			turn = 1
		case i == len(a):
			turn = -1
		default:
			turn = crossSign(ea, eb)
		}
		if turn >= 0 {
			at = at.add(ea)
			i++
		}
		if turn <= 0 {
			at = at.add(eb)
			j++
		}
	}
	return out
}

// lowest is the corner of least y, then least x: where the edges' angles start.
func (r ring) lowest() int {
	best := 0
	for i, p := range r {
		if p.y < r[best].y || p.y == r[best].y && p.x < r[best].x {
			best = i
		}
	}
	return best
}

// newConvex is the inside of a convex ring grown by gap.
func newConvex(r ring, gap, maxN int64) convex {
	r = r.straight()
	var c convex
	lo, hi := r.box()
	c.lo, c.hi = vec{lo.x - gap, lo.y - gap}, vec{hi.x + gap, hi.y + gap}
	for i := range r {
		e := r[(i+1)%len(r)].sub(r[i])
		n := vec{e.y, -e.x}
		if gap > 0 {
			prev := r[i].sub(r[(i+len(r)-1)%len(r)])
			c.bevel(r, vec{prev.y, -prev.x}, n, gap, maxN)
		}
		c.addHalf(r, n, gap, maxN)
	}
	c.find = newFinder(&c)
	if gap == 0 {
		c.corners = r
	} else {
		c.roundCorners()
	}
	return c
}

// bevel adds half-planes between the normals m and n of two sides that meet,
// so that a grown corner is cut near its arc: no wider than 22½ degrees a step,
// at most 2 % of the gap beyond the true distance.
func (c *convex) bevel(r ring, m, n vec, gap, maxN int64) {
	mx, my, ml := unit(m)
	nx, ny, nl := unit(n)
	if ml == 0 || nl == 0 {
		return
	}
	dot := float64(mx*nx) + float64(my*ny)
	if dot > 0.92 {
		return
	}
	const long = 1 << 20
	sx, sy := mx+nx, my+ny
	if dot < -0.5 { // nearly back on itself: the sum says little, turn m by a right angle
		sx, sy = -my, mx
	}
	sx, sy, _ = unitFloat(sx, sy)
	mid := vec{int64(math.Round(sx * long)), int64(math.Round(sy * long))}
	c.bevel(r, m, mid, gap, maxN)
	c.addHalf(r, mid, gap, maxN)
	c.bevel(r, mid, n, gap, maxN)
}

func unit(v vec) (x, y, l float64) { return unitFloat(float64(v.x), float64(v.y)) }

func unitFloat(x, y float64) (ux, uy, l float64) {
	l = math.Sqrt(float64(x*x) + float64(y*y))
	if l == 0 {
		return 0, 0, 0
	}
	return x / l, y / l, l
}

// addHalf adds the half-plane with outward normal n that just holds the ring
// grown by gap.
func (c *convex) addHalf(r ring, n vec, gap, maxN int64) {
	if g := gcd(abs(n.x), abs(n.y)); g > 1 {
		n = vec{n.x / g, n.y / g}
	}
	for abs(n.x) > maxN || abs(n.y) > maxN {
		n = vec{n.x / 2, n.y / 2}
	}
	if n == (vec{}) {
		return
	}
	k := int64(math.MinInt64)
	for _, p := range r {
		k = max(k, n.x*p.x+n.y*p.y)
	}
	l2 := uint64(n.x*n.x) + uint64(n.y*n.y)
	l := math.Sqrt(float64(l2))
	c.halves = append(c.halves, half{n, k + reach(gap, l2, l), 1 / l})
}

// reach is at least gap·√l2, and exactly that where √l2 is whole.
func reach(gap int64, l2 uint64, l float64) int64 {
	if gap == 0 {
		return 0
	}
	if whole := uint64(l); whole < 1<<31 && whole*whole == l2 {
		if hi, lo := bits.Mul64(uint64(gap), whole); hi == 0 && lo < 1<<62 {
			return int64(lo)
		}
	}
	// One part in 10^12 covers every rounding above many times over.
	return int64(math.Ceil(float64(gap)*l*(1+1e-12))) + 1
}

// roundCorners finds the corners of a region given by halves alone, rounded.
func (c *convex) roundCorners() {
	n := len(c.halves)
	for i := range c.halves {
		if x, y, ok := crossing(&c.halves[i], &c.halves[(i+1)%n]); ok {
			c.corners = append(c.corners, c.near(x, y)...)
		}
	}
}

// near are the whole places about x, y that are not inside the region.
func (c *convex) near(x, y float64) []vec {
	var out []vec
	fx, fy := int64(math.Floor(x)), int64(math.Floor(y))
	for _, t := range [4]vec{{fx, fy}, {fx + 1, fy}, {fx, fy + 1}, {fx + 1, fy + 1}} {
		if !c.covers(t) {
			out = append(out, t)
		}
	}
	return out
}

// crossing is where the edges of two halves meet.
func crossing(a, b *half) (x, y float64, ok bool) {
	ax, ay, bx, by := float64(a.n.x), float64(a.n.y), float64(b.n.x), float64(b.n.y)
	det := float64(ax*by) - float64(ay*bx)
	if det == 0 {
		return 0, 0, false
	}
	ak, bk := float64(a.k), float64(b.k)
	x = (float64(ak*by) - float64(bk*ay)) / det
	y = (float64(ax*bk) - float64(bx*ak)) / det
	return x, y, true
}

// inBox reports whether t lies inside the region's box.
func (c *convex) inBox(t vec) bool {
	return t.x > c.lo.x && t.x < c.hi.x && t.y > c.lo.y && t.y < c.hi.y
}

// covers reports whether t lies inside: exact (see finder).
func (c *convex) covers(t vec) bool {
	if !c.inBox(t) {
		return false
	}
	if f := c.find; f != nil {
		for _, i := range f.toward[direction(t.x-f.cx, t.y-f.cy)] {
			if c.halves[i].excess(t) <= 0 {
				return false
			}
		}
		return true
	}
	for i := range c.halves {
		if c.halves[i].excess(t) <= 0 {
			return false
		}
	}
	return true
}

// depth is how far t must move to leave the region, in nanometres; 0 exactly
// when it is not inside.
func (c *convex) depth(t vec) float64 {
	if !c.inBox(t) {
		return 0
	}
	d := math.MaxFloat64
	if f := c.find; f != nil {
		for _, i := range f.toward[direction(t.x-f.cx, t.y-f.cy)] {
			h := &c.halves[i]
			e := h.excess(t)
			if e <= 0 {
				return 0
			}
			d = min(d, float64(e)*h.inv)
		}
		for _, i := range f.around {
			h := &c.halves[i]
			// A side elsewhere can't put t outside; its excess may be a hair off.
			d = min(d, max(1, float64(h.excess(t))*h.inv))
		}
		return d
	}
	for i := range c.halves {
		h := &c.halves[i]
		e := h.excess(t)
		if e <= 0 {
			return 0
		}
		d = min(d, float64(e)*h.inv)
	}
	return d
}

// covers reports whether t lies inside a part: the exact verdict on which
// every layout stands.
func (r *region) covers(t vec) bool {
	if t.x <= r.lo.x || t.x >= r.hi.x || t.y <= r.lo.y || t.y >= r.hi.y {
		return false
	}
	for i := range r.parts {
		if r.parts[i].covers(t) {
			return true
		}
	}
	return false
}

// depth measures an overlap for the search: the sum over the parts, which
// leads out of a hollow where the deepest part alone would not.
func (r *region) depth(t vec) float64 {
	if t.x <= r.lo.x || t.x >= r.hi.x || t.y <= r.lo.y || t.y >= r.hi.y {
		return 0
	}
	var d float64
	for i := range r.parts {
		d += r.parts[i].depth(t)
	}
	return d
}

// findCorners keeps the parts' corners, and the crossings of their edges, that
// no part covers.
func (r *region) findCorners() {
	var all []vec
	for i := range r.parts {
		all = append(all, r.parts[i].corners...)
		for j := range i {
			crossings(&r.parts[i], &r.parts[j], vec{}, func(t vec) { all = append(all, t) })
		}
	}
	for _, t := range sorted(all) {
		if !r.covers(t) {
			r.corners = append(r.corners, t)
		}
	}
}
