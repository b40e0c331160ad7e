package cover

import (
	"math"
	"math/bits"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// near says whether two sums agree up to rounding.
func near(a, b float64) bool { return math.Abs(a-b) <= 1e-6*(1+math.Abs(a)+math.Abs(b)) }

// problem is a covering problem as it was asked, for the tests to work on.
type problem struct {
	demand  []float64 // shaken, as the program sees it
	columns [][]Entry
	costs   []float64
	*Program
}

func ask(demand []float64, alone float64) *problem {
	p := &problem{Program: New(demand, alone)}
	p.demand = slices.Clone(p.level)
	for i := range demand {
		p.columns, p.costs = append(p.columns, []Entry{{i, 1}}), append(p.costs, alone)
	}
	return p
}

func (p *problem) Add(column []Entry, cost float64) int {
	p.columns, p.costs = append(p.columns, column), append(p.costs, cost)
	return p.Program.Add(column, cost)
}

func TestCostAndPrices(t *testing.T) {
	tests := []struct {
		name    string
		demand  []float64
		alone   float64
		columns [][]Entry
		costs   []float64
		cost    float64
		prices  []float64
	}{
		{"no columns but those it starts from", []float64{3, 4}, 2, nil, nil, 14, []float64{2, 2}},
		{"nothing demanded", []float64{0, 0}, 1, nil, nil, 0, []float64{1, 1}},
		{"one column holds all", []float64{3, 4}, 1, [][]Entry{{{0, 1}, {1, 2}}}, []float64{1}, 3, []float64{1, 0}},
		{"halves", []float64{1, 1, 1}, 1, [][]Entry{{{0, 1}, {1, 1}}, {{1, 1}, {2, 1}}, {{0, 1}, {2, 1}}}, []float64{1, 1, 1}, 1.5, []float64{0.5, 0.5, 0.5}},
		{"a dear column stays out", []float64{2, 2}, 1, [][]Entry{{{0, 1}, {1, 1}}}, []float64{3}, 4, []float64{1, 1}},
		{"a column that takes of another row", []float64{6, 0}, 1 << 20, [][]Entry{{{1, 1}}, {{0, 2}, {1, -0.5}}}, []float64{1, 0}, 1.5, []float64{0.25, 1}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			p := ask(test.demand, test.alone)
			for i, c := range test.columns {
				if n := p.Add(c, test.costs[i]); n != len(test.demand)+i {
					t.Errorf("column %d has number %d", len(test.demand)+i, n)
				}
			}
			if !p.Solve(100) {
				t.Fatal("does not come to an end")
			}
			if math.Abs(p.Cost()-test.cost) > 1e-4*(1+test.cost) {
				t.Errorf("cost %v, want %v", p.Cost(), test.cost)
			}
			for i, v := range test.prices {
				if !near(p.Prices()[i], v) {
					t.Errorf("prices %v, want %v", p.Prices(), test.prices)
					break
				}
			}
		})
	}
}

// Out of pivots it says so, and takes up again where it was.
func TestPivotsRunOut(t *testing.T) {
	p := New([]float64{5, 5, 5}, 1)
	for i := range 3 {
		p.Add([]Entry{{i, 1}, {(i + 1) % 3, 1}}, 1)
	}
	n := 1
	for ; !p.Solve(1); n++ {
		if n > 20 {
			t.Fatal("no end")
		}
	}
	if n < 3 || math.Abs(p.Cost()-7.5) > 1e-4 {
		t.Errorf("cost %v after %d pivots", p.Cost(), n)
	}
	if p.Work() == 0 {
		t.Error("no work counted")
	}
}

// drawn is any small problem: counts and costs in whole numbers, so that
// many bases tie, some rows taken of as package bound's mats are.
func drawn(t *rapid.T, rows, most int) *problem {
	m := rapid.IntRange(1, rows).Draw(t, "rows")
	demand := make([]float64, m)
	for i := range demand {
		demand[i] = float64(rapid.IntRange(0, 6).Draw(t, "demand"))
	}
	p := ask(demand, float64(rapid.SampledFrom([]int{1, 2, 1 << 20}).Draw(t, "alone")))
	for range rapid.IntRange(0, most).Draw(t, "columns") {
		var c []Entry
		for i := range m {
			if n := rapid.IntRange(-1, 3).Draw(t, "count"); n != 0 {
				c = append(c, Entry{i, float64(n)})
			}
		}
		p.Add(c, float64(rapid.IntRange(0, 3).Draw(t, "cost")))
		if rapid.Bool().Draw(t, "solve in between") {
			p.Solve(1000)
		}
	}
	return p
}

// Laws (1), (2) and (3) of Program; by these (4) holds as well.
func TestDuality(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawn(t, 8, 20)
		if !p.Solve(10_000) {
			t.Fatal("does not come to an end")
		}
		p.check(t)
	})
}

func (p *problem) check(t rapid.TB) {
	level, prices := p.Level(), p.Prices()
	held, spent, fetched := make([]float64, len(p.demand)), 0.0, 0.0
	for c, x := range level {
		if x < -1e-6 {
			t.Fatalf("(1) column %d is used %v times", c, x)
		}
		spent += x * p.costs[c]
		for _, e := range p.columns[c] {
			held[e.Row] += x * e.Count
		}
		if w := p.Worth(p.columns[c]); w > p.costs[c]+1e-6*(1+p.costs[c]) {
			t.Fatalf("(2) column %d fetches %v at a cost of %v", c, w, p.costs[c])
		}
	}
	for i := range p.demand {
		if held[i] < p.demand[i]-1e-6*(1+held[i]) {
			t.Fatalf("(1) row %d is held %v times, demanded are %v", i, held[i], p.demand[i])
		}
		if prices[i] < -1e-6 {
			t.Fatalf("(2) row %d has price %v", i, prices[i])
		}
		fetched += prices[i] * p.demand[i]
	}
	if !near(spent, p.Cost()) || !near(spent, fetched) {
		t.Fatalf("(3) costs %v, said to be %v, the demands fetch %v", spent, p.Cost(), fetched)
	}
}

// Law (4) once more, without prices: the least of all corners, each worked
// out by elimination.
func TestLeastOfAllCorners(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawn(t, 3, 6)
		if !p.Solve(10_000) {
			t.Fatal("does not come to an end")
		}
		if want := p.leastCorner(); !near(p.Cost(), want) {
			t.Fatalf("cost %v, the best corner has %v", p.Cost(), want)
		}
	})
}

// leastCorner tries every choice of as many columns and surpluses as there
// are rows.
func (p *problem) leastCorner() float64 {
	m := len(p.demand)
	columns, costs := p.columns[:len(p.columns):len(p.columns)], p.costs[:len(p.costs):len(p.costs)]
	for i := range m {
		columns, costs = append(columns, []Entry{{i, -1}}), append(costs, 0)
	}
	least := math.Inf(1)
	for set := range uint(1) << len(columns) {
		if bits.OnesCount(set) != m {
			continue
		}
		var basis []int
		for c := range columns {
			if set>>c&1 == 1 {
				basis = append(basis, c)
			}
		}
		sum, ok := 0.0, false
		for i, x := range p.corner(columns, basis) {
			if ok = x >= -1e-7; !ok {
				break
			}
			sum += x * costs[basis[i]]
		}
		if ok {
			least = min(least, sum)
		}
	}
	return least
}

// corner solves for how often each of the basis is used (Gauss and Jordan);
// nil where there is no one answer.
func (p *problem) corner(columns [][]Entry, basis []int) []float64 {
	m := len(basis)
	a := make([][]float64, m)
	for i := range a {
		a[i] = make([]float64, m+1)
		a[i][m] = p.demand[i]
	}
	for k, c := range basis {
		for _, e := range columns[c] {
			a[e.Row][k] = e.Count
		}
	}
	for k := range m {
		best := k
		for i := k; i < m; i++ {
			if math.Abs(a[i][k]) > math.Abs(a[best][k]) {
				best = i
			}
		}
		if a[k], a[best] = a[best], a[k]; math.Abs(a[k][k]) < 1e-9 {
			return nil
		}
		for i := range a {
			if f := a[i][k] / a[k][k]; i != k {
				for j := range a[i] {
					a[i][j] -= f * a[k][j]
				}
			}
		}
	}
	out := make([]float64, m)
	for k := range out {
		out[k] = a[k][m] / a[k][k]
	}
	return out
}
