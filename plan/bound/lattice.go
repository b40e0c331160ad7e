package bound

import (
	"math"
	"math/bits"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// lattice is where pins may stick in a mat: points evenly spread, the same
// seen from every corner. Its lengths are half nanometres, so that the middle
// of any mat is a whole number of them.
type lattice struct {
	w, h   int64 // the mat
	pitch  int64 // from point to point; a multiple of finest
	n, m   int   // points across and along; no other would be inside the mat
	x0, y0 int64 // the first point
}

// half is how many of the lattice's units a length has.
const half = 2

// finest is into how many parts a pitch is cut at the most.
const finest = 8

// newLattice has about so many points across the shorter side of the mat.
func newLattice(w, h length.Len, points int) *lattice {
	l := lattice{w: half * int64(w), h: half * int64(h)}
	l.pitch = max(1, min(l.w, l.h)/int64(points)/(half*finest)) * half * finest
	return l.spread(ceilDiv(l.w, l.pitch), ceilDiv(l.h, l.pitch))
}

// dividing divides the shorter side of the mat into so many pitches.
func dividing(w, h length.Len, pitches int) *lattice {
	l := lattice{w: half * int64(w), h: half * int64(h)}
	l.pitch = ceilDiv(min(l.w, l.h), int64(pitches)*finest) * finest
	return l.spread((l.w-1)/l.pitch, (l.h-1)/l.pitch)
}

// halved divides a pitch in two.
func (l lattice) halved() *lattice {
	l.pitch = ceilDiv(l.pitch, half*finest) * finest
	return l.spread((l.w-1)/l.pitch, (l.h-1)/l.pitch)
}

// spread puts n x m points in the middle of the mat.
func (l lattice) spread(n, m int64) *lattice {
	l.n, l.m = int(n), int(m)
	l.x0, l.y0 = (l.w-(n-1)*l.pitch)/2, (l.h-(m-1)*l.pitch)/2
	return &l
}

func floorDiv(a, b int64) int64 {
	q := a / b
	if a%b != 0 && a < 0 {
		q--
	}
	return q
}

func ceilDiv(a, b int64) int64 { return -floorDiv(-a, b) }

// imprint is which points a piece covers for certain, wherever its box's top
// left corner is in a cell of cut x cut to a pitch. The cell lies alike to
// every point of the lattice, so that its points are the same from each of
// them: those of the anchor point (a, b) are a+from to a+to in row b+row.
// Places are whole, so that the next cell begins one unit after a cell's end.
type imprint struct {
	runs   []span
	a, b   int // the first anchor
	na, nb int // anchors across and along; together their cells hold every place on the mat
}

type span struct{ row, from, to int }

// imprints are those of an outline for all cells of a pitch. Every place of
// the outline on the mat is in a cell of one of them, from one of its anchors.
func (l *lattice) imprints(o outline.Outline, cut int64) []imprint {
	var out []imprint
	parts := outline.Parts(o)
	box := o.Bounds()
	w, h := half*int64(box.Width()), half*int64(box.Height())
	s := l.pitch / cut
	for rx := range cut {
		a, na := anchors(l.x0, l.pitch, rx*s, s, l.w-w)
		for ry := range cut {
			b, nb := anchors(l.y0, l.pitch, ry*s, s, l.h-h)
			if na <= 0 || nb <= 0 {
				continue
			}
			im := imprint{a: a, na: na, b: b, nb: nb}
			for _, p := range parts {
				im.runs = append(im.runs, l.runs(p, rx*s, ry*s, s-1)...)
			}
			out = append(out, im)
		}
	}
	return out
}

// anchors are the points whose cells, from at to at+s-1 beyond them, hold a
// place from 0 to last.
func anchors(first, pitch, at, s, last int64) (from, n int) {
	a, b := ceilDiv(-first-at-(s-1), pitch), floorDiv(last-first-at, pitch)
	return int(a), int(b - a + 1)
}

// runs are the points in a convex part of an outline wherever its corner is
// from rx to rx+s and from ry to ry+s from the anchor: seen from the outline, such a
// point is anywhere in a cell of that size, which a convex part holds if it
// holds the chords at both its ends. Chords are cut short to whole units, and
// their ends don't count, as only what lies inside the outline is its own.
func (l *lattice) runs(part outline.Outline, rx, ry, s int64) []span {
	var out []span
	box := part.Bounds()
	top, bottom := half*int64(box.Min.Y), half*int64(box.Max.Y)
	for row := floorDiv(top, l.pitch); row*l.pitch-ry < bottom; row++ {
		lower, upper := row*l.pitch-ry, row*l.pitch-ry-s // y runs down
		if upper <= top || lower >= bottom {
			continue
		}
		l1, r1 := chord(part, upper)
		l2, r2 := chord(part, lower)
		from, to := floorDiv(max(l1, l2)+rx+s, l.pitch)+1, ceilDiv(min(r1, r2)+rx, l.pitch)-1
		if from <= to {
			out = append(out, span{int(row), int(from), int(to)})
		}
	}
	return out
}

// chord is where a line across meets a convex outline, its ends rounded
// inward; y is between the outline's top and bottom.
func chord(o outline.Outline, y int64) (left, right int64) {
	left, right = math.MaxInt64, math.MinInt64
	for i, p := range o {
		q := o[(i+1)%len(o)]
		if p.Y > q.Y {
			p, q = q, p
		}
		py, qy := half*int64(p.Y), half*int64(q.Y)
		if py == qy || y < py || y > qy {
			continue
		}
		down, up := along(half*int64(p.X), half*int64(q.X), y-py, qy-py)
		left, right = min(left, up), max(right, down)
	}
	return left, right
}

// along is from + (to-from)*part/whole, rounded down and up; part is at most
// whole.
func along(from, to, part, whole int64) (down, up int64) {
	way := to - from
	hi, lo := bits.Mul64(uint64(max(way, -way)), uint64(part))
	q, rest := bits.Div64(hi, lo, uint64(whole))
	more := int64(min(rest, 1))
	if way < 0 {
		return from - int64(q) - more, from - int64(q)
	}
	return from + int64(q), from + int64(q) + more
}
