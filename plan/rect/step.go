package rect

import "example.org/matside/plan/internal/random"

// expand lists the steps open to node i of this generation. A niche narrower
// than all that is left is given up at once; one with room may be given up at
// the price of its area, as often as the manner's skips allow.
func (b *beam) expand(i int32, n []int, m manner) {
	nd := &b.now.nodes[i]
	minW, minH := b.remaining(nd, n)
	b.tmp = append(b.tmp[:0], b.now.segs[nd.lo:nd.hi]...)
	segs, covered := b.tmp, nd.covered
	for skips, given := int32(0), 0; ; skips++ {
		j := niche(segs)
		top := b.top(segs[j].y)
		if segs[j].y >= b.h || top == b.h && top-segs[j].y < minH {
			return
		}
		width, left, right := span(segs, j, b.w, top)
		if width >= minW && top-segs[j].y >= minH {
			s := stand{i, skips, segs[j].y, top, width, left, right, minW, minH, covered}
			if b.steps(nd, &s, m) {
				if given == m.skips {
					return
				}
				given++
			}
		}
		covered += mul(float64(width), float64(min(left, right)-segs[j].y))
		segs = raise(segs, j, top)
	}
}

// remaining counts what the node has not used, into b.left, and returns the
// least width and height left among shapes.
func (b *beam) remaining(nd *node, n []int) (minW, minH int64) {
	copy(b.left, n)
	for t := nd.trail; b.trail[t].parent >= 0; t = b.trail[t].parent {
		b.left[b.shapes[b.trail[t].shape].kind]--
	}
	minW, minH = b.w+1, b.h+1
	for i := range b.pieces {
		if p := &b.pieces[i]; b.left[p.kind] > 0 {
			minW, minH = min(minW, p.w), min(minH, p.h)
		}
	}
	return minW, minH
}

// stand is the niche a step would use.
type stand struct {
	node, skips int32
	y, top      int64
	width       int64
	left, right int64 // walls
	minW, minH  int64
	covered     float64
}

// steps lists the pieces that go into a niche and may still lead to more than
// the goal. It says whether any fits at all.
func (b *beam) steps(nd *node, s *stand, m manner) bool {
	fits := false
	for i := range b.pieces {
		p := &b.pieces[i]
		if p.w > s.width || p.h > s.top-s.y || b.left[p.kind] == 0 {
			continue
		}
		fits = true
		b.work++
		covered := s.covered + p.area + s.waste(p)
		guide := nd.guide + p.guide
		key := guide / covered
		if m.rate > 0 {
			key = guide - mul(m.rate, covered)
		}
		if key < b.floor || nd.value+p.value+b.ceil.over(b.bin-covered) <= b.goal {
			continue
		}
		right := s.right > s.left
		b.cands = append(b.cands, cand{key, s.node, s.skips, p.shape, b.seq, right})
		b.seq++
		if m.both && p.w < s.width {
			b.cands = append(b.cands, cand{key, s.node, s.skips, p.shape, b.seq, !right})
			b.seq++
		}
	}
	return fits
}

// waste is the area beside and above a piece that nothing left can use: a
// lower bound, so that the ceiling stays one.
func (s *stand) waste(p *piece) float64 {
	lost := 0.0
	if rest := s.width - p.w; rest > 0 && rest < s.minW {
		lost = mul(float64(rest), float64(min(p.h, min(s.left, s.right)-s.y)))
	}
	if above := s.top - s.y - p.h; above > 0 && above < s.minH {
		lost += mul(float64(above), float64(p.w))
	}
	return lost
}

// grow makes a candidate a node of the next generation, unless there are
// enough like it.
func (b *beam) grow(c *cand, v, see []float64, m manner) (node, bool) {
	nd := b.now.nodes[c.node]
	s := &b.shapes[c.shape]
	nd.set += b.name[s.kind]
	if m.alike > 0 && b.sets[nd.set] >= m.alike {
		return nd, false
	}
	b.tmp = append(b.tmp[:0], b.now.segs[nd.lo:nd.hi]...)
	segs := b.tmp
	i := niche(segs)
	top := b.top(segs[i].y)
	width, left, right := span(segs, i, b.w, top)
	for range c.skips {
		nd.covered += mul(float64(width), float64(min(left, right)-segs[i].y))
		segs = raise(segs, i, top)
		i = niche(segs)
		top = b.top(segs[i].y)
		width, left, right = span(segs, i, b.w, top)
	}
	x, y := segs[i].x, segs[i].y
	if c.right {
		x += width - s.w
	}
	lo := len(b.next.segs)
	b.next.segs = lay(b.next.segs, segs, i, s.w, width, y+s.h, c.right)
	if b.known(nd.set, b.next.segs[lo:]) {
		b.next.segs = b.next.segs[:lo]
		return nd, false
	}
	b.sets[nd.set]++
	nd.lo, nd.hi = int32(lo), int32(len(b.next.segs))
	nd.value += v[s.kind]
	nd.guide += see[s.kind]
	nd.covered += b.area[s.kind]
	b.trail = append(b.trail, move{nd.trail, c.shape, x, y})
	nd.trail = int32(len(b.trail) - 1)
	b.next.nodes = append(b.next.nodes, nd)
	return nd, true
}

// known says whether the same pieces under the same skyline are there already,
// by a 64-bit hash: a false yes loses a node, never makes a wrong packing.
func (b *beam) known(set uint64, segs []seg) bool {
	h := set
	for _, s := range segs {
		h = random.Mix(h ^ uint64(s.x)*0x9e3779b97f4a7c15 ^ uint64(s.y))
	}
	if b.skies[h] {
		return true
	}
	b.skies[h] = true
	return false
}

// top is the top of the bin in which height y is.
func (b *beam) top(y int64) int64 {
	if y < b.each {
		return b.each
	}
	return min(b.h, (y/b.each+1)*b.each)
}
