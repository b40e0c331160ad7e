package nest

// convexParts cuts a simple ring into convex rings with the same corners:
// triangles by ear clipping, then every cut taken out again that is not needed
// (Hertel and Mehlhorn: at most four times the fewest parts). The parts cover
// the ring and share no area, so two outlines share area exactly when a part of
// one does with a part of the other.
func convexParts(r ring) []ring {
	r = r.straight()
	if r.isConvex() {
		return []ring{r}
	}
	return mergeParts(triangles(r))
}

// triangles cuts a simple ring into triangles by clipping ears.
func triangles(r ring) []ring {
	left := append(ring(nil), r...)
	var out []ring
	for len(left) > 3 {
		i := findEar(left)
		n := len(left)
		a, b, c := left[(i+n-1)%n], left[i], left[(i+1)%n]
		if turnAt(a, b, c) > 0 {
			out = append(out, ring{a, b, c})
		}
		left = append(left[:i], left[i+1:]...)
	}
	if turnAt(left[0], left[1], left[2]) > 0 {
		out = append(out, left)
	}
	return out
}

// findEar finds a corner whose triangle holds no other corner; among those the
// one nearest to right-angled would be prettier, the first does. A flat corner
// counts as an ear: it clips away nothing.
func findEar(r ring) int {
	n := len(r)
	fallback := 0
	for i := range r {
		a, b, c := r[(i+n-1)%n], r[i], r[(i+1)%n]
		switch turnAt(a, b, c) {
		case 0:
			return i
		case 1:
			if !holdsCorner(r, a, b, c) {
				return i
			}
			fallback = i
		}
	}
	// Only a ring that is not simple comes here; clip something so as to end.
	return fallback
}

// holdsCorner reports whether triangle abc has a corner of r in it, its edge
// counted, its own corners not.
func holdsCorner(r ring, a, b, c vec) bool {
	for _, p := range r {
		if p == a || p == b || p == c {
			continue
		}
		if crossSign(b.sub(a), p.sub(a)) >= 0 && crossSign(c.sub(b), p.sub(b)) >= 0 &&
			crossSign(a.sub(c), p.sub(c)) >= 0 {
			return true
		}
	}
	return false
}

// mergeParts joins parts across a shared side as long as the whole stays convex.
func mergeParts(parts []ring) []ring {
	for again := true; again; {
		again = false
	search:
		for i := range parts {
			for j := i + 1; j < len(parts); j++ {
				if m := joined(parts[i], parts[j]); m != nil {
					parts[i] = m
					parts = append(parts[:j], parts[j+1:]...)
					again = true
					break search
				}
			}
		}
	}
	return parts
}

// joined is the convex ring that a and b make across a side they share, nil if
// they share none or make a hollow corner.
func joined(a, b ring) ring {
	for i := range a {
		p, q := a[i], a[(i+1)%len(a)]
		for j := range b {
			if b[j] != q || b[(j+1)%len(b)] != p {
				continue
			}
			m := make(ring, 0, len(a)+len(b)-2)
			for k := range a {
				m = append(m, a[(i+1+k)%len(a)]) // from q round to p
			}
			for k := 2; k < len(b); k++ {
				m = append(m, b[(j+k)%len(b)]) // from p's next round to q's last
			}
			if m.isConvex() {
				return m.straight()
			}
			return nil
		}
	}
	return nil
}
