package rect

import "slices"

// pool holds the patterns met so far, each set of pieces once.
type pool struct {
	pats [][]spot
	sets [][]int32 // kinds of pats, sorted, with repeats
	seen map[string]bool
}

// add keeps a pattern unless its set of pieces is there already.
func (p *pool) add(spots []spot) bool {
	set := make([]int32, len(spots))
	for i, s := range spots {
		set[i] = int32(s.kind)
	}
	slices.Sort(set)
	key := make([]byte, 0, 3*len(set))
	for _, k := range set {
		key = append(key, byte(k), byte(k>>8), byte(k>>16))
	}
	if p.seen[string(key)] {
		return false
	}
	if p.seen == nil {
		p.seen = map[string]bool{}
	}
	p.seen[string(key)] = true
	p.pats = append(p.pats, spots)
	p.sets = append(p.sets, set)
	return true
}

// worth is what the pieces of pattern i would fetch at prices v, when no more
// than n[k] of a kind count.
func (p *pool) worth(i int, v []float64, n []int) float64 {
	sum, run, last := 0.0, 0, int32(-1)
	for _, k := range p.sets[i] {
		if k != last {
			run, last = 0, k
		}
		if run++; run <= n[k] {
			sum += v[k]
		}
	}
	return sum
}
