package bound

import (
	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
)

// PerBin returns a number that no bin of w x h holds more pieces of s than:
// the least of the bounds below. Zero if not one fits.
func PerBin(w, h length.Len, s rect.Size) int {
	s.Count = 1
	p := newProblem(w, h, []rect.Size{s})
	if len(p.kinds) == 0 {
		return 0
	}
	return int(p.perBin(p.kinds[0]))
}

// bySize proves what the size that fills most bins needs by itself.
func (s *search) bySize() {
	for _, k := range s.kinds {
		most := s.alone(k)
		s.raise((k.count + most - 1) / most)
	}
}

// alone is perBin for one kind of several, in its own coarser unit.
func (p *problem) alone(k kind) int64 {
	q := &problem{w: p.w, h: p.h, square: p.square, kinds: []kind{k}}
	q.coarsen()
	q.merge()
	return q.perBin(q.kinds[0])
}

// perBin is exact for pieces that lie one way; for turning ones the least of
// area and Barnes.
func (p *problem) perBin(k kind) int64 {
	if !k.turn {
		return (p.w / k.w) * (p.h / k.h)
	}
	most := p.w * p.h / (k.w * k.h)
	return min(most, barnes(p.w, p.h, k.w, k.h))
}

// barnes is the bound of Barnes ("Packing the maximum number of m x n tiles
// in a large p x q rectangle", Discrete Math. 26 (1979)): a w x h tile is a
// stack of w x 1 strips and as well of h x 1 strips, and of n x 1 strips a
// W x H bin wastes at least min(rs, (n-r)(n-s)), r = W mod n, s = H mod n.
// Sides are whole numbers without a common divisor.
func barnes(binW, binH, w, h int64) int64 {
	waste := func(n int64) int64 {
		r, s := binW%n, binH%n
		return min(r*s, (n-r)*(n-s))
	}
	area, piece := binW*binH, w*h
	lost := max(waste(w), waste(h))
	// The waste leaves the same rest modulo a piece as the bin does.
	if rest := (area - lost) % piece; rest > 0 {
		lost += rest
	}
	return (area - lost) / piece
}
