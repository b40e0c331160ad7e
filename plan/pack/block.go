package pack

import (
	"math/bits"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// block is a rectangle that the rectangle core packs: one piece, or a few
// that make a rectangle between them, the gap already kept inside.
type block struct {
	w, h  length.Len
	turn  bool
	parts []Part
	count int
}

// blocks makes rectangles of the pieces of a fabric that are wanted: want[k]
// of each kind, fussy ones left out.
func (j *Job) blocks(fabric int, want []int) []block {
	var out []block
	for _, k := range j.of[fabric] {
		n := want[k]
		if n == 0 || j.Kinds[k].Fussy || !j.upright(&j.Kinds[k], j.W, j.H) {
			continue
		}
		for _, b := range j.wholes(k) {
			if b.count = n / len(b.parts); b.count > 0 {
				n -= b.count * len(b.parts)
				out = append(out, b)
			}
		}
		if n > 0 {
			out = append(out, j.rest(k, n))
		}
	}
	return out
}

// wholes are the blocks that several pieces of kind k make, best first.
func (j *Job) wholes(k int) []block {
	p := &j.Kinds[k]
	if p.Turns < HalfTurns || len(p.Outline) != 3 {
		return nil
	}
	if b, ok := j.four(k); ok && p.Turns >= QuarterTurns && b.w <= j.W && b.h <= j.H {
		return []block{b}
	}
	if b, ok := j.pair(k); ok && j.lies(b) {
		return []block{b}
	}
	return nil
}

// lies says whether a block fits the mat.
func (j *Job) lies(b block) bool {
	return b.w <= j.W && b.h <= j.H || b.turn && b.h <= j.W && b.w <= j.H
}

// rest is a block of the n pieces left over from whole blocks: part of one,
// where there are several, else a single piece's box.
func (j *Job) rest(k, n int) block {
	for _, b := range j.wholes(k) {
		if n > 1 {
			b.parts, b.count = b.parts[:n], 1
			return b
		}
	}
	p := &j.Kinds[k]
	return block{w: p.W, h: p.H, turn: p.Turns >= QuarterTurns, parts: []Part{{Kind: k}}, count: n}
}

// pair lays a triangle with its square corner in a corner of its box and its
// half turn face to face along the long side.
func (j *Job) pair(k int) (block, bool) {
	p := &j.Kinds[k]
	if !rightAngled(p.Outline, p.W, p.H) {
		return block{}, false
	}
	// The long sides are the gap apart when the half turn is moved by the
	// gap along their normal, (h, w) / c. c is rounded down, so the move up.
	dx, dy := length.Len(0), length.Len(0)
	if g := j.List.Gap; g > 0 {
		c := length.Mul(p.W, p.W).Add(length.Mul(p.H, p.H)).Root()
		dx, dy = mulDivUp(g, p.H, c), mulDivUp(g, p.W, c)
	}
	b := block{w: p.W + dx, h: p.H + dy, turn: p.Turns >= QuarterTurns}
	a, z := Part{Kind: k}, Part{Kind: k, Turn: 2 * quarter}
	corner := squareCorner(p.Outline, p.W, p.H)
	if corner.X == 0 {
		z.X = dx
	} else {
		a.X = dx
	}
	if corner.Y == 0 {
		z.Y = dy
	} else {
		a.Y = dy
	}
	b.parts = []Part{a, z}
	return b, true
}

// four lays four quarter-square triangles with their tips together.
func (j *Job) four(k int) (block, bool) {
	p := &j.Kinds[k]
	up, ok := tipUp(p.Outline, p.W, p.H)
	if !ok {
		return block{}, false
	}
	base, height := p.W, p.H
	if up%2 == 1 {
		base, height = p.H, p.W
	}
	// Moving each triangle u outward sets neighbours u·√2 apart. The tip of
	// an odd base lies half a nanometre off the middle, and height may be
	// off by as much: two nanometres make good for it.
	u := length.Len(0)
	if g := j.List.Gap; g > 0 {
		u = mulDivUp(g, 1_000_000_000, 1_414_213_562)
	}
	if base != 2*height {
		u += 2
	}
	side := max(2*height+2*u, base)
	mid := (side - base) / 2
	b := block{w: side, h: side, turn: false}
	for q := range 4 {
		part := Part{Kind: k, Turn: (q - up + 4) % 4 * quarter}
		switch q { // the way the tip points, in quarter turns from up
		case 0:
			part.X, part.Y = mid, side-height
		case 1:
			part.X, part.Y = side-height, mid
		case 2:
			part.X, part.Y = mid, 0
		case 3:
			part.X, part.Y = 0, mid
		}
		b.parts = append(b.parts, part)
	}
	return b, true
}

// rightAngled says whether a triangle has its square corner in a corner of
// its box, and its two short sides along the box.
func rightAngled(o outline.Outline, w, h length.Len) bool {
	if len(o) != 3 {
		return false
	}
	corners := 0
	for _, p := range o {
		if (p.X == 0 || p.X == w) && (p.Y == 0 || p.Y == h) {
			corners++
		}
	}
	return corners == 3
}

// squareCorner is the corner of the box where the short sides meet: the one
// whose opposite is no corner of the triangle.
func squareCorner(o outline.Outline, w, h length.Len) outline.Point {
	for _, p := range o {
		opposite := outline.Point{X: w - p.X, Y: h - p.Y}
		if o[0] != opposite && o[1] != opposite && o[2] != opposite {
			return p
		}
	}
	return o[0]
}

// tipUp recognises a quarter-square triangle: its long side along the box,
// its tip, a right angle, over the middle. up is how many quarter turns
// counter-clockwise from pointing up it is.
func tipUp(o outline.Outline, w, h length.Len) (up int, ok bool) {
	if len(o) != 3 {
		return 0, false
	}
	for up := range 4 {
		t := o.Turn(-up * quarter).Normalise()
		tw, th := w, h
		if up%2 == 1 {
			tw, th = h, w
		}
		if d := tw - 2*th; d < -1 || d > 1 {
			continue
		}
		base, tip := 0, outline.Point{}
		for _, p := range t {
			if p.Y == th && (p.X == 0 || p.X == tw) {
				base++
			} else {
				tip = p
			}
		}
		if d := 2*tip.X - tw; base == 2 && tip.Y == 0 && d >= -1 && d <= 1 {
			return up, true
		}
	}
	return 0, false
}

// mulDivUp is a·b/c rounded up, c > 0.
func mulDivUp(a, b, c length.Len) length.Len {
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	q, r := bits.Div64(hi%uint64(c), lo, uint64(c))
	if r > 0 {
		q++
	}
	return length.Len(q)
}
