package plan

import (
	"math/bits"

	"example.org/matside/plan/blade"
	"example.org/matside/plan/bound"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/pack"
	"example.org/matside/plan/rect"
)

// least is a true lower bound on the loads for pieces, counted by kind: the
// best of several, each of which leaves some rule out and so can only be too
// low. It looks no further once it has come to enough, if that isn't 0.
//
//   - By area: all pieces must fit the part of the mats the blade reaches,
//     whatever fabrics share a mat.
//   - Rectangles alone, as if all were of one fabric.
//   - Fussy pieces alone, each with the margin that keeps it from the next.
func (m *maker) least(pieces []int, enough int, effort rect.Effort) int {
	n := m.byArea(pieces)
	for _, fussy := range []bool{false, true} {
		keep := m.keep(fussy)
		sizes := m.flat(pieces, fussy, keep)
		if enough > 0 && n >= enough || len(sizes) == 0 {
			break
		}
		opt := bound.Options{Effort: effort, Enough: enough}
		n = max(n, bound.Bins(m.job.W+keep, m.job.H+keep, sizes, opt))
	}
	if m.stopped() {
		effort = rect.Quick // she waits for the plan, not for the proof
	}
	if enough > 0 && n < enough {
		n = max(n, m.byBoxes(pieces, bound.Options{Effort: effort, Enough: enough, Stop: m.opt.Stop}))
	}
	return n
}

// byBoxes is the bound that knows which fabrics may lie together and how far
// apart.
func (m *maker) byBoxes(counts []int, opt bound.Options) int {
	mat := bound.Mat{W: m.job.W, H: m.job.H, Apart: 2 * m.list.Margin, Keep: m.keep(false), Gap: m.list.Gap}
	var pieces []bound.Piece
	for k, n := range counts {
		p := &m.job.Kinds[k]
		pieces = append(pieces, bound.Piece{Fabric: p.Fabric, W: p.W, H: p.H, Turn: p.Turns >= pack.QuarterTurns, Rect: p.Outline.IsRect(),
			Aslant: p.Turns == pack.AnyTurn, Alone: p.Fussy, Area: m.grown(p.Outline), Count: n, Ways: ways(p)})
	}
	return bound.Loads(mat, pieces, opt)
}

// ways are the outlines as which a kind may lie, none where it may lie at any
// angle.
func ways(k *pack.Kind) (out []outline.Outline) {
	steps := map[pack.Turns][]int{pack.NoTurn: {0}, pack.HalfTurns: {0, 2}, pack.QuarterTurns: {0, 1, 2, 3}}
	for _, q := range steps[k.Turns] {
		out = append(out, k.Outline.Turn(q*outline.QuarterTurn).Normalise())
	}
	return out
}

// grown is an outline's area with half the gap all round, where that can be
// told: a convex outline grows by its girth times that at least.
func (m *maker) grown(o outline.Outline) length.Area {
	a := o.Area()
	if gap := m.list.Gap; gap > 0 && o.Convex() {
		a = a.Add(length.Mul(girth(o), gap/2))
	}
	return a
}

// planned counts the pieces on mats by kind.
func planned(j *pack.Job, mats []pack.Mat) []int {
	out := make([]int, len(j.Kinds))
	for i := range mats {
		for _, g := range mats[i].Groups {
			for _, p := range g.Parts {
				out[p.Kind]++
			}
		}
	}
	return out
}

// byArea is the bound by area. With a gap, each piece and the mat grow by
// half of it all round: grown pieces still may not overlap.
func (m *maker) byArea(counts []int) int {
	gap := m.list.Gap
	mat := length.Mul(m.job.W+gap, m.job.H+gap)
	var pieces []bound.Discrete
	for k, n := range counts {
		if n == 0 {
			continue
		}
		pieces = append(pieces, bound.Discrete{Area: m.grown(m.job.Kinds[k].Outline), Count: n})
	}
	return bound.Areas(mat, pieces)
}

// keep is how far apart pieces are at least, across or along. Fussy ones
// have their margins between them. Any two are the gap apart, so gap/√2
// across or along; the whole gap would not be sound, corner to corner.
func (m *maker) keep(fussy bool) length.Len {
	if fussy {
		return 2 * m.list.Margin
	}
	hi, lo := bits.Mul64(uint64(m.list.Gap), 1_000_000_000)
	q, _ := bits.Div64(hi, lo, 1_414_213_563)
	return length.Len(q)
}

// flat lists the rectangles as sizes for bound.Bins, the fussy ones or all,
// each with keep added. A piece that may be turned at any angle is left out:
// Bins takes edges to be parallel to the mat's.
func (m *maker) flat(counts []int, fussy bool, keep length.Len) []rect.Size {
	var out []rect.Size
	for k, n := range counts {
		p := &m.job.Kinds[k]
		if n > 0 && p.Outline.IsRect() && p.Turns < pack.AnyTurn && (p.Fussy || !fussy) {
			out = append(out, rect.Size{W: p.W + keep, H: p.H + keep, Turn: p.Turns >= pack.QuarterTurns, Count: n})
		}
	}
	return out
}

// girth is the length of an outline's sides together, rounded down.
func girth(o outline.Outline) length.Len {
	var sum length.Len
	for i, a := range o {
		sum += blade.Way(a, o[(i+1)%len(o)])
	}
	return sum
}
