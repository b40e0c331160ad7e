package rect

// A skyline is the upper edge of what lies in a bin, seen from below: all
// under it is taken or given up. It is kept as its stretches from left to
// right, no two neighbours at one height.

// seg is a stretch of a skyline at height y, from x to the next one's x.
type seg struct{ x, y int64 }

// niche finds the lowest stretch, the leftmost of equals.
func niche(segs []seg) int {
	best := 0
	for i := 1; i < len(segs); i++ {
		if segs[i].y < segs[best].y {
			best = i
		}
	}
	return best
}

// span gives the width of stretch i in a w x h bin, and how high its left and
// right walls stand; the bin's own sides count as walls of height h.
func span(segs []seg, i int, w, h int64) (width, left, right int64) {
	end := w
	left, right = h, h
	if i+1 < len(segs) {
		end, right = segs[i+1].x, segs[i+1].y
	}
	if i > 0 {
		left = segs[i-1].y
	}
	return end - segs[i].x, left, right
}

// raise gives up niche i: it is filled to its lower wall, in place.
func raise(segs []seg, i int, h int64) []seg {
	last := len(segs) - 1
	switch {
	case last == 0:
		segs[0].y = h
		return segs
	case i == 0:
		segs[0].y = segs[1].y
		return append(segs[:1], segs[2:]...)
	case i == last || segs[i-1].y < segs[i+1].y:
		return append(segs[:i], segs[i+1:]...)
	case segs[i-1].y > segs[i+1].y:
		segs[i].y = segs[i+1].y
		return append(segs[:i+1], segs[i+2:]...)
	default: // both walls equal: three become one
		return append(segs[:i], segs[i+2:]...)
	}
}

// lay appends to dst the skyline segs with a piece w wide, its top at y, laid
// at the left or the right end of stretch i, which is width wide.
func lay(dst, segs []seg, i int, w, width, y int64, right bool) []seg {
	from := len(dst)
	put := func(s seg) {
		if n := len(dst); n == from || dst[n-1].y != s.y {
			dst = append(dst, s)
		}
	}
	for _, s := range segs[:i] {
		put(s)
	}
	x := segs[i].x
	switch {
	case w == width:
		put(seg{x, y})
	case right:
		put(segs[i])
		put(seg{x + width - w, y})
	default:
		put(seg{x, y})
		put(seg{x + w, segs[i].y})
	}
	for _, s := range segs[i+1:] {
		put(s)
	}
	return dst
}
