package cover

import "example.org/matside/plan/internal/random"

// Entry is how many of a row a column holds.
type Entry struct {
	Row   int
	Count float64
}

// Program is a covering problem whose columns come in as they are found. It
// starts from a column for each row that holds it once, numbered as the rows
// are; those that are added count on from there. It is solved by the revised
// primal simplex method with an explicit inverse, there being few rows.
//
// Laws, up to rounding, once Solve has said true:
//
//	(1) no row is held less often than demanded, and no column less than never;
//	(2) no price is below zero, and no column fetches more than its cost;
//	(3) the demands at their prices come to the cost of all columns used;
//	(4) so no other mix of the columns costs less.
//
// The demands that (1) and (3) speak of are shaken: up to 2e-5 over those
// asked for.
type Program struct {
	rows   int
	held   []Entry   // of all columns, one after the other
	end    []int     // where each column's entries end; they begin at the last one's end
	costs  []float64 // of each column
	inside []bool    // by column: in the basis

	inverse []float64 // of the basis, by rows
	basis   []int     // by row of the inverse: a column, or -1-i for the surplus of row i
	level   []float64 // of the basis
	prices  []float64
	step    []float64 // scratch: the entering column in terms of the basis
	work    int
}

// shake is how much demands are shaken by at the least, each differently: it
// keeps the simplex method from standing still where many bases share a corner.
const shake = 1e-5

// New starts a program that covers demand, each row by a column of its own at
// the cost alone. Where a row can't do by itself, a cost beyond what any mix
// of columns comes to keeps these out of what Solve finds.
func New(demand []float64, alone float64) *Program {
	m := len(demand)
	p := &Program{rows: m, inverse: make([]float64, m*m), prices: make([]float64, m), step: make([]float64, m)}
	draws := random.Source(3)
	for i, d := range demand {
		p.Add([]Entry{{i, 1}}, alone)
		p.inside[i] = true
		p.inverse[i*m+i] = 1
		p.basis = append(p.basis, i)
		p.level = append(p.level, d+float64(shake*(1+draws.Unit())))
	}
	p.price()
	return p
}

// Add takes a column in at a cost and gives its number.
func (p *Program) Add(column []Entry, cost float64) int {
	p.held = append(p.held, column...)
	p.end = append(p.end, len(p.held))
	p.costs = append(p.costs, cost)
	p.inside = append(p.inside, false)
	return len(p.costs) - 1
}

// column are the entries of a column.
func (p *Program) column(c int) []Entry {
	if c == 0 {
		return p.held[:p.end[0]]
	}
	return p.held[p.end[c-1]:p.end[c]]
}

// Prices are the dual values of the rows, which the next Solve overwrites.
func (p *Program) Prices() []float64 { return p.prices }

// Worth is what a column fetches at the present prices.
func (p *Program) Worth(column []Entry) (sum float64) {
	for _, e := range column {
		sum += float64(e.Count * p.prices[e.Row])
	}
	return sum
}

// Level is how often each column is used, by its number.
func (p *Program) Level() []float64 {
	out := make([]float64, len(p.costs))
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

// cost is that of a column or, for nothing, a surplus.
func (p *Program) cost(c int) float64 {
	if c < 0 {
		return 0
	}
	return p.costs[c]
}

// Work is how many multiplications there have been, about: a measure of
// effort that is the same on every machine.
func (p *Program) Work() int { return p.work }
