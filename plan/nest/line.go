package nest

// An axis is the direction of a line: level, along x, or upright, along y.
type axis int

const (
	level axis = iota
	upright
)

// on is v's coordinate along the axis, off the one across it.
func (v vec) on(a axis) int64 {
	if a == level {
		return v.x
	}
	return v.y
}

func (v vec) off(a axis) int64 { return v.on(upright - a) }

// point is the place at on along the axis and off across it.
func (a axis) point(on, off int64) vec {
	if a == level {
		return vec{on, off}
	}
	return vec{off, on}
}

// stretch is the stretch, along the axis, of the line at off that lies inside:
// whole places a and b, both outside, between which every place is inside. ok
// is false where the line misses the region.
func (c *convex) stretch(ax axis, off int64) (a, b int64, ok bool) {
	a, b = c.lo.on(ax), c.hi.on(ax)
	if off <= c.lo.off(ax) || off >= c.hi.off(ax) {
		return 0, 0, false
	}
	if f := c.find; f != nil {
		for _, i := range f.line[ax][slot(off, c.lo.off(ax), c.hi.off(ax))] {
			if a, b, ok = c.halves[i].narrow(ax, a, b, off); !ok {
				return 0, 0, false
			}
		}
		return a, b, b-a > 1
	}
	for i := range c.halves {
		if a, b, ok = c.halves[i].narrow(ax, a, b, off); !ok {
			return 0, 0, false
		}
	}
	return a, b, b-a > 1
}

// narrow cuts the open stretch a..b of the line at off down to what lies in h.
func (h *half) narrow(ax axis, a, b, off int64) (int64, int64, bool) {
	n, k := h.n.on(ax), h.k-h.n.off(ax)*off // n·t < k
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
