package rect

import "example.org/matside/plan/length"

// Fill packs one w x h bin with the most value out of at most Count copies of
// each size; value[i] is the worth of one copy of size i, nil means its area.
// Sizes that do not fit, or are worth nothing, are left out.
func Fill(w, h length.Len, sizes []Size, value []int64, opt Options) Bin {
	p := newProblem(w, h, sizes)
	s := newSearch(p, opt)
	v := make([]float64, len(p.kinds))
	for i, k := range p.kinds {
		v[i] = k.area()
	}
	spots, _ := s.beam.run(s.counts(), v, v, params{width: 4})
	if len(spots) == 0 {
		return nil
	}
	return p.bins([]pattern{{spots, 1}})[0]
}

// Strip packs all of sizes into a strip w wide, as low as it can and no higher
// than maxH; it reports the height used, false when it found no way.
func Strip(w, maxH length.Len, sizes []Size, opt Options) (Bin, length.Len, bool) {
	b := Fill(w, maxH, sizes, nil, opt)
	n, top := 0, length.Len(0)
	for _, s := range sizes {
		n += s.Count
	}
	for _, p := range b {
		s := sizes[p.Size]
		if p.Turned {
			top = max(top, p.Y+s.W)
		} else {
			top = max(top, p.Y+s.H)
		}
	}
	return b, top, len(b) == n
}

// Most packs as many copies of one size as it can into a w x h bin; Count is
// the most that are wanted.
func Most(w, h length.Len, size Size) Bin {
	return Fill(w, h, []Size{size}, nil, Options{})
}
