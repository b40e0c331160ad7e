package pack

import (
	"slices"

	"example.org/matside/plan/internal/cover"
)

// relaxation is what is needed as a covering problem with loads for columns,
// which come in as they are found worth more than a mat (column generation;
// Gilmore and Gomory 1961). All its loads keep within what is needed: with
// others it would promise fewer loads than can be cut.
type relaxation struct {
	s       *solver
	mosaic  *mosaic
	need    *need
	program *cover.Program
	kinds   []int  // the row of each kind, -1 where none is needed
	solids  []int  // the same of each class of solids
	barren  []bool // fabrics whose outlines, laid as they are, pay no more
	columns []load // by column of the program, none for those it starts from
	taken   int    // loads among them
}

// relax starts from the loads of a pool.
func (d *diver) relax(n *need, pool []load) *relaxation {
	s := d.solver
	r := &relaxation{s: s, mosaic: d.mosaic, need: n, barren: make([]bool, len(s.of))}
	var demand []float64
	rows := func(counts []int) []int {
		out := make([]int, len(counts))
		for i, c := range counts {
			out[i] = -1
			if c > 0 {
				out[i] = len(demand)
				demand = append(demand, float64(c))
			}
		}
		return out
	}
	r.kinds, r.solids = rows(n.want), rows(n.solid)
	r.program, r.columns = cover.New(demand, dear), make([]load, len(demand))
	for i := range pool {
		if l := s.trimmedTo(&pool[i], n); len(l.offers) > 0 {
			r.take(l, r.column(&l))
		}
	}
	return r
}

// dear is the cost, in mats, of a piece or solid that no load of the pool
// holds: more than all others cost together.
const dear = 1 << 20

// found are the loads there are, those brought in as well.
func (r *relaxation) found() []load { return r.columns[len(r.columns)-r.taken:] }

// take brings a load in as a column.
func (r *relaxation) take(l load, column []cover.Entry) {
	r.program.Add(column, 1)
	r.columns = append(r.columns, l)
	r.taken++
}

// column says what a load holds.
func (r *relaxation) column(l *load) (out []cover.Entry) {
	n := &need{make([]int, len(r.kinds)), make([]int, len(r.solids))}
	n.addLoad(l, 1)
	for _, c := range [2][2][]int{{r.kinds, n.want}, {r.solids, n.solid}} {
		for i, row := range c[0] {
			if c[1][i] > 0 {
				out = append(out, cover.Entry{Row: row, Count: float64(c[1][i])})
			}
		}
	}
	return out
}

// mostPivots bounds one run of the simplex method.
const mostPivots = 10_000

// generate brings in loads that pay until none is found, for so many rounds,
// or until the relaxation costs no more than enough.
func (r *relaxation) generate(rounds int, enough float64) {
	r.program.Solve(mostPivots)
	for ; rounds > 0 && r.program.Cost() > enough+trifle && !r.s.stopped() && r.bringIn(); rounds-- {
		r.program.Solve(mostPivots)
	}
}

// fine is the price of a mat in whole numbers.
const fine = 1 << 40

// A load must be worth a tiny bit more than a mat to be taken in: prices are
// rounded.
const (
	tiny   = 1.0 / (1 << 20)
	paying = fine + fine>>20
)

// values are the prices of kinds and solids in whole numbers.
func (r *relaxation) values() (value, solid []int64) {
	prices := r.program.Prices()
	price := func(rows []int) []int64 {
		out := make([]int64, len(rows))
		for i, row := range rows {
			if row >= 0 {
				out[i] = int64(min(max(0, prices[row]), 1) * fine)
			}
		}
		return out
	}
	return price(r.kinds), price(r.solids)
}

// trimmedTo is a load without what is not needed.
func (s *solver) trimmedTo(l *load, n *need) load {
	rest := need{slices.Clone(n.want), slices.Clone(n.solid)}
	var out load
	for _, o := range l.offers {
		if s.trimOffer(&o, &rest) {
			rest.add(&o, -1)
			out.offers = append(out.offers, o)
		}
	}
	if len(out.offers) == 1 { // it may grow later to a mat of its own
		out.offers[0].X, out.offers[0].Y = s.X, s.Y
	}
	for i := range out.offers {
		out.worth += s.worth(s.area, &out.offers[i])
	}
	return out
}

// trimOffer leaves of an offer what is needed, and says if that is anything.
func (s *solver) trimOffer(o *offer, n *need) bool {
	if o.solid >= 0 {
		return n.solid[o.solid] > 0
	}
	left := slices.Clone(n.want)
	var parts []Part
	for _, p := range o.Parts {
		if left[p.Kind] > 0 {
			left[p.Kind]--
			parts = append(parts, p)
		}
	}
	if len(parts) == 0 || len(parts) == len(o.Parts) {
		return len(parts) > 0
	}
	x, y := corner(parts)
	o.Parts = parts
	o.X, o.Y = o.X+x, o.Y+y
	s.tighten(&o.Group)
	return true
}
