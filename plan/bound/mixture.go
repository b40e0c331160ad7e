package bound

import (
	"math"
	"math/big"
	"slices"

	"example.org/matside/plan/internal/cover"
	"example.org/matside/plan/length"
)

// mixture is the linear program: of boxes, each used any fraction of times,
// to hold all pieces, such that by every pair of scales they take no more
// than the mats do, of which there are as few as can be. Its prices are those
// of pieces and the shares of the pairs.
type mixture struct {
	*sharing
	across, along *axis
	xs, ys        []scale // families to start from
	pairs         []pair
	pool          []int // boxes that have come in
	in            map[int]bool
	program       *cover.Program
	mats          int // the column of mats; those of the pool follow
	work          int
}

// bound is the best found.
func (s *sharing) bound(opt Options, spent spending) int {
	m := &mixture{sharing: s, in: map[int]bool{}, across: axisOf(s.x), along: axisOf(s.y), work: spent.work}
	m.xs, m.ys = m.across.unitScales(), m.along.unitScales()
	m.pairs = []pair{{f: m.xs[0], g: m.ys[0]}}
	best := 0
	for range spent.rounds {
		m.solve()
		best = max(best, m.proved())
		if opt.done(best) || !m.separate() {
			break
		}
	}
	return best
}

// axisOf measures a side of the grid in whole units, each place rounded down;
// see coarsen for why that is sound.
func axisOf(places []length.Len) *axis {
	side := places[len(places)-1]
	unit := length.Len(0)
	for _, p := range places {
		unit = length.Len(gcd(int64(unit), int64(p)))
	}
	units := int64(side / unit)
	a := &axis{side: min(units, 1<<10)}
	for _, p := range places {
		l := product(int64(p), a.side).FloorDiv(length.Area{Lo: uint64(side)})
		a.lengths = append(a.lengths, l)
		a.copies = append(a.copies, a.side/max(l, 1))
	}
	return a
}

// unitScales are the axis's scales, the lengths themselves first, rising and
// brought to a whole of unitOfScale.
func (a *axis) unitScales() []scale {
	var out []scale
	for _, f := range a.scales() {
		f = f.toUnit().rising()
		if f.whole > 0 && !slices.ContainsFunc(out, func(o scale) bool { return slices.Equal(o.value, f.value) }) {
			out = append(out, f)
		}
	}
	return out
}

// toUnit brings a scale to a whole of unitOfScale, rounding down.
func (s scale) toUnit() scale {
	out := scale{whole: unitOfScale, value: make([]int64, len(s.value))}
	if s.whole == 0 {
		return scale{}
	}
	for i, v := range s.value {
		out.value[i] = product(v, unitOfScale).FloorDiv(length.Area{Lo: uint64(s.whole)})
	}
	return out
}

// rising gives a longer length at least the value of a shorter one, which it
// may stand in for in any row.
func (s scale) rising() scale {
	for i := 1; i < len(s.value); i++ {
		s.value[i] = max(s.value[i], s.value[i-1])
	}
	return s
}

// takes is what a box takes of a mat by a pair, of unitOfScale squared.
func (pr pair) takes(b *box) int64 { return pr.f.value[b.i] * pr.g.value[b.j] }

// dear is the cost, in mats, of what no box of the pool holds: more than all
// mats together.
const dear = 1 << 20

// solve brings boxes in until none is worth more than the mixture says.
func (m *mixture) solve() {
	demand := make([]float64, len(m.count)+len(m.pairs))
	for k, n := range m.count {
		demand[k] = float64(n)
	}
	m.program = cover.New(demand, dear)
	var mats []cover.Entry
	for t := range m.pairs {
		mats = append(mats, cover.Entry{Row: len(m.count) + t, Count: 1})
	}
	m.mats = m.program.Add(mats, 1)
	for _, b := range m.pool {
		m.program.Add(m.column(&m.boxes[b]), 0)
	}
	for range 200 {
		m.program.Solve(5000)
		if !m.bringIn() {
			return
		}
	}
}

func (m *mixture) column(b *box) []cover.Entry {
	var out []cover.Entry
	for k, n := range b.holds {
		if n > 0 {
			out = append(out, cover.Entry{Row: b.first + k, Count: float64(n)})
		}
	}
	for t, pr := range m.pairs {
		if v := pr.takes(b); v > 0 {
			out = append(out, cover.Entry{Row: len(m.count) + t, Count: -float64(v) / (unitOfScale * unitOfScale)})
		}
	}
	return out
}

// bringIn adds, for each cloth, the box that is worth most more than it takes.
func (m *mixture) bringIn() bool {
	best := map[int]int{}
	gain := map[int]float64{}
	prices := m.program.Prices()
	takes := m.table(prices[len(m.count):])
	for n := range m.boxes {
		b := &m.boxes[n]
		g := -takes[b.i*len(m.y)+b.j]
		for k, c := range b.holds {
			g += float64(float64(c) * prices[b.first+k])
		}
		if g > 1e-6 && g > gain[b.first] && !m.in[n] {
			best[b.first], gain[b.first] = n, g
		}
	}
	for _, c := range m.cloths {
		if n, ok := best[c.first]; ok {
			m.in[n] = true
			m.pool = append(m.pool, n)
			m.program.Add(m.column(&m.boxes[n]), 0)
		}
	}
	return len(best) > 0
}

// table is what boxes at each place of the grid take by the mixture.
func (m *mixture) table(share []float64) []float64 {
	out := make([]float64, len(m.x)*len(m.y))
	for t, pr := range m.pairs {
		if share[t] <= 0 {
			continue
		}
		for i, f := range pr.f.value {
			for j, g := range pr.g.value {
				out[i*len(m.y)+j] += float64(share[t] * float64(f*g) / (unitOfScale * unitOfScale))
			}
		}
	}
	return out
}

// proved is the bound that the prices and the mixture prove: both are rounded
// to whole numbers, and the prices lowered until no box is worth more than it
// takes.
func (m *mixture) proved() int {
	prices := m.program.Prices()
	const fine = 1 << 16
	share := make([]int64, len(m.pairs))
	var all int64 // shares together: what a mat is worth, times unitOfScale squared
	for t := range m.pairs {
		share[t] = int64(math.Round(max(0, prices[len(m.count)+t]) * fine))
		all += share[t]
	}
	value := make([]int64, len(m.count))
	for k := range value {
		value[k] = int64(math.Floor(min(max(0, prices[k]), 2) * fine * unitOfScale))
	}
	// A box may hold no more than worth/takes of it is over one: the worst
	// such ratio, as over/under.
	over, under := int64(1), int64(1)
	for n := range m.boxes {
		b := &m.boxes[n]
		var worth, takes int64
		for k, c := range b.holds {
			worth += c * value[b.first+k]
		}
		for t, pr := range m.pairs {
			takes += share[t] * (pr.takes(b) / unitOfScale)
		}
		if worth == 0 {
			continue
		}
		if takes == 0 {
			return 0
		}
		if product(worth, under).Cmp(product(over, takes)) > 0 {
			over, under = worth, takes
		}
	}
	total := big.NewInt(0)
	for k, n := range m.count {
		total.Add(total, new(big.Int).Mul(big.NewInt(n), big.NewInt(value[k])))
	}
	total.Mul(total, big.NewInt(under))
	mat := new(big.Int).Mul(big.NewInt(all*unitOfScale), big.NewInt(over))
	if mat.Sign() == 0 {
		return 0
	}
	total.Add(total, mat).Sub(total, big.NewInt(1))
	return int(total.Div(total, mat).Int64())
}

// separate looks for a pair of scales by which the boxes used take more than
// the mats; it says whether it found one.
func (m *mixture) separate() bool {
	level := m.program.Level()
	use := map[[2]int]float64{}
	for n, b := range m.pool {
		if v := level[m.mats+1+n]; v > 1e-9 {
			use[[2]int{m.boxes[b].i, m.boxes[b].j}] += v
		}
	}
	cells := make([][2]int, 0, len(use))
	for c := range use {
		cells = append(cells, c)
	}
	slices.SortFunc(cells, func(a, b [2]int) int { return slices.Compare(a[:], b[:]) })
	s := &separator{mixture: m, cells: cells, use: use}
	return s.run(level[m.mats])
}
