package rect

import "example.org/matside/plan/length"

// Strip packs all of sizes into a strip w wide, as low as it can and no higher
// than maxH; it reports the height used, false when it found no way.
func Strip(w, maxH length.Len, sizes []Size, opt Options) (Bin, length.Len, bool) {
	wanted := 0
	for _, s := range sizes {
		wanted += max(s.Count, 0)
	}
	p := newProblem(w, maxH, sizes, nil)
	if wanted == 0 || total(p.counts()) < wanted {
		return nil, 0, wanted == 0
	}
	spots := p.lowest(opt)
	if spots == nil {
		return nil, 0, false
	}
	return p.bins([]pattern{{spots, 1}})[0], length.Len(p.top(spots)) * p.unit, true
}

// stripWidths are the beams that an effort sends out, each to better the last.
func (e Effort) stripWidths() []int {
	switch e {
	case Quick:
		return []int{4}
	case Thorough:
		return []int{4, 32, 256, 2048}
	default:
		return []int{4, 32, 256}
	}
}

// lowest packs everything as low as it can by halving the heights in question:
// how low a beam gets depends on the height it is told to keep within. A beam may
// find no way where there is one; all stacked is there for that.
func (p *problem) lowest(opt Options) (best []spot) {
	beam := newBeam(p.w, p.h, p.kinds)
	floor, top := p.floor(), p.h+1
	for _, width := range opt.Effort.stripWidths() {
		for low := floor; low < top; {
			mid := low + (top-1-low)/2
			if spots := p.within(beam, mid, width, opt.Effort); spots != nil {
				best, top = spots, p.top(spots)
			} else {
				low = mid + 1
			}
			if opt.Stop != nil && opt.Stop() {
				return best
			}
		}
	}
	if best == nil {
		return p.stacked()
	}
	return best
}

// stacked lays one piece on the other, each the lower way, or returns nil when
// that is too high.
func (p *problem) stacked() (out []spot) {
	y := int64(0)
	for i, k := range p.kinds {
		turned := k.turn && k.w < k.h && k.h <= p.w
		for range k.n {
			if out = append(out, spot{i, 0, y, turned}); turned {
				y += k.w
			} else {
				y += k.h
			}
		}
	}
	if y > p.h {
		return nil
	}
	return out
}

// within packs everything no higher than h, or returns nil.
func (p *problem) within(b *beam, h int64, width int, e Effort) []spot {
	n := p.counts()
	if len(p.kinds) == 1 {
		q := *p
		q.h = h
		if spots := q.most(0, n[0], e); len(spots) == n[0] {
			return spots
		}
		return nil
	}
	b.lower(h)
	v := make([]float64, len(n))
	for _, beta := range []float64{1, 0.1} {
		all, least := 0.0, b.bin
		for k := range v {
			v[k] = b.area[k] + mul(beta, mul(b.area[k]/b.bin, b.area[k]))
			all += mul(v[k], float64(n[k]))
			least = min(least, v[k])
		}
		// a node that must leave out even the least piece is of no use
		m := manner{width: width, skips: 1, both: beta < 1, over: all - least/2}
		if spots, _ := b.run(n, v, v, m); len(spots) == total(n) {
			return spots
		}
	}
	return nil
}

// floor is a height below which the pieces cannot go: their area's, the tallest
// one's, and that of those too wide to lie side by side.
func (p *problem) floor() int64 {
	area, tallest, stacked := 0.0, int64(1), int64(0)
	for _, k := range p.kinds {
		area += mul(k.area(), float64(k.n))
		w, h := k.w, k.h
		if k.turn {
			w, h = min(w, h), min(w, h)
		}
		tallest = max(tallest, h)
		if 2*w > p.w {
			stacked += h * int64(k.n)
		}
	}
	// what rounding could hide is given away
	return max(tallest, stacked, int64(mul(area/float64(p.w), 1-1e-9)))
}

// top is the height that spots reach.
func (p *problem) top(spots []spot) int64 {
	top := int64(0)
	for _, s := range spots {
		h := p.kinds[s.kind].h
		if s.turned {
			h = p.kinds[s.kind].w
		}
		top = max(top, s.y+h)
	}
	return top
}
