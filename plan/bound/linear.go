package bound

import (
	"cmp"
	"slices"

	"example.org/matside/plan/internal/cover"
	"example.org/matside/plan/length"
)

// linear is the game of play.go as a linear program, solved to the end where
// there are few points: rows are the points, those that look alike in one, and
// the kinds; columns are places, brought in as they are found to cover too
// little. Its prices are the pins. A few points that suit the pieces then say
// more than many at which the game has not come near its value.
//
// From such a lattice it goes on to one of half the pitch, where it looks at
// the points that weighed and those beside them (a grid refined where it
// matters), as long as there are not too many.
type linear struct {
	*game
	program *cover.Program
	row     []int     // of each point; -1 where no pin may stick
	alike   []float64 // how many points are in a row
	spread  int       // the row of weight spread evenly, -1 if there is none
	kinds   int       // the first row of a kind
	in      map[laid]bool
}

// laid is a hand's piece at an anchor of a view.
type laid struct{ hand, view, a, b int }

// linearly finds pins by linear programs of at most so many rows, nil if there
// are too many points.
func linearly(w, h length.Len, shapes []shape, moves []move, spent spending) *pins {
	l := suited(w, h, shapes, moves, spent.first)
	if l == nil {
		return nil
	}
	area := length.Mul(w, h)
	orbits := l.orbits(moves)
	for {
		weights := newLinear(l, area, shapes, orbits, false).solve()
		f := l.halved()
		near := l.near(weights, f)
		next := slices.DeleteFunc(f.orbits(moves), func(o []int) bool {
			return !slices.ContainsFunc(o, func(p int) bool { return near[p] })
		})
		if len(next) > spent.last || min(f.n, f.m) > manyPoints {
			break
		}
		l, orbits = f, next
	}
	return l.weigh(newLinear(l, area, shapes, orbits, true).solve(), area, shapes)
}

// suited is the lattice of not too many points on which the pieces cover the
// greatest part of the points for certain: that of a pitch that goes into their
// sides nearly without a rest.
func suited(w, h length.Len, shapes []shape, moves []move, most int) (best *lattice) {
	top := 0.0
	for n := fewPitches; ; n++ {
		l := dividing(w, h, n)
		if len(l.orbits(moves)) > most {
			return best
		}
		if part := l.covered(shapes); part > top {
			best, top = l, part
		}
	}
}

// fewPitches is how many a side is divided into at the least.
const fewPitches = 8

// covered is the part of the points that the pieces cover for certain.
func (l *lattice) covered(shapes []shape) (part float64) {
	for _, s := range shapes {
		if s.count > 0 && len(s.ways) > 0 {
			part += float64(float64(s.count) * float64(l.fewest(s)) / float64(l.n*l.m))
		}
	}
	return part
}

// fewest is how many points a piece covers for certain.
func (l *lattice) fewest(s shape) int {
	var all []int
	for _, o := range s.ways {
		for _, im := range l.imprints(o, coarse) {
			n := 0
			for _, r := range im.runs {
				n += r.to - r.from + 1
			}
			all = append(all, n)
		}
	}
	return slices.Min(append(all, l.n*l.m))
}

// near are the points of a finer lattice beside those that weigh.
func (l *lattice) near(weights []float64, f *lattice) []bool {
	out := make([]bool, f.n*f.m)
	for at, w := range weights[:l.n*l.m] {
		if w < 1e-6 {
			continue
		}
		x, y := l.x0+int64(at%l.n)*l.pitch-f.x0+f.pitch/2, l.y0+int64(at/l.n)*l.pitch-f.y0+f.pitch/2
		i, j := int(floorDiv(x, f.pitch)), int(floorDiv(y, f.pitch))
		for b := max(0, j-1); b <= min(f.m-1, j+1); b++ {
			for a := max(0, i-1); a <= min(f.n-1, i+1); a++ {
				out[b*f.n+a] = true
			}
		}
	}
	return out
}

func newLinear(l *lattice, area length.Area, shapes []shape, orbits [][]int, even bool) *linear {
	p := &linear{game: newGame(l, area, shapes, orbits), row: make([]int, l.n*l.m), spread: -1, in: map[laid]bool{}}
	for at := range p.row {
		p.row[at] = -1
	}
	for r, o := range orbits {
		p.alike = append(p.alike, float64(len(o)))
		for _, at := range o {
			p.row[at] = r
		}
	}
	p.kinds = len(orbits)
	if even {
		p.spread = p.kinds
		p.kinds++
	}
	demand := make([]float64, p.kinds+len(p.hands))
	var mats []cover.Entry
	for r := range p.kinds {
		mats = append(mats, cover.Entry{Row: r, Count: 1})
	}
	for k, h := range p.hands {
		demand[p.kinds+k] = h.count
	}
	p.program = cover.New(demand, dear)
	p.program.Add(mats, 1)
	return p
}

// Bounds on one program: rounds of bringing places in, how many of a kind come
// in at once, and pivots a round.
const (
	mostRounds  = 100
	atOnce      = 10
	roundPivots = 2000
)

// solve gives the weight of each pin, and last that spread evenly, one in all.
func (p *linear) solve() []float64 {
	for range mostRounds {
		if !p.bringIn() {
			break
		}
		p.program.Solve(roundPivots)
	}
	out := p.weights()
	sum := 0.0
	for _, w := range out {
		sum += w
	}
	if sum <= 0 {
		out[p.n*p.m], sum = 1, 1
	}
	for at := range out {
		out[at] /= sum
	}
	return out
}

// weights are the prices of the points, each its part of its row's.
func (p *linear) weights() []float64 {
	prices := p.program.Prices()
	out := make([]float64, p.n*p.m+1)
	for at, r := range p.row {
		if r >= 0 {
			out[at] = max(0, prices[r]) / p.alike[r]
		}
	}
	if p.spread >= 0 {
		out[p.n*p.m] = max(0, prices[p.spread])
	}
	return out
}

// bringIn adds the places of each kind that cover least, if it is less than
// the kind is said to be worth.
func (p *linear) bringIn() (any bool) {
	type place struct {
		laid
		gets float64
	}
	prices := p.program.Prices()
	weights := p.weights()
	p.tell(weights)
	first := len(p.in) == 0 // nothing has a price yet
	for k, h := range p.hands {
		worth := prices[p.kinds+k] - float64(h.even*weights[p.n*p.m]) - 1e-6
		var found []place
		at := 0
		for v := range h.views {
			for b := range h.views[v].nb {
				for a := range h.views[v].na {
					if c := (laid{k, v, a, b}); (first || h.gets[at] < worth) && !p.in[c] {
						found = append(found, place{c, h.gets[at]})
					}
					at++
				}
			}
		}
		slices.SortStableFunc(found, func(a, b place) int { return cmp.Compare(a.gets, b.gets) })
		for _, f := range found[:min(atOnce, len(found))] {
			p.in[f.laid] = true
			p.program.Add(p.column(f.laid), 0)
			any = true
		}
	}
	return any
}

// column is how much of each row a place takes up.
func (p *linear) column(c laid) []cover.Entry {
	h := p.hands[c.hand]
	v := &h.views[c.view]
	takes := make([]float64, p.kinds)
	for _, r := range v.runs {
		first := (v.b+c.b+r.row)*p.n + v.a + c.a
		for at := first + r.from; at <= first+r.to; at++ {
			if row := p.row[at]; row >= 0 {
				takes[row]++
			}
		}
	}
	var out []cover.Entry
	for row, n := range takes {
		if n > 0 {
			out = append(out, cover.Entry{Row: row, Count: -n / p.alike[row]})
		}
	}
	if p.spread >= 0 {
		out = append(out, cover.Entry{Row: p.spread, Count: -h.even})
	}
	return append(out, cover.Entry{Row: p.kinds + c.hand, Count: 1})
}
