package rect

// column is a pattern as the relaxation sees it: how many of each row.
type column struct {
	rows   []int32
	counts []float64
}

// lp is a covering problem: the least sum of x over the columns so that row i
// is covered demand[i] times. It is solved by the revised primal simplex method
// with an explicit inverse, there being few rows. Its floats guide the search;
// nothing exact hangs on them.
type lp struct {
	m      int
	end    []int32   // where column j's entries end; they begin at j-1's end
	rows   []int32   // of the entries
	counts []float64 // of the entries
	inv    []float64 // the basis's inverse, m x m, by rows
	basis  []int     // a column, or -1-i for the surplus of row i
	inside []bool    // by column: in the basis
	x      []float64 // of the basis
	y      []float64 // prices of the rows
	u      []float64 // scratch: the entering column in terms of the basis
	work   int64     // multiplications, about
}

// newLP starts from a column for each row that covers it once. Demands are
// shaken by about 1e-5, which keeps the simplex method from standing still where many
// bases share a corner.
func newLP(demand []float64) *lp {
	m := len(demand)
	l := &lp{m: m, inv: make([]float64, m*m), x: make([]float64, m), y: make([]float64, m), u: make([]float64, m)}
	r := rng(3)
	for i := range m {
		l.add(column{[]int32{int32(i)}, []float64{1}})
		l.inv[i*m+i] = 1
		l.basis = append(l.basis, i)
		l.inside[i] = true
		l.x[i] = demand[i] + mul(1e-5, 1+r.unit())
	}
	return l
}

func (l *lp) add(c column) {
	l.rows = append(l.rows, c.rows...)
	l.counts = append(l.counts, c.counts...)
	l.end = append(l.end, int32(len(l.rows)))
	l.inside = append(l.inside, false)
}

// Below these a number counts as zero: a gain in price, a pivot, a ratio.
const (
	noGain  = 1e-7
	noPivot = 1e-9
	noRatio = 1e-12
)

// solve pivots until no column prices out, or the limit is reached, and
// returns the optimum.
func (l *lp) solve(limit int) float64 {
	for range limit {
		l.price()
		j, ok := l.entering()
		if !ok || !l.pivot(j) {
			break
		}
	}
	sum := 0.0
	for i, b := range l.basis {
		if b >= 0 {
			sum += l.x[i]
		}
	}
	return sum
}

// price sets y to the cost of the basis times its inverse: the sum of the rows
// that are columns, for a column costs 1 and a surplus nothing.
func (l *lp) price() {
	clear(l.y)
	for i, b := range l.basis {
		if b < 0 {
			continue
		}
		for k, v := range l.inv[i*l.m : (i+1)*l.m] {
			l.y[k] += v
		}
	}
}

// entering finds the column, or surplus, with the most to gain (Dantzig).
func (l *lp) entering() (j int, ok bool) {
	best, e := noGain, int32(0)
	for c, end := range l.end {
		gain := -1.0
		for ; e < end; e++ {
			gain += mul(l.counts[e], l.y[l.rows[e]])
		}
		if gain > best && !l.inside[c] {
			j, best, ok = c, gain, true
		}
	}
	for i, y := range l.y {
		if -y > best {
			j, best, ok = -1-i, -y, true
		}
	}
	l.work += int64(len(l.rows))
	return j, ok
}

// pivot brings a column, or a surplus, into the basis. It says no when that
// could go on for ever, which covering problems do not allow but rounding might.
func (l *lp) pivot(j int) bool {
	l.column(j)
	out, ratio := -1, 0.0
	for i, u := range l.u {
		if u <= noPivot {
			continue
		}
		q := max(l.x[i], 0) / u
		if out < 0 || q < ratio-noRatio || q <= ratio+noRatio && u > l.u[out] {
			out, ratio = i, q
		}
	}
	if out < 0 {
		return false
	}
	if b := l.basis[out]; b >= 0 {
		l.inside[b] = false
	}
	if j >= 0 {
		l.inside[j] = true
	}
	l.basis[out] = j
	l.eliminate(out)
	return true
}

// column sets u to the inverse times column j.
func (l *lp) column(j int) {
	var rows []int32
	var counts []float64
	if j >= 0 {
		begin := int32(0)
		if j > 0 {
			begin = l.end[j-1]
		}
		rows, counts = l.rows[begin:l.end[j]], l.counts[begin:l.end[j]]
	}
	for i := range l.m {
		inv := l.inv[i*l.m : (i+1)*l.m]
		if j < 0 {
			l.u[i] = -inv[-1-j]
			continue
		}
		sum := 0.0
		for e, k := range rows {
			sum += mul(inv[k], counts[e])
		}
		l.u[i] = sum
	}
}

// eliminate makes u the unit column of row out.
func (l *lp) eliminate(out int) {
	m := l.m
	row := l.inv[out*m : (out+1)*m]
	d := 1 / l.u[out]
	for k := range row {
		row[k] = mul(row[k], d)
	}
	l.x[out] = mul(l.x[out], d)
	for i, u := range l.u {
		if i == out || u == 0 {
			continue
		}
		to := l.inv[i*m : (i+1)*m]
		for k, v := range row {
			to[k] -= mul(u, v)
		}
		l.x[i] -= mul(u, l.x[out])
	}
	l.work += int64(m * m)
}
