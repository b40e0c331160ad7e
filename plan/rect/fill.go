package rect

import "example.org/matside/plan/length"

// Fill packs one w x h bin with the most value out of at most Count copies of
// each size; value[i] is the worth of one copy of size i, nil means its area.
// Sizes that do not fit, or are worth nothing, are left out.
func Fill(w, h length.Len, sizes []Size, value []int64, opt Options) Bin {
	p := newProblem(w, h, sizes, value)
	if len(p.kinds) == 1 && (value == nil || value[p.from[0][0].size] > 0) {
		return p.bins([]pattern{{p.most(0, p.kinds[0].n, opt.Effort), 1}})[0]
	}
	s := newSearch(p, opt)
	v := s.worth(0)
	if value != nil {
		for i := range v {
			v[i] = float64(value[p.from[i][0].size])
		}
	}
	beam := newBeam(p.w, p.h, p.kinds)
	width := 32
	switch opt.Effort {
	case Quick:
		width = 4
	case Thorough:
		width = 512
	}
	var best []spot
	most := 0.0
	for _, m := range []manner{{width: width}, {width: width, skips: 1, both: true}} {
		if spots, worth := beam.run(p.counts(), v, v, m); worth > most {
			best, most = spots, worth
		}
	}
	if len(best) == 0 {
		return nil
	}
	return p.bins([]pattern{{best, 1}})[0]
}
