package cover

// Entry is how many of a row a column holds.
type Entry struct {
	Row   int
	Count float64
}

// Program is a covering problem whose columns come in as they are found: a
// revised simplex with the basis inverse kept dense, there being few rows.
// A row no column holds is covered by a column of its own at a high cost.
type Program struct {
	columns [][]Entry
	costs   []float64
	inverse [][]float64 // row r belongs to the r-th basic column
	basis   []int       // a column; -1-i for the surplus of row i; missing-i for what stands in for row i
	level   []float64   // of each basic column
	prices  []float64
	step    []float64 // scratch
}

// missing-i in the basis stands in for columns that hold row i.
const missing = -1 << 30

// dear is the cost of covering a row by no column.
const dear = 1 << 20

// epsilon is how far a reduced cost or a pivot must be from zero to count.
const epsilon = 1e-9

// New starts a program without columns. Demands are shaken by a little, each
// differently, which keeps the simplex method from standing still where many
// bases share a corner.
func New(demand []float64) *Program {
	p := &Program{step: make([]float64, len(demand))}
	for i, d := range demand {
		row := make([]float64, len(demand))
		row[i] = 1
		p.inverse = append(p.inverse, row)
		p.basis = append(p.basis, missing-i)
		p.level = append(p.level, d+float64(1e-7*float64(1+i*7919%101)))
	}
	p.price()
	return p
}

// Add takes a column in at a cost and gives its number, from 0.
func (p *Program) Add(column []Entry, cost float64) int {
	p.columns, p.costs = append(p.columns, column), append(p.costs, cost)
	return len(p.columns) - 1
}

// Prices are the dual values of the rows: no column that was added is worth
// more than its cost, once Solve has said true.
func (p *Program) Prices() []float64 { return p.prices }

// Level is how often each column is used, by its number.
func (p *Program) Level() []float64 {
	out := make([]float64, len(p.columns))
	for r, c := range p.basis {
		if c >= 0 {
			out[c] = p.level[r]
		}
	}
	return out
}

// Cost is that of all columns used.
func (p *Program) Cost() (sum float64) {
	for r, c := range p.basis {
		sum += float64(p.level[r] * p.cost(c))
	}
	return sum
}

func (p *Program) cost(column int) float64 {
	switch {
	case column >= 0:
		return p.costs[column]
	case column > missing/2:
		return 0
	}
	return dear
}

// Solve brings columns in until none is worth more than its cost, or for so
// many pivots; it says whether it came to the end.
func (p *Program) Solve(pivots int) bool {
	for range pivots {
		c, gain := p.surplus()
		for k, column := range p.columns {
			if g := p.Worth(column) - p.costs[k]; g > gain {
				c, gain = k, g
			}
		}
		if gain <= 1e-7 || !p.enter(c) {
			return gain <= 1e-7
		}
	}
	return false
}

// surplus is the row whose price is most negative: holding more of it than
// demanded pays.
func (p *Program) surplus() (column int, gain float64) {
	for i, v := range p.prices {
		if -v > gain {
			column, gain = -1-i, -v
		}
	}
	return column, gain
}

// Worth is what a column fetches at the present prices.
func (p *Program) Worth(column []Entry) (sum float64) {
	for _, e := range column {
		sum += float64(e.Count * p.prices[e.Row])
	}
	return sum
}

// enter brings a column into the basis in place of the one it exhausts first.
func (p *Program) enter(column int) bool {
	entries := []Entry{{-1 - column, -1}}
	if column >= 0 {
		entries = p.columns[column]
	}
	out := -1
	for r, row := range p.inverse {
		var s float64
		for _, e := range entries {
			s += float64(e.Count * row[e.Row])
		}
		p.step[r] = s
		if s > epsilon && (out < 0 || float64(p.level[r]*p.step[out]) < float64(p.level[out]*s)) {
			out = r
		}
	}
	if out < 0 {
		return false
	}
	p.pivot(out)
	p.basis[out] = column
	p.price()
	return true
}

func (p *Program) pivot(out int) {
	pivot := p.inverse[out]
	for i := range pivot {
		pivot[i] /= p.step[out]
	}
	amount := p.level[out] / p.step[out]
	for r, row := range p.inverse {
		if s := p.step[r]; r != out && s != 0 {
			for i, v := range pivot {
				row[i] -= float64(s * v)
			}
			p.level[r] = max(0, p.level[r]-float64(s*amount))
		}
	}
	p.level[out] = amount
}

// price works out the prices of the basis.
func (p *Program) price() {
	p.prices = make([]float64, len(p.level))
	for r, row := range p.inverse {
		if c := p.cost(p.basis[r]); c != 0 {
			for i, v := range row {
				p.prices[i] += float64(c * v)
			}
		}
	}
}
