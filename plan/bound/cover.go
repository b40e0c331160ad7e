package bound

// cover is the linear program of cutting stock: patterns, each used any
// fraction of times at a cost of one, that together hold demand[i] of row i at
// the least cost. Its dual values are the worths that maximise
// sum demand[i]*y[i] while no pattern is worth more than one.
//
// Gilmore and Gomory, "A linear programming approach to the cutting-stock
// problem", Op. Res. 9 (1961): a revised simplex with the basis inverse kept
// dense, patterns made as they are needed. Floats only: the dual is a
// suggestion, which the caller rounds and checks in whole numbers. Products
// are converted explicitly so that no machine fuses them with a sum.
type cover struct {
	inverse [][]float64 // of the basis; row r belongs to the r-th basic column
	level   []float64   // how much of each basic column is used
	cost    []float64   // 1 for a pattern, 0 for a surplus
	dual    []float64
}

// newCover starts from patterns that hold one row each, hold[i] times.
func newCover(demand, hold []float64) *cover {
	c := &cover{}
	for i, d := range demand {
		row := make([]float64, len(demand))
		row[i] = 1 / hold[i]
		c.inverse = append(c.inverse, row)
		c.level = append(c.level, d/hold[i])
		c.cost = append(c.cost, 1)
	}
	c.price()
	return c
}

// price works out the dual values of the basis.
func (c *cover) price() {
	c.dual = make([]float64, len(c.level))
	for r, row := range c.inverse {
		if c.cost[r] == 0 {
			continue
		}
		for i, v := range row {
			c.dual[i] += v
		}
	}
}

// surplus is the row whose dual value is most negative, if any: holding more
// of it than demanded pays.
func (c *cover) surplus() (row int, ok bool) {
	least := -epsilon
	for i, v := range c.dual {
		if v < least {
			row, least, ok = i, v, true
		}
	}
	return row, ok
}

// epsilon is how far a reduced cost must be from zero to count.
const epsilon = 1e-9

// enter brings a column of the given cost into the basis in place of the one
// it exhausts first, and tells whether there was one.
func (c *cover) enter(column []float64, cost float64) bool {
	step := make([]float64, len(c.level))
	for r, row := range c.inverse {
		var s float64
		for i, v := range column {
			if v != 0 {
				s += float64(v * row[i])
			}
		}
		step[r] = s
	}
	out := -1
	for r, s := range step {
		if s > epsilon && (out < 0 || float64(c.level[r]*step[out]) < float64(c.level[out]*s)) {
			out = r
		}
	}
	if out < 0 {
		return false
	}
	c.pivot(out, step)
	c.cost[out] = cost
	c.price()
	return true
}

func (c *cover) pivot(out int, step []float64) {
	pivot := c.inverse[out]
	for i := range pivot {
		pivot[i] /= step[out]
	}
	amount := c.level[out] / step[out]
	for r, row := range c.inverse {
		if s := step[r]; r != out && s != 0 {
			for i, v := range pivot {
				row[i] -= float64(s * v)
			}
			c.level[r] = max(0, c.level[r]-float64(s*amount))
		}
	}
	c.level[out] = amount
}

// spike is a column of n rows with v in row i.
func spike(n, i int, v float64) []float64 {
	out := make([]float64, n)
	out[i] = v
	return out
}

func dotFloat(a, b []float64) (sum float64) {
	for i, v := range a {
		sum += float64(v * b[i])
	}
	return sum
}
