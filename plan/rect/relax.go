package rect

import (
	"cmp"
	"slices"

	"example.org/matside/plan/internal/cover"
)

// relaxed is the linear relaxation over the pieces still wanted, its columns
// growing as they are found (Gilmore and Gomory's column generation). Its
// prices say what each piece is worth; a pattern that fetches more than the
// price of a bin, 1, belongs into it.
type relaxed struct {
	d    *diving
	n    []int     // copies wanted, by kind
	v    []float64 // prices, by kind
	row  []int     // by kind, -1 if none wanted
	kind []int     // by row
	lp   *cover.Program
	pat  []int // by column: its pattern in the pool; -1 for the first ones, a single piece each
	in   []bool
	obj  float64
}

// Columns start from the pool's patterns that fetched this much at the last
// prices known; others come in when they price out.
const promising = 0.8

// worthwhile is what a pattern must fetch to count as pricing out; it leaves
// room for the rounding of prices.
const worthwhile = 1 + 1e-5

func (d *diving) relax(n []int, v []float64) *relaxed {
	r := &relaxed{d: d, n: n, row: make([]int, len(n)), v: slices.Clone(v)}
	var demand []float64
	for k, c := range n {
		r.row[k] = -1
		if c > 0 {
			r.row[k] = len(r.kind)
			r.kind = append(r.kind, k)
			demand = append(demand, float64(c))
			r.pat = append(r.pat, -1)
		}
	}
	r.lp = cover.New(demand, 1)
	for i := range d.pool.pats {
		if d.pool.worth(i, v, n) >= promising {
			r.add(i)
		}
	}
	return r
}

// add makes a column of pool pattern i, cut back to what is wanted.
func (r *relaxed) add(i int) {
	for len(r.in) < len(r.d.pool.pats) {
		r.in = append(r.in, false)
	}
	r.in[i] = true
	var column []cover.Entry
	set := r.d.pool.sets[i]
	for a := 0; a < len(set); {
		z := a
		for z < len(set) && set[z] == set[a] {
			z++
		}
		if q := min(z-a, r.n[set[a]]); q > 0 {
			column = append(column, cover.Entry{Row: r.row[set[a]], Count: float64(q)})
		}
		a = z
	}
	if len(column) > 0 {
		r.lp.Add(column, 1)
		r.pat = append(r.pat, i)
	}
}

// mostPivots bounds one run of the simplex method; none has come near it.
const mostPivots = 100_000

// solve brings the relaxation and its prices up to date.
func (r *relaxed) solve() {
	before := r.lp.Work()
	r.lp.Solve(mostPivots)
	r.obj = r.lp.Cost()
	r.d.beam.work += int64((r.lp.Work() - before) / workOfLP)
	for k, row := range r.row {
		r.v[k] = 0
		if row >= 0 {
			// the trace of area makes a piece that costs nothing still welcome
			r.v[k] = max(r.lp.Prices()[row], 0) + mul(1e-6, r.d.beam.area[k]/r.d.s.bin)
		}
	}
}

// generate adds patterns that price out, from the pool or from the beam, until
// none is found or the rounds are done.
func (r *relaxed) generate(rounds int, m manner) {
	for range rounds {
		r.solve()
		if r.fromPool() || r.fromBeam(m) {
			continue
		}
		return
	}
	r.solve()
}

func (r *relaxed) fromPool() bool {
	added := 0
	for i := range r.d.pool.pats {
		if (i >= len(r.in) || !r.in[i]) && r.d.pool.worth(i, r.v, r.n) > worthwhile {
			r.add(i)
			if added++; added == columnsAtOnce {
				break
			}
		}
	}
	return added > 0
}

// fromBeam fills a bin at the prices, then, while that finds nothing for want
// of width, at prices shaken a little.
func (r *relaxed) fromBeam(m manner) bool {
	d := r.d
	m.rate, m.over = 1/d.s.bin, worthwhile
	see := r.v
	for range pricings {
		d.beam.run(r.n, r.v, see, m)
		if len(d.beam.hits) > 0 {
			return r.takeHits()
		}
		if !d.beam.cut {
			return false
		}
		see = d.shaken(r.v)
	}
	return false
}

// takeHits adds the best patterns of the last run.
func (r *relaxed) takeHits() bool {
	d := r.d
	hits := d.beam.hits
	slices.SortFunc(hits, func(x, y hit) int {
		if x.value != y.value {
			return cmp.Compare(y.value, x.value)
		}
		return cmp.Compare(x.trail, y.trail)
	})
	added := 0
	for _, h := range hits {
		if d.pool.add(d.beam.spots(h.trail)) {
			r.add(len(d.pool.pats) - 1)
			if added++; added == columnsAtOnce {
				break
			}
		}
	}
	return added > 0
}

// spotsOf gives what column c lays in a bin, cut back to what is wanted.
func (r *relaxed) spotsOf(c int) []spot {
	if r.pat[c] < 0 {
		return []spot{{kind: r.kind[c]}} // every kind fits as it is, see newProblem
	}
	left := slices.Clone(r.n)
	var out []spot
	for _, sp := range r.d.pool.pats[r.pat[c]] {
		if left[sp.kind] > 0 {
			left[sp.kind]--
			out = append(out, sp)
		}
	}
	return out
}

// fix takes every pattern the relaxation wants once or more, or else the one
// it wants most, out of what is wanted.
func (r *relaxed) fix() []pattern {
	type want struct {
		col int
		x   float64
	}
	var ws []want
	for c, x := range r.lp.Level() {
		if x > 0 {
			ws = append(ws, want{c, x})
		}
	}
	slices.SortFunc(ws, func(a, b want) int {
		if a.x != b.x {
			return cmp.Compare(b.x, a.x)
		}
		return cmp.Compare(a.col, b.col)
	})
	var out []pattern
	for i, w := range ws {
		if i > 0 && w.x < 0.999 {
			break
		}
		spots := r.spotsOf(w.col)
		if len(spots) == 0 {
			continue
		}
		t := max(1, min(times(spots, r.n), int(w.x+0.001)))
		for _, sp := range spots {
			r.n[sp.kind] -= t
		}
		out = append(out, pattern{spots, t})
	}
	return out
}
