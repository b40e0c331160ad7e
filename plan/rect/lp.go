package rect

// column is a pattern seen by the linear relaxation: how many of each kind.
type column struct {
	kinds  []int32
	counts []float64
}

// lp is the covering relaxation of Gilmore and Gomory: the least sum of x over
// the columns so that each row i is covered demand[i] times. It is solved by
// the revised primal simplex method with an explicit inverse; rows are few.
// Its floats guide the search and decide nothing.
type lp struct {
	m      int
	end    []int32   // where column j's entries end; they begin at j-1's end
	kinds  []int32   // rows of the entries
	counts []float64 // and how many
	inv    []float64 // m x m, by rows
	basis  []int     // column, or -1-i for row i's surplus
	x      []float64 // of the basis
	y      []float64 // prices of the rows
	u      []float64
	inBase []bool
	pivots int
}

// newLP starts from one column for each row, holding one (or each[i]) of it.
func newLP(demand []float64, each []float64) *lp {
	m := len(demand)
	l := &lp{m: m, inv: make([]float64, m*m), x: make([]float64, m), y: make([]float64, m), u: make([]float64, m)}
	r := rng(3)
	for i := range m {
		l.add(column{[]int32{int32(i)}, []float64{each[i]}})
		l.inv[i*m+i] = 1 / each[i]
		l.basis = append(l.basis, i)
		l.inBase[i] = true
		noise := float64(r.next()>>40) / float64(1<<24)
		l.x[i] = (demand[i] + mul(1e-5, 1+noise)) / each[i]
	}
	return l
}

func (l *lp) add(c column) {
	l.kinds = append(l.kinds, c.kinds...)
	l.counts = append(l.counts, c.counts...)
	l.end = append(l.end, int32(len(l.kinds)))
	l.inBase = append(l.inBase, false)
}

const tiny = 1e-9

// solve pivots until no column prices out, or limit pivots are done, and
// returns the optimum.
func (l *lp) solve(limit int) float64 {
	for range limit {
		l.price()
		enter, best := 0, 1e-7
		found := false
		e := int32(0)
		for j, end := range l.end {
			v := -1.0
			for ; e < end; e++ {
				v += mul(l.counts[e], l.y[l.kinds[e]])
			}
			if v > best && !l.inBase[j] {
				enter, best, found = j, v, true
			}
		}
		for i, y := range l.y {
			if -y > best {
				enter, best, found = -1-i, -y, true
			}
		}
		if !found || !l.pivot(enter) {
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

// price sets y = c B^-1.
func (l *lp) price() {
	clear(l.y)
	for i, b := range l.basis {
		if b < 0 {
			continue
		}
		row := l.inv[i*l.m : (i+1)*l.m]
		for k, v := range row {
			l.y[k] += v
		}
	}
}

// pivot brings a column, or a surplus, into the basis.
func (l *lp) pivot(enter int) bool {
	l.pivots++
	m, begin := l.m, int32(0)
	if enter > 0 {
		begin = l.end[enter-1]
	}
	for i := range m {
		row := l.inv[i*m : (i+1)*m]
		s := 0.0
		if enter >= 0 {
			for e := begin; e < l.end[enter]; e++ {
				s += mul(row[l.kinds[e]], l.counts[e])
			}
		} else {
			s = -row[-1-enter]
		}
		l.u[i] = s
	}
	out, ratio := -1, 0.0
	for i, u := range l.u {
		if u <= tiny {
			continue
		}
		q := max(l.x[i], 0) / u
		if out < 0 || q < ratio-1e-12 || q <= ratio+1e-12 && u > l.u[out] {
			out, ratio = i, q
		}
	}
	if out < 0 {
		return false
	}
	if b := l.basis[out]; b >= 0 {
		l.inBase[b] = false
	}
	if enter >= 0 {
		l.inBase[enter] = true
	}
	l.basis[out] = enter
	prow := l.inv[out*m : (out+1)*m]
	d := 1 / l.u[out]
	for k := range prow {
		prow[k] = mul(prow[k], d)
	}
	l.x[out] = mul(l.x[out], d)
	for i, u := range l.u {
		if i == out || u == 0 {
			continue
		}
		row := l.inv[i*m : (i+1)*m]
		for k, v := range prow {
			row[k] -= mul(u, v)
		}
		l.x[i] -= mul(u, l.x[out])
	}
	return true
}
