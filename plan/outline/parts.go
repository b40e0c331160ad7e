package outline

// Parts cuts o, a simple polygon, into convex outlines along lines from corner
// to corner; a convex one stays whole. They cover o and share no area.
//
// From a corner that points inward a line is drawn to another corner, best one
// that leaves neither half pointing inward there, and both halves are cut on
// in the same way: at most twice as many cuts as there are such corners.
func Parts(o Outline) []Outline {
	i := o.reflex()
	if i < 0 {
		return []Outline{o}
	}
	j := o.diagonal(i)
	a, b := o.split(i, j)
	return append(Parts(a), Parts(b)...)
}

// reflex is a corner that points inward, -1 where there is none.
func (o Outline) reflex() int {
	for i, p := range o {
		if Orient(o.prev(i), p, o.next(i)) < 0 {
			return i
		}
	}
	return -1
}

// diagonal is the corner to which to cut from the inward corner i.
func (o Outline) diagonal(i int) int {
	best, bestMended := -1, -1
	for j := range o {
		if mended := o.mended(i, j) + o.mended(j, i); mended > bestMended && o.sees(i, j) {
			best, bestMended = j, mended
		}
	}
	if best < 0 {
		panic("outline: an inward corner that sees no other: not a simple polygon")
	}
	return best
}

// mended is 1 where a cut from i to j leaves no half pointing inward at i. A
// corner that pointed outward counts too: it stays so.
func (o Outline) mended(i, j int) int {
	if Orient(o.prev(i), o[i], o[j]) >= 0 && Orient(o[j], o[i], o.next(i)) >= 0 {
		return 1
	}
	return 0
}

// sees says whether the line from corner i to corner j runs inside o and
// meets nothing on its way.
func (o Outline) sees(i, j int) bool {
	n := len(o)
	if j == i || j == (i+1)%n || i == (j+1)%n || !o.inCone(i, o[j]) || !o.inCone(j, o[i]) {
		return false
	}
	for k := range o {
		l := (k + 1) % n
		if k != i && k != j && l != i && l != j && meet(o[i], o[j], o[k], o[l]) {
			return false
		}
	}
	return true
}

// inCone says whether a line from corner i towards q starts off inside o.
func (o Outline) inCone(i int, q Point) bool {
	p, before, after := o[i], o.prev(i), o.next(i)
	in, out := Orient(before, p, q) > 0, Orient(p, after, q) > 0
	if Orient(before, p, after) < 0 {
		return in || out
	}
	return in && out
}

// split is o cut from corner i to corner j.
func (o Outline) split(i, j int) (a, b Outline) {
	for k := i; k != j; k = (k + 1) % len(o) {
		a = append(a, o[k])
	}
	for k := j; k != i; k = (k + 1) % len(o) {
		b = append(b, o[k])
	}
	return append(a, o[j]), append(b, o[i])
}

// meet says whether the segments ab and cd, each longer than nothing, share a
// point.
func meet(a, b, c, d Point) bool {
	abc, abd := Orient(a, b, c), Orient(a, b, d)
	cda, cdb := Orient(c, d, a), Orient(c, d, b)
	if abc*abd < 0 && cda*cdb < 0 {
		return true
	}
	return abc == 0 && between(a, b, c) || abd == 0 && between(a, b, d) ||
		cda == 0 && between(c, d, a) || cdb == 0 && between(c, d, b)
}

// between says whether p, on the line through a and b, lies from a to b.
func between(a, b, p Point) bool {
	return min(a.X, b.X) <= p.X && p.X <= max(a.X, b.X) && min(a.Y, b.Y) <= p.Y && p.Y <= max(a.Y, b.Y)
}
