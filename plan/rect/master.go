package rect

import (
	"sort"
)

// pool holds the patterns met so far, each once.
type pool struct {
	pats [][]spot
	cols [][]int32 // kinds, sorted, with repeats
	seen map[string]bool
}

func (p *pool) add(spots []spot) bool {
	ks := make([]int32, len(spots))
	for i, s := range spots {
		ks[i] = int32(s.kind)
	}
	sort.Slice(ks, func(i, j int) bool { return ks[i] < ks[j] })
	key := make([]byte, 0, 2*len(ks))
	for _, k := range ks {
		key = append(key, byte(k), byte(k>>8))
	}
	if p.seen[string(key)] {
		return false
	}
	p.seen[string(key)] = true
	p.pats = append(p.pats, spots)
	p.cols = append(p.cols, ks)
	return true
}

// relaxed is a linear relaxation over the kinds still wanted.
type relaxed struct {
	s    *search
	n    []int   // copies wanted, by kind
	row  []int32 // by kind, -1 if none wanted
	kind []int32 // by row
	lp   *lp
	pat  []int // pool pattern by column, -1 for the first ones
	obj  float64
}

func (s *search) relax(n []int) *relaxed {
	r := &relaxed{s: s, n: n, row: make([]int32, len(n))}
	var demand, each []float64
	for k, c := range n {
		r.row[k] = -1
		if c > 0 {
			r.row[k] = int32(len(r.kind))
			r.kind = append(r.kind, int32(k))
			demand = append(demand, float64(c))
			each = append(each, 1)
			r.pat = append(r.pat, -1)
		}
	}
	r.lp = newLP(demand, each)
	for i := range s.pool.pats {
		r.add(i)
	}
	return r
}

// add makes a column of pool pattern i, cut back to what is wanted.
func (r *relaxed) add(i int) {
	var c column
	ks := r.s.pool.cols[i]
	for j := 0; j < len(ks); {
		e := j
		for e < len(ks) && ks[e] == ks[j] {
			e++
		}
		if q := min(e-j, r.n[ks[j]]); q > 0 {
			c.kinds = append(c.kinds, r.row[ks[j]])
			c.counts = append(c.counts, float64(q))
		}
		j = e
	}
	if len(c.kinds) > 0 {
		r.lp.add(c)
		r.pat = append(r.pat, i)
	}
}

// generate adds patterns that price out until none is found or rounds are done.
func (r *relaxed) generate(rounds int, pr params) bool {
	s := r.s
	v := make([]float64, len(r.n))
	see := make([]float64, len(r.n))
	for range rounds {
		r.obj = r.lp.solve(10000)
		for k, row := range r.row {
			v[k] = 0
			if row >= 0 {
				v[k] = max(r.lp.y[row], 0) + mul(1e-6, s.p.kinds[k].area()/s.bin)
			}
		}
		q := pr
		q.over = 1 + 1e-5
		q.rate = 1 / s.bin
		best := 0.0
		for try := 0; ; try++ {
			if try == tune.tries {
				return true
			}
			copy(see, v)
			if try > 0 {
				for k := range see {
					see[k] = mul(v[k], 1-tune.noise/2+mul(tune.noise, float64(s.rng.next()>>40)/float64(1<<24)))
				}
			}
			_, best = s.beam.run(r.n, v, see, q)
			if best > q.over {
				break
			}
		}
		hits := s.beam.found
		sort.Slice(hits, func(i, j int) bool {
			if hits[i].value != hits[j].value {
				return hits[i].value > hits[j].value
			}
			return hits[i].trail < hits[j].trail
		})
		added := 0
		for _, h := range hits {
			if s.pool.add(s.beam.spots(h.trail)) {
				r.add(len(s.pool.pats) - 1)
				if added++; added == tune.cols {
					break
				}
			}
		}
		if added == 0 {
			return true
		}
	}
	r.obj = r.lp.solve(10000)
	return false
}

// dive fixes patterns one after the other where the relaxation says so.
func (s *search) dive(first, next int, pr params) []pattern {
	n := s.counts()
	var out []pattern
	bins := 0
	for {
		left := 0
		for _, c := range n {
			left += c
		}
		if left == 0 {
			return out
		}
		r := s.relax(n)
		rounds := next
		if bins == 0 {
			rounds = first
		}
		r.generate(rounds, pr)
		if tune.trace {
			println("dive", bins, left, int(r.obj*1000), len(s.pool.pats), r.lp.pivots, s.beam.evals)
		}
		if s.best != nil && bins+int(r.obj+0.999) >= s.count {
			return nil
		}
		bins += r.fix(&out)
	}
}

// fix takes every pattern the relaxation wants once or more, or else the one
// it wants most, out of the counts.
func (r *relaxed) fix(out *[]pattern) int {
	type want struct {
		pat int
		x   float64
	}
	var ws []want
	for i, b := range r.lp.basis {
		if b >= 0 {
			ws = append(ws, want{b, r.lp.x[i]})
		}
	}
	sort.Slice(ws, func(i, j int) bool {
		if ws[i].x != ws[j].x {
			return ws[i].x > ws[j].x
		}
		return ws[i].pat < ws[j].pat
	})
	bins := 0
	for i, w := range ws {
		if i > 0 && w.x < 0.999 {
			break
		}
		var spots []spot
		if w := r.pat[w.pat]; w >= 0 {
			spots = r.s.pool.pats[w]
		} else {
			k := int(r.kind[ws[i].pat])
			spots = []spot{{kind: k}}
			if r.s.p.kinds[k].w > r.s.p.w || r.s.p.kinds[k].h > r.s.p.h {
				spots[0].turned = true
			}
		}
		var kept []spot
		left := append([]int(nil), r.n...)
		for _, sp := range spots {
			if left[sp.kind] > 0 {
				left[sp.kind]--
				kept = append(kept, sp)
			}
		}
		if len(kept) == 0 {
			continue
		}
		t := max(1, min(times(kept, r.n), int(w.x+0.001)))
		for _, sp := range kept {
			r.n[sp.kind] -= t
		}
		*out = append(*out, pattern{kept, t})
		bins += t
	}
	return bins
}
