package nest

// A finder tells, for a convex region of many sides, which few of them can
// matter at a place or on a line. It may name too many. Should rounding make it
// name too few, the region looks a hair larger than it is, which is safe: a place
// called free is free.
type finder struct {
	cx, cy int64
	toward [buckets][]int32    // sides met going from the centre in some direction
	line   [2][buckets][]int32 // sides met by a level, by an upright line
	around []int32             // a few sides from all round, for depths
}

const (
	buckets   = 64
	manySides = 16 // a region of more has a finder
)

// newFinder makes c's finder, nil if it needs none.
func newFinder(c *convex) *finder {
	n := len(c.halves)
	if n <= manySides {
		return nil
	}
	f := &finder{cx: (c.lo.x + c.hi.x) / 2, cy: (c.lo.y + c.hi.y) / 2}
	for i := range c.halves {
		from, to, ok := side(c, i)
		if !ok {
			return nil
		}
		for k := -1; k <= 1; k++ { // its neighbours too, against rounding at corners
			j := int32((i + k + n) % n)
			note(&f.toward, direction(from.x-f.cx, from.y-f.cy), direction(to.x-f.cx, to.y-f.cy), true, j)
			note(&f.line[level], slot(from.y, c.lo.y, c.hi.y), slot(to.y, c.lo.y, c.hi.y), false, j)
			note(&f.line[upright], slot(from.x, c.lo.x, c.hi.x), slot(to.x, c.lo.x, c.hi.x), false, j)
		}
		if i%(n/8) == 0 {
			f.around = append(f.around, int32(i))
		}
	}
	return f
}

// note notes side j in the slots from a to b: going round for directions, in
// either order for lines.
func note(to *[buckets][]int32, a, b int, round bool, j int32) {
	if !round && a > b {
		a, b = b, a
	}
	for k := a; ; k = (k + 1) % buckets {
		l := &to[k]
		if len(*l) == 0 || !contains(*l, j) {
			*l = append(*l, j)
		}
		if k == b {
			return
		}
	}
}

func contains(l []int32, j int32) bool {
	for _, x := range l {
		if x == j {
			return true
		}
	}
	return false
}

// direction is the slot of the direction dx, dy: slots go round the square
// about the centre, the way the sides do.
func direction(dx, dy int64) int {
	sum := float64(abs(dx) + abs(dy))
	if sum == 0 {
		return 0
	}
	p := float64(dy) / sum // −1 … 1
	switch {
	case dx < 0:
		p = 2 - p
	case dy < 0:
		p += 4
	}
	return min(buckets-1, int(p*(buckets/4)))
}

// slot is the slot of p between lo and hi.
func slot(p, lo, hi int64) int {
	return max(0, min(buckets-1, int(float64(p-lo)/float64(hi-lo)*buckets)))
}
