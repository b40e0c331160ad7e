package cover

// Below these a number counts as zero: what a column fetches over its cost, a
// pivot, a difference of ratios.
const (
	noGain  = 1e-7
	noPivot = 1e-9
	noRatio = 1e-12
)

// Solve brings columns in until none fetches more than its cost, or for so
// many pivots; it says whether it came to the end.
func (p *Program) Solve(pivots int) bool {
	for range pivots {
		c, ok := p.entering()
		if !ok {
			return true
		}
		if !p.enter(c) {
			return false
		}
	}
	return false
}

// entering finds the column, or surplus, with the most to gain (Dantzig). A
// surplus gains where a row's price is below zero: holding more of it than
// demanded pays.
func (p *Program) entering() (c int, ok bool) {
	most, e := noGain, 0
	for n, end := range p.end {
		gain := -p.costs[n]
		for ; e < end; e++ {
			gain += float64(p.held[e].Count * p.prices[p.held[e].Row])
		}
		if gain > most && !p.inside[n] {
			c, most, ok = n, gain, true
		}
	}
	for i, v := range p.prices {
		if -v > most {
			c, most, ok = -1-i, -v, true
		}
	}
	p.work += len(p.held)
	return c, ok
}

// enter brings a column, or a surplus, into the basis in place of the one it
// exhausts first. It says no where it would exhaust none, which costs of
// nothing or more do not allow but rounding might.
func (p *Program) enter(c int) bool {
	p.measure(c)
	out, ratio := -1, 0.0
	for r, s := range p.step {
		if s <= noPivot {
			continue
		}
		q := max(p.level[r], 0) / s
		if out < 0 || q < ratio-noRatio || q <= ratio+noRatio && s > p.step[out] {
			out, ratio = r, q
		}
	}
	if out < 0 {
		return false
	}
	if b := p.basis[out]; b >= 0 {
		p.inside[b] = false
	}
	if c >= 0 {
		p.inside[c] = true
	}
	p.basis[out] = c
	p.eliminate(out)
	p.price()
	return true
}

// measure sets step to the inverse times a column, or a surplus.
func (p *Program) measure(c int) {
	surplus := [1]Entry{{-1 - c, -1}}
	entries := surplus[:]
	if c >= 0 {
		entries = p.column(c)
	}
	for r := range p.step {
		row, sum := p.row(r), 0.0
		for _, e := range entries {
			sum += float64(row[e.Row] * e.Count)
		}
		p.step[r] = sum
	}
}

func (p *Program) row(r int) []float64 { return p.inverse[r*p.rows : (r+1)*p.rows] }

// eliminate makes step the unit column of row out.
func (p *Program) eliminate(out int) {
	pivot, share := p.row(out), 1/p.step[out]
	for k := range pivot {
		pivot[k] = float64(pivot[k] * share)
	}
	p.level[out] = float64(p.level[out] * share)
	for r, s := range p.step {
		if r == out || s == 0 {
			continue
		}
		row := p.row(r)
		for k, v := range pivot {
			row[k] -= float64(s * v)
		}
		p.level[r] -= float64(s * p.level[out])
	}
	p.work += p.rows * p.rows
}

// price sets the prices to the costs of the basis times its inverse.
func (p *Program) price() {
	clear(p.prices)
	for r, c := range p.basis {
		if cost := p.cost(c); cost != 0 {
			for k, v := range p.row(r) {
				p.prices[k] += float64(cost * v)
			}
		}
	}
}
