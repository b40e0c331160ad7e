package nest

// across is the stretch of the line at height y that lies inside: whole
// places a and b, both outside, between which every place is inside. ok is
// false where the line misses the region.
func (c *convex) across(y int64) (a, b int64, ok bool) {
	if y <= c.lo.y || y >= c.hi.y {
		return 0, 0, false
	}
	a, b = c.lo.x, c.hi.x
	if f := c.find; f != nil {
		for _, i := range f.level[slot(y, c.lo.y, c.hi.y)] {
			h := &c.halves[i]
			if a, b, ok = narrow(a, b, h.nx, h.k-h.ny*y); !ok {
				return 0, 0, false
			}
		}
		return a, b, b-a > 1
	}
	for i := range c.halves {
		h := &c.halves[i]
		if a, b, ok = narrow(a, b, h.nx, h.k-h.ny*y); !ok {
			return 0, 0, false
		}
	}
	return a, b, b-a > 1
}

// along is across for the upright line at x.
func (c *convex) along(x int64) (a, b int64, ok bool) {
	if x <= c.lo.x || x >= c.hi.x {
		return 0, 0, false
	}
	a, b = c.lo.y, c.hi.y
	if f := c.find; f != nil {
		for _, i := range f.upright[slot(x, c.lo.x, c.hi.x)] {
			h := &c.halves[i]
			if a, b, ok = narrow(a, b, h.ny, h.k-h.nx*x); !ok {
				return 0, 0, false
			}
		}
		return a, b, b-a > 1
	}
	for i := range c.halves {
		h := &c.halves[i]
		if a, b, ok = narrow(a, b, h.ny, h.k-h.nx*x); !ok {
			return 0, 0, false
		}
	}
	return a, b, b-a > 1
}

// narrow cuts the open stretch a..b down to where n·t < k.
func narrow(a, b, n, k int64) (int64, int64, bool) {
	switch {
	case n > 0:
		b = min(b, ceilDiv(k, n)) // the least t with n·t ≥ k
	case n < 0:
		a = max(a, -ceilDiv(k, -n)) // the greatest t with −|n|·t ≥ k
	case k <= 0:
		return 0, 0, false
	}
	return a, b, b-a > 1
}

// ceilDiv is a/b rounded up, for b > 0.
func ceilDiv(a, b int64) int64 {
	q := a / b
	if a%b > 0 {
		q++
	}
	return q
}
