package rect

import (
	"cmp"
	"math"
	"slices"

	"example.org/matside/plan/internal/random"
)

// beam searches for the most value in one bin. A partial packing is a skyline;
// a step lays one piece at an end of the lowest niche, or gives that niche up
// and takes the next. Of each generation the best nodes live on, and of the
// nodes that hold the same pieces only the tightest: that keeps the beam wide
// in what matters, which pieces share the bin.
//
// The zero rate compares nodes by value for the area used up, which suits
// values that are areas; with a rate, the worth of a unit of free area, nodes
// are compared by value less what their area would have been worth, which
// suits the prices of a relaxation.
type beam struct {
	w, h   int64
	each   int64   // h, or the height of a bin when they are stacked
	bin    float64 // its area
	shapes []shape
	area   []float64 // by kind
	name   []uint64  // by kind: a random number, sums of them name sets
	work   int64     // counted: steps looked at

	// of the run under way
	pieces []piece
	ceil   ceiling
	goal   float64 // a node that can come to no more is dropped
	keep   int     // candidates kept for a generation
	floor  float64 // candidates with a lesser key have no chance
	cut    bool    // a node was dropped for want of width
	seq    int32
	left   []int
	trail  []move
	cands  []cand
	now    generation
	next   generation
	tmp    []seg
	skies  map[uint64]bool
	sets   map[uint64]int
	hits   []hit
}

// shape is a kind at one of its turns.
type shape struct {
	kind   int
	w, h   int64
	turned bool
}

// piece is a shape that can be had and is worth something in this run.
type piece struct {
	w, h        int64
	area        float64
	value       float64
	guide       float64 // value as the search is told to see it
	kind, shape int32
}

// move is a step taken; parent leads back to the empty bin.
type move struct {
	parent int32
	shape  int32
	x, y   int64
}

// node is a partial packing.
type node struct {
	trail   int32
	lo, hi  int32 // its skyline, in its generation's segs
	value   float64
	guide   float64
	covered float64 // area taken or given up
	set     uint64  // names the pieces it holds
}

type generation struct {
	nodes []node
	segs  []seg
}

// cand is a step open to a node: give up skips niches, then lay shape.
type cand struct {
	key   float64
	node  int32
	skips int32
	shape int32
	seq   int32
	right bool
}

// hit is a node worth noting.
type hit struct {
	value float64
	trail int32
}

// manner steers a run.
type manner struct {
	width int     // nodes kept of each generation
	skips int     // niches with room that a step may give up
	both  bool    // lay at both ends of a niche, not only at the higher wall
	alike int     // nodes kept of those that hold the same pieces; 0: all
	rate  float64 // worth of free area; 0: compare by ratio
	over  float64 // note as hits the nodes worth more than this, if not 0
}

func newBeam(w, h int64, kinds []kind) *beam {
	b := &beam{w: w, h: h, each: h, bin: mul(float64(w), float64(h))}
	b.left = make([]int, len(kinds))
	b.skies, b.sets = map[uint64]bool{}, map[uint64]int{}
	r := random.Source(1)
	for i, k := range kinds {
		b.area = append(b.area, k.area())
		b.name = append(b.name, r.Next())
		if k.w <= w && k.h <= h {
			b.shapes = append(b.shapes, shape{i, k.w, k.h, false})
		}
		if k.turn && k.h <= w && k.w <= h {
			b.shapes = append(b.shapes, shape{i, k.h, k.w, true})
		}
	}
	return b
}

// lower sets the bin's height, to no more than it was when the beam was made.
func (b *beam) lower(h int64) {
	b.h, b.each = h, h
	b.bin = mul(float64(b.w), float64(h))
}

// stack makes the bin a tower of so many, one on the other: no piece may lie
// across the edge between two.
func (b *beam) stack(bins int) {
	b.h = b.each * int64(bins)
	b.bin = mul(float64(b.w), float64(b.h))
}

// run looks for the most value out of n[k] copies of each kind, worth v[k]
// each, guided by the values see. It returns the best bin and its value; hits
// is left holding what the manner asked to note, cut whether anything was
// dropped that might have been better.
func (b *beam) run(n []int, v, see []float64, m manner) ([]spot, float64) {
	all := b.start(n, v, see, m)
	best, at := 0.0, int32(0)
	for len(b.now.nodes) > 0 {
		b.propose(n, m)
		b.next.nodes, b.next.segs = b.next.nodes[:0], b.next.segs[:0]
		clear(b.skies)
		clear(b.sets)
		for i := range b.cands {
			if len(b.next.nodes) == m.width {
				b.cut = true
				break
			}
			nd, ok := b.grow(&b.cands[i], v, see, m)
			if !ok {
				continue
			}
			if m.over > 0 && nd.value > m.over {
				b.hits = append(b.hits, hit{nd.value, nd.trail})
			}
			if nd.value > best {
				best, at = nd.value, nd.trail
				b.goal = max(b.goal, best)
			}
		}
		if best >= all {
			break
		}
		b.now, b.next = b.next, b.now
	}
	return b.spots(at), best
}

// start sets a run up and returns the value of everything there is.
func (b *beam) start(n []int, v, see []float64, m manner) float64 {
	all := 0.0
	b.pieces = b.pieces[:0]
	for k := range n {
		if v[k] > 0 {
			all += mul(v[k], float64(n[k]))
		}
	}
	for i, s := range b.shapes {
		if k := s.kind; n[k] > 0 && v[k] > 0 {
			b.pieces = append(b.pieces, piece{s.w, s.h, b.area[k], v[k], see[k], int32(k), int32(i)})
		}
	}
	b.ceil.set(b.bin, b.pieces, n)
	b.goal, b.cut, b.seq = m.over, false, 0
	b.keep = 2*m.width + 8
	b.hits = b.hits[:0]
	b.trail = append(b.trail[:0], move{parent: -1, shape: -1})
	b.now.segs = append(b.now.segs[:0], seg{0, 0})
	b.now.nodes = append(b.now.nodes[:0], node{lo: 0, hi: 1})
	return all
}

// propose lists the steps open to this generation, the best first.
func (b *beam) propose(n []int, m manner) {
	b.cands, b.floor = b.cands[:0], math.Inf(-1)
	for i := range b.now.nodes {
		b.expand(int32(i), n, m)
		if len(b.cands) > 4*b.keep {
			b.shorten()
		}
	}
	if len(b.cands) > b.keep {
		b.shorten()
	}
	slices.SortFunc(b.cands, func(x, y cand) int {
		if x.key != y.key {
			return cmp.Compare(y.key, x.key)
		}
		return cmp.Compare(x.seq, y.seq)
	})
}

// shorten drops all but the keep best candidates.
func (b *beam) shorten() {
	b.cut = true
	selectBest(b.cands, b.keep)
	b.cands = b.cands[:b.keep]
	b.floor = math.Inf(1)
	for i := range b.cands {
		b.floor = min(b.floor, b.cands[i].key)
	}
}

// selectBest brings the k best candidates to the front, in any order (Hoare's
// quickselect).
func selectBest(c []cand, k int) {
	better := func(x, y *cand) bool { return x.key > y.key || x.key == y.key && x.seq < y.seq }
	for lo, hi := 0, len(c)-1; lo < hi; {
		mid := c[lo+(hi-lo)/2]
		i, j := lo, hi
		for i <= j {
			for better(&c[i], &mid) {
				i++
			}
			for better(&mid, &c[j]) {
				j--
			}
			if i <= j {
				c[i], c[j] = c[j], c[i]
				i, j = i+1, j-1
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

// spots follows a trail back to the empty bin.
func (b *beam) spots(t int32) []spot {
	var out []spot
	for ; b.trail[t].parent >= 0; t = b.trail[t].parent {
		m := b.trail[t]
		s := b.shapes[m.shape]
		out = append(out, spot{s.kind, m.x, m.y, s.turned})
	}
	slices.Reverse(out)
	return out
}
