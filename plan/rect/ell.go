package rect

import (
	"cmp"
	"slices"
)

// pallet looks for the most copies of one turning a x b rectangle in a bin.
// Its regions are rectangles and Ls, and each is divided into two such regions
// in every way that one straight, bent or twice bent cut allows: the
// L-approach of Lins, Lins and Morabito (2003) as refined by Birgin, Lobato and
// Morabito (2010). The question is always "does this region hold t copies?", so
// that nearly all divisions fall to the area their parts would waste.
type pallet struct {
	a, b  int64
	at    []int64   // the sums i*a + j*b within the bin, from 0: edges lie there
	less  [][]int16 // less[i][j] is the last of at not past at[i] - at[j]
	known map[ell]answer
	plain [][]answer // of rectangles, by straight cuts alone; its not is unset
	work  int64      // divisions that may be looked at yet
}

// ell is a region: [0,W] x [0,h] together with [0,w] x [0,H], as indices into
// at; w <= W, h <= H. It is a rectangle if w == W, and then h == H.
type ell struct{ W, H, w, h int16 }

// answer is what is known of a region: it holds has copies, divided as how
// says (rows of copies if how is the zero way), and was found not to hold not.
type answer struct {
	has, not int32
	how      way
}

// mostEdges is how many edges are worth telling apart: a bin with more has so
// many copies that hardly anything is wasted.
const mostEdges = 400

// newPallet returns nil if the bin has too many edges to look through.
func newPallet(w, h, a, b int64) *pallet {
	p := &pallet{a: a, b: b, known: map[ell]answer{}}
	for x := int64(0); x <= max(w, h); x += a {
		for y := x; y <= max(w, h); y += b {
			if p.at = append(p.at, y); len(p.at) > mostEdges*mostEdges {
				return nil
			}
		}
	}
	slices.Sort(p.at)
	p.at = slices.Compact(p.at)
	if len(p.at) > mostEdges {
		return nil
	}
	p.less = make([][]int16, len(p.at))
	for i := range p.at {
		p.less[i] = make([]int16, i+1)
		for j := range p.less[i] {
			p.less[i][j] = p.floor(p.at[i] - p.at[j])
		}
	}
	p.cutStraight()
	return p
}

// cutStraight fills plain, small rectangles before large ones.
func (p *pallet) cutStraight() {
	n := int16(len(p.at))
	p.plain = make([][]answer, n)
	for W := range n {
		p.plain[W] = make([]answer, n)
		for H := range W + 1 {
			best := answer{has: int32(max((p.at[W]/p.a)*(p.at[H]/p.b), (p.at[W]/p.b)*(p.at[H]/p.a)))}
			for a := int16(1); 2*p.at[a] <= p.at[W]; a++ {
				if n := p.straight(a, H).has + p.straight(p.less[W][a], H).has; n > best.has {
					best = answer{has: n, how: way{corner, a, 0, 0}}
				}
			}
			for b := int16(1); 2*p.at[b] <= p.at[H]; b++ {
				if n := p.straight(W, b).has + p.straight(W, p.less[H][b]).has; n > best.has {
					best = answer{has: n, how: way{corner, 0, b, 0}}
				}
			}
			p.plain[W][H] = best
		}
	}
}

// straight is the plain answer for a rectangle that may lie either way.
func (p *pallet) straight(w, h int16) answer { return p.plain[max(w, h)][min(w, h)] }

// know gives what is known of a region, from straight cuts at the least.
func (p *pallet) know(l ell) answer {
	k, ok := p.known[l]
	if ok {
		return k
	}
	if l.w == l.W {
		k = p.plain[l.W][l.H]
	} else {
		right := p.straight(l.w, l.H).has + p.straight(p.less[l.W][l.w], l.h).has
		above := p.straight(l.W, l.h).has + p.straight(l.w, p.less[l.H][l.h]).has
		k = answer{has: right, how: way{corner, l.w, 0, 0}}
		if above > right {
			k = answer{has: above, how: way{corner, 0, l.h, 0}}
		}
	}
	k.not = p.coloured(l) + 1
	p.known[l] = k
	return k
}

// floor is the last edge not past x.
func (p *pallet) floor(x int64) int16 {
	i, ok := slices.BinarySearchFunc(p.at, x, cmp.Compare[int64])
	if !ok {
		i--
	}
	return int16(i)
}

// normal is the region as it counts: arms with room for nothing cut off, and
// of a region and its mirror in the diagonal the wider one.
func (p *pallet) normal(l ell) (_ ell, mirrored bool) {
	switch {
	case l.w == 0:
		l = ell{l.W, l.h, l.W, l.h}
	case l.h == 0:
		l = ell{l.w, l.H, l.w, l.H}
	case l.w == l.W || l.h == l.H:
		l.w, l.h = l.W, l.H
	}
	if l.W == 0 || l.H == 0 {
		return ell{}, false
	}
	if l.W < l.H || l.W == l.H && l.w < l.h {
		return ell{l.H, l.W, l.h, l.w}, true
	}
	return l, false
}

// atMost bounds a region's copies by its area.
func (p *pallet) atMost(l ell) int32 {
	W, H, w, h := p.at[l.W], p.at[l.H], p.at[l.w], p.at[l.h]
	return int32((W*h + w*(H-h)) / (p.a * p.b))
}

// holds says whether region l, as normal gives it, has been found to hold t
// copies. No may also mean that the work was spent.
func (p *pallet) holds(l ell, t int32) bool {
	if t <= 0 {
		return true
	}
	p.work -= 2
	k := p.know(l)
	if t <= k.has || t >= k.not {
		return t <= k.has
	}
	how := p.divide(l, t)
	k = p.known[l]
	switch {
	case how != way{}:
		k.has, k.how = t, how
	case p.work > 0:
		k.not = t
	}
	p.known[l] = k
	return how != way{}
}

// divide finds a way to cut l into two regions that hold t copies together.
func (p *pallet) divide(l ell, t int32) (found way) {
	p.ways(l, func(w way) bool {
		p.work--
		one, two := p.parts(l, w)
		l1, _ := p.normal(one.ell)
		l2, _ := p.normal(two.ell)
		m1, m2 := p.atMost(l1), p.atMost(l2)
		if m1+m2 < t || l1 == l || l2 == l {
			return p.work > 0
		}
		for n := m1; n >= t-m2 && p.work > 0; n-- {
			if p.holds(l1, n) {
				if p.holds(l2, t-n) {
					found = w
					return false
				}
				break
			}
		}
		return p.work > 0
	})
	return found
}
