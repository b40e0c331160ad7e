package bound

import (
	"iter"
	"math"
	"slices"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// pins are weights stuck in a mat, at points of a lattice, and a weight spread
// evenly over all of it. Pieces that share a mat share no area, so that a
// point is inside one of them at most: whatever every piece of a kind covers
// at the least, wherever it lies on the mat and however it may be turned, is
// its worth, and the pieces on a mat are worth no more than all the pins.
//
// It is the linear relaxation of packing in which no point is covered more
// than once in all by shares of pieces, and what a dual feasible function is
// for rectangles (Fekete and Schepers 2001), for any outline. Found by a game,
// see play.go, or by linear programs, see linear.go; here it is checked in
// whole numbers, for pieces laid at whole places.
//
//	(1) Pieces of the shapes on one mat are worth at most whole.
//	(2) Pieces in a w x h box on the mat are worth at most within(w, h).
//	(3) They are alike under the moves of the mat under which the shapes are.
type pins struct {
	*lattice
	sums  []int64 // of the weights left of and above a point, n+1 a row
	even  int64   // spread over the mat
	area  length.Area
	whole int64
	worth []int64 // of each shape
}

// shape is a kind of piece to be laid on a mat.
type shape struct {
	ways  []outline.Outline // as it may lie, boxes at 0,0; none where that can't be told
	area  length.Area
	count int
	rect  bool // it is its box, unless it has no ways
}

// weigh rounds weights to whole numbers, alike where they are alike, and finds
// what each shape is worth. The last weight is spread evenly.
func (l *lattice) weigh(weights []float64, area length.Area, shapes []shape) *pins {
	p := &pins{lattice: l, area: area, sums: make([]int64, (l.n+1)*(l.m+1))}
	const fine = 1 << 40
	for j := range l.m {
		var row int64
		for i := range l.n {
			row += int64(math.Floor(weights[j*l.n+i] * fine))
			at := (j+1)*(l.n+1) + i + 1
			p.sums[at] = p.sums[at-l.n-1] + row
		}
	}
	p.even = int64(math.Floor(weights[l.n*l.m] * fine))
	p.whole = p.window(0, 0, l.n, l.m) + p.even
	for _, s := range shapes {
		p.worth = append(p.worth, p.least(s)+s.area.Times(int(p.even)).FloorDiv(area))
	}
	return p
}

// window is the weight of the pins in n x m points from point i, j.
func (p *pins) window(i, j, n, m int) int64 {
	at := func(i, j int) int64 { return p.sums[j*(p.n+1)+i] }
	return at(i+n, j+m) - at(i, j+m) - at(i+n, j) + at(i, j)
}

// least is the least weight of pins that a piece covers for certain; of a
// shape that the pins weren't stuck for it isn't asked.
func (p *pins) least(s shape) int64 {
	if len(s.ways) == 0 || s.count == 0 {
		return 0
	}
	rows := make([]int64, p.m*(p.n+1)) // of the weights left of a point in its row
	for i := range rows {
		rows[i] = p.sums[i+p.n+1] - p.sums[i]
	}
	best := int64(math.MaxInt64)
	for _, o := range s.ways {
		for _, im := range p.imprints(o, finest) {
			covered := make([]int64, im.na)
			for b := range im.nb {
				clear(covered)
				for _, r := range im.runs {
					at := (im.b+b+r.row)*(p.n+1) + im.a
					left, right := rows[at+r.from:][:im.na], rows[at+r.to+1:][:im.na]
					for a := range covered {
						covered[a] += right[a] - left[a]
					}
				}
				best = min(best, slices.Min(covered))
			}
		}
	}
	return best
}

// within is the most that pieces inside a w x h box are worth. They are worth
// as much wherever the box is on the mat, so it is tried along two sides of it
// where the pins weigh least.
func (p *pins) within(w, h length.Len) int64 {
	across, along := half*int64(w), half*int64(h)
	x0, y0 := atStart(across, p.x0, p.pitch), atStart(along, p.y0, p.pitch)
	best := p.window(0, 0, x0.to, y0.to)
	for x := range reaches(across, p.w, p.x0, p.pitch) {
		best = min(best, p.window(x.from, 0, x.to-x.from, y0.to))
	}
	for y := range reaches(along, p.h, p.y0, p.pitch) {
		best = min(best, p.window(0, y.from, x0.to, y.to-y.from))
	}
	return best + length.Mul(w, h).Times(int(p.even)).CeilDiv(p.area)
}

// reach is from a point to the one before to, along an axis.
type reach struct{ from, to int }

// atStart are the points inside a box of some side at the start of an axis.
func atStart(side, first, pitch int64) reach {
	return reach{0, int(max(0, ceilDiv(side-first, pitch)))}
}

// reaches are the points inside a box of some side at other places on an axis,
// from one point after the other on.
func reaches(side, mat, first, pitch int64) iter.Seq[reach] {
	n := int(ceilDiv(side, pitch)) - 1 // strictly between its ends
	return func(yield func(reach) bool) {
		for i := 0; first+int64(i)*pitch+side <= mat && yield(reach{i + 1, i + 1 + n}); i++ {
		}
	}
}
