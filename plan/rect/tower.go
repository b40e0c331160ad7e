package rect

import "slices"

// A tower holds all bins at once, one on the other. With more bins than
// tallest one beam says too little about each; with more pieces than longest
// its nodes cost too much.
const (
	tallest = 12
	longest = 250
)

// few says that the bins wanted are so few, of so many different pieces, that
// patterns say nothing, there being too many, and towers do best.
func (s *search) few() bool { return s.count-1 <= 4 && !s.p.many() }

// towers asks whether everything goes into a bin fewer, by beams that fill all
// of them: the area that may still be lost is one sum for the whole, so that
// what is saved on one bin serves the others. Bins packed one by one leave the
// awkward pieces to the last.
//
// What is lost is a hundredth of the whole or less, so that values shaken at
// random would hide it. The runs differ in how fast values grow with area, and
// in where pieces may lie.
func (d *diving) towers(width int) {
	if d.count-1 > tallest || total(d.s.p.counts()) > longest {
		return
	}
	betas := []float64{1, 0.3, 3, 0.1}
	if !d.s.few() {
		d.built++
		betas = betas[d.built%4:][:1]
	}
	for _, beta := range betas {
		for _, both := range []bool{false, true} {
			if d.learn(d.tower(beta, manner{width: width, skips: 1, both: both, alike: 1})); d.met() || d.halted() {
				return
			}
		}
	}
}

// tower packs everything into a bin fewer than the best, or returns nil.
func (d *diving) tower(beta float64, m manner) []pattern {
	n, v := d.s.p.counts(), d.s.worth(0)
	all, least := 0.0, d.s.bin
	for k := range v {
		all += mul(v[k], float64(n[k]))
		least = min(least, v[k])
	}
	m.over = all - least/2 // a node that must leave out a piece is of no use
	bins := d.count - 1
	d.beam.stack(bins)
	spots, _ := d.beam.run(n, v, d.s.worth(beta), m)
	d.beam.stack(1)
	if len(spots) < total(n) {
		return nil
	}
	return d.s.p.storeys(spots, bins)
}

// storeys takes a tower apart into its bins, those left empty not counted.
func (p *problem) storeys(spots []spot, bins int) []pattern {
	pats := make([]pattern, bins)
	for _, sp := range spots {
		pat := &pats[sp.y/p.h]
		sp.y %= p.h
		pat.spots, pat.times = append(pat.spots, sp), 1
	}
	return slices.DeleteFunc(pats, func(pat pattern) bool { return pat.times == 0 })
}
