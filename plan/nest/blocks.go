package nest

// blocks are lattices of the motifs, and of pairs of them half a turn apart,
// that make a rectangle without a hole: two half-square triangles, four
// quarter-square ones.
func (m *model) blocks(motifs [][]spot) []lattice {
	var out []lattice
	for _, p := range motifs {
		if len(p) < 2 {
			continue
		}
		if b, ok := m.block(p); ok {
			out = append(out, b)
		}
		for _, four := range m.doubled(p) {
			if b, ok := m.block(four); ok {
				out = append(out, b)
			}
		}
	}
	return out[:min(len(out), latticesEach)]
}

// block is the lattice of a motif's own box, if the motif fills it.
func (m *model) block(motif []spot) (lattice, bool) {
	b := m.bare(motif[0])
	var area float64
	for _, p := range motif {
		o := m.bare(p)
		b.lo = vec{min(b.lo.x, o.lo.x), min(b.lo.y, o.lo.y)}
		b.hi = vec{max(b.hi.x, o.hi.x), max(b.hi.y, o.hi.y)}
		area += m.area[m.shapes[p.shape].item]
	}
	size := b.hi.sub(b.lo)
	// Slanted sides stand a nanometre off, and a gap takes its share.
	slack := float64(16*hair + 16*m.gap)
	if float64(size.x)*float64(size.y) > area+slack*(float64(size.x)+float64(size.y)) {
		return lattice{}, false
	}
	u, v := vec{size.x + m.gap, 0}, vec{0, size.y + m.gap}
	return lattice{motif, u, v, cross(u, v)}, m.apart(motif)
}

// doubled are the motifs of four: a pair and the same turned by half, touching.
func (m *model) doubled(pair []spot) [][]spot {
	a, ok1 := m.turned(pair[0].shape)
	b, ok2 := m.turned(pair[1].shape)
	if !ok1 || !ok2 {
		return nil
	}
	// Turned by half about 0,0 and put back so that a's box begins there.
	sa, sb := &m.shapes[a], &m.shapes[b]
	d := vec{sa.w - sb.w, sa.h - sb.h}.sub(pair[1].at)
	var out [][]spot
	for _, p := range pair {
		for _, q := range []spot{{a, vec{}}, {b, d}} {
			for _, c := range m.contacts(p.shape, q.shape) {
				at := p.at.add(c).sub(q.at)
				out = append(out, []spot{pair[0], pair[1], {a, at}, {b, at.add(d)}})
			}
		}
	}
	return out
}

// turned is a shape's number half a turn round, if that turn is allowed.
func (m *model) turned(s int) (int, bool) {
	for _, o := range m.turns[m.shapes[s].item] {
		if d := m.shapes[o].turn - m.shapes[s].turn; d == halfTurn || d == -halfTurn {
			return o, true
		}
	}
	return 0, false
}

// apart reports whether the spots keep clear of each other.
func (m *model) apart(spots []spot) bool {
	for i, s := range spots {
		if !m.free(s.shape, s.at, spots[:i]) {
			return false
		}
	}
	return true
}
