package rect

import (
	"cmp"
	"math"
	"slices"
)

// seg is a stretch of a skyline, from x to the next one's x: all below y is
// taken.
type seg struct{ x, y int64 }

// shape is a kind at one of its turns.
type shape struct {
	kind   int
	w, h   int64
	turned bool
}

// beam searches for the most value in one bin: partial packings are skylines,
// a step lays a piece in the lowest niche (or, for the area it wastes, in a
// later one), and of each generation the width best by value for the area
// covered live on.
type beam struct {
	w, h   int64
	kinds  []kind
	shapes []shape
	area   []float64 // by kind
	zobr   []uint64  // by kind

	// scratch
	left   []int
	active []piece // shapes with copies left and worth something
	seq    int32
	trail  []move
	cands  []cand
	floor  float64 // keys below it have no chance
	nodes  [2][]node
	segs   [2][]seg
	tmp    []seg
	seen   map[uint64]bool
	evals  int64 // counted work
	found  []hit
}

type hit struct {
	value float64
	trail int32
}

// piece is a shape as one run sees it, all that a step asks for in one place.
type piece struct {
	w, h        int64
	area, guide float64
	kind, shape int32
}

type move struct {
	parent int32
	shape  int32
	x, y   int64
}

type node struct {
	trail   int32
	lo, hi  int32 // segs
	value   float64
	guide   float64 // value as the search sees it
	covered float64
	hash    uint64
}

type cand struct {
	key   float64
	node  int32
	skips int32
	shape int32
	right bool
	seq   int32
}

func newBeam(w, h int64, kinds []kind) *beam {
	b := &beam{w: w, h: h, kinds: kinds, left: make([]int, len(kinds)), seen: map[uint64]bool{}}
	r := rng(1)
	for i, k := range kinds {
		b.area = append(b.area, k.area())
		b.zobr = append(b.zobr, r.next())
		if k.w <= w && k.h <= h {
			b.shapes = append(b.shapes, shape{i, k.w, k.h, false})
		}
		if k.turn && k.w != k.h && k.h <= w && k.w <= h {
			b.shapes = append(b.shapes, shape{i, k.h, k.w, true})
		}
	}
	return b
}

// niche finds the lowest, then leftmost stretch: its index and its walls.
func niche(segs []seg) int {
	best := 0
	for i := 1; i < len(segs); i++ {
		if segs[i].y < segs[best].y {
			best = i
		}
	}
	return best
}

// span gives stretch i's width and the heights of its walls (h at the sides).
func (b *beam) span(segs []seg, i int) (g, lw, rw int64) {
	end := b.w
	lw, rw = b.h, b.h
	if i+1 < len(segs) {
		end, rw = segs[i+1].x, segs[i+1].y
	}
	if i > 0 {
		lw = segs[i-1].y
	}
	return end - segs[i].x, lw, rw
}

// raise lifts stretch i to its lower wall, joining it to that neighbour.
func raise(segs []seg, i int, h int64) []seg {
	switch {
	case len(segs) == 1:
		segs[0].y = h
		return segs
	case i == 0:
		segs[0].y = segs[1].y
		return append(segs[:1], segs[2:]...)
	case i == len(segs)-1:
		return segs[:i]
	case segs[i-1].y < segs[i+1].y:
		return append(segs[:i], segs[i+1:]...)
	case segs[i-1].y > segs[i+1].y:
		segs[i].y = segs[i+1].y
		return append(segs[:i+1], segs[i+2:]...)
	default:
		return append(segs[:i], segs[i+2:]...)
	}
}

// lay puts a w wide piece with its top at y on stretch i, at its left or
// right end.
func lay(dst, segs []seg, i int, w, g, y int64, right bool) []seg {
	dst = append(dst, segs[:i]...)
	put := func(s seg) {
		if n := len(dst); n > 0 && dst[n-1].y == s.y {
			return
		}
		dst = append(dst, s)
	}
	x := segs[i].x
	switch {
	case w == g:
		put(seg{x, y})
	case right:
		put(segs[i])
		put(seg{x + g - w, y})
	default:
		put(seg{x, y})
		put(seg{x + w, segs[i].y})
	}
	for _, s := range segs[i+1:] {
		put(s)
	}
	return dst
}

// params steer one search.
type params struct {
	width int     // nodes kept in each generation
	skips int     // niches that may be passed over in one step
	both  bool    // try both ends of a niche
	rate  float64 // expected value for area still free; 0: compare by ratio
	over  float64 // if not 0, note the nodes worth more than this
}

// run searches with at most n[k] copies of each kind, value v[k] each, and
// returns the best bin and its value.
func (b *beam) run(n []int, v, see []float64, pr params) ([]spot, float64) {
	total := 0.0
	for k := range n {
		if v[k] > 0 {
			total += mul(v[k], float64(n[k]))
		}
	}
	b.active = b.active[:0]
	for i, s := range b.shapes {
		if n[s.kind] > 0 && v[s.kind] > 0 {
			b.active = append(b.active, piece{s.w, s.h, b.area[s.kind], see[s.kind], int32(s.kind), int32(i)})
		}
	}
	b.trail = append(b.trail[:0], move{parent: -1, shape: -1})
	b.segs[0] = append(b.segs[0][:0], seg{0, 0})
	b.nodes[0] = append(b.nodes[0][:0], node{lo: 0, hi: 1})
	b.found, b.seq = b.found[:0], 0
	best, bestTrail := 0.0, int32(0)
	for cur := 0; len(b.nodes[cur]) > 0; cur ^= 1 {
		nxt := cur ^ 1
		b.cands, b.floor = b.cands[:0], math.Inf(-1)
		for i := range b.nodes[cur] {
			b.expand(cur, int32(i), n, pr)
			if keep := 2*pr.width + 8; len(b.cands) > 4*keep {
				sel(b.cands, keep)
				b.cands = b.cands[:keep]
				b.floor = b.cands[0].key
				for i := range b.cands {
					b.floor = min(b.floor, b.cands[i].key)
				}
			}
		}
		b.rank(2*pr.width + 8)
		b.nodes[nxt], b.segs[nxt] = b.nodes[nxt][:0], b.segs[nxt][:0]
		clear(b.seen)
		for i := range b.cands {
			if len(b.nodes[nxt]) == pr.width {
				break
			}
			nd, ok := b.grow(cur, &b.cands[i], v, see)
			if ok && pr.over > 0 && nd.value > pr.over {
				b.found = append(b.found, hit{nd.value, nd.trail})
			}
			if ok && nd.value > best {
				best, bestTrail = nd.value, nd.trail
				if best >= total {
					return b.spots(bestTrail), best
				}
			}
		}
	}
	return b.spots(bestTrail), best
}

// rank leaves the keep best candidates, best first.
func (b *beam) rank(keep int) {
	better := func(x, y cand) int {
		if x.key != y.key {
			return cmp.Compare(y.key, x.key)
		}
		return cmp.Compare(x.seq, y.seq)
	}
	if len(b.cands) > keep {
		sel(b.cands, keep)
		b.cands = b.cands[:keep]
	}
	slices.SortFunc(b.cands, better)
}

func before(x, y *cand) bool {
	return x.key > y.key || x.key == y.key && x.seq < y.seq
}

// sel brings the k best candidates to the front.
func sel(c []cand, k int) {
	lo, hi := 0, len(c)-1
	for lo < hi {
		mid := c[lo+(hi-lo)/2]
		i, j := lo, hi
		for i <= j {
			for before(&c[i], &mid) {
				i++
			}
			for before(&mid, &c[j]) {
				j--
			}
			if i <= j {
				c[i], c[j] = c[j], c[i]
				i++
				j--
			}
		}
		switch {
		case k-1 <= j:
			hi = j
		case k-1 >= i:
			lo = i
		default:
			return
		}
	}
}

func (b *beam) spots(t int32) []spot {
	var out []spot
	for ; b.trail[t].parent >= 0; t = b.trail[t].parent {
		m := b.trail[t]
		s := b.shapes[m.shape]
		out = append(out, spot{s.kind, m.x, m.y, s.turned})
	}
	for i, j := 0, len(out)-1; i < j; i, j = i+1, j-1 {
		out[i], out[j] = out[j], out[i]
	}
	return out
}

// expand lists the steps open to a node, with a key for each.
func (b *beam) expand(cur int, ni int32, n []int, pr params) {
	nd := &b.nodes[cur][ni]
	copy(b.left, n)
	for t := nd.trail; b.trail[t].parent >= 0; t = b.trail[t].parent {
		b.left[b.shapes[b.trail[t].shape].kind]--
	}
	minW, minH := b.w+1, b.h+1
	for i := range b.active {
		s := &b.active[i]
		if b.left[s.kind] > 0 {
			minW, minH = min(minW, s.w), min(minH, s.h)
		}
	}
	b.tmp = append(b.tmp[:0], b.segs[cur][nd.lo:nd.hi]...)
	segs := b.tmp
	covered := nd.covered
	free := 0
	for skips := int32(0); ; skips++ {
		i := niche(segs)
		g, lw, rw := b.span(segs, i)
		y := segs[i].y
		room := b.h - y
		if room < minH {
			return
		}
		found := false
		if g >= minW {
			for ai := range b.active {
				s := &b.active[ai]
				if s.w > g || s.h > room || b.left[s.kind] == 0 {
					continue
				}
				found = true
				b.evals++
				cov := covered + s.area
				top := y + s.h
				if rest := g - s.w; rest > 0 && rest < minW {
					cov += mul(float64(rest), float64(min(s.h, min(lw, rw)-y)))
				}
				if above := b.h - top; above > 0 && above < minH {
					cov += mul(float64(above), float64(s.w))
				}
				val := nd.guide + s.guide
				var key float64
				if pr.rate > 0 {
					key = val - mul(pr.rate, cov)
				} else {
					key = val / cov
				}
				if key < b.floor {
					continue
				}
				right := rw > lw
				b.cands = append(b.cands, cand{key, ni, skips, s.shape, right, b.seq})
				b.seq++
				if pr.both && s.w < g {
					b.cands = append(b.cands, cand{key, ni, skips, s.shape, !right, b.seq})
					b.seq++
				}
			}
		}
		if found {
			if free == pr.skips {
				return
			}
			free++
		}
		to := min(lw, rw)
		covered += mul(float64(g), float64(to-y))
		segs = raise(segs, i, b.h)
	}
}

// grow makes a candidate a node of the next generation, unless an equal one is
// there.
func (b *beam) grow(cur int, c *cand, v, see []float64) (node, bool) {
	nd := b.nodes[cur][c.node]
	nxt := cur ^ 1
	b.tmp = append(b.tmp[:0], b.segs[cur][nd.lo:nd.hi]...)
	segs := b.tmp
	for ; ; c.skips-- {
		i := niche(segs)
		g, lw, rw := b.span(segs, i)
		y := segs[i].y
		if c.skips == 0 {
			s := &b.shapes[c.shape]
			lo := len(b.segs[nxt])
			x := segs[i].x
			if c.right {
				x += g - s.w
			}
			b.segs[nxt] = layAt(b.segs[nxt], segs, i, s.w, g, y+s.h, c.right)
			out := node{lo: int32(lo), hi: int32(len(b.segs[nxt])), value: nd.value + v[s.kind], guide: nd.guide + see[s.kind], covered: nd.covered + b.area[s.kind], hash: nd.hash + b.zobr[s.kind]}
			h := out.hash
			for _, sg := range b.segs[nxt][lo:] {
				h = mix(h ^ uint64(sg.x)*0x9e3779b97f4a7c15 ^ uint64(sg.y))
			}
			if b.seen[h] {
				b.segs[nxt] = b.segs[nxt][:lo]
				return node{}, false
			}
			b.seen[h] = true
			out.trail = int32(len(b.trail))
			b.trail = append(b.trail, move{nd.trail, c.shape, x, y})
			b.nodes[nxt] = append(b.nodes[nxt], out)
			return out, true
		}
		nd.covered += mul(float64(g), float64(min(lw, rw)-y))
		segs = raise(segs, i, b.h)
	}
}

// layAt is lay on the end of dst.
func layAt(dst, segs []seg, i int, w, g, y int64, right bool) []seg {
	n := len(dst)
	out := lay(dst[n:], segs, i, w, g, y, right)
	return append(dst, out...)
}

// rng is splitmix64 (Steele, Lea and Flood 2014): seeded, the same everywhere.
type rng uint64

func (r *rng) next() uint64 {
	*r += 0x9e3779b97f4a7c15
	return mix(uint64(*r))
}

func mix(z uint64) uint64 {
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}
