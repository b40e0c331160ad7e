package bound

import (
	"fmt"
	"slices"

	"example.org/matside/plan/internal/cores"
	"example.org/matside/plan/length"
)

// sharing is a problem for Loads: what boxes of one fabric hold, and how
// large boxes are on the grid on which scales are defined.
type sharing struct {
	Mat
	x, y   []length.Len // the grid: box sides grown by Apart, each up to the next; ascending, the mat's grown side last
	cloths []*cloth
	count  []int64 // pieces of each kind and of each cut, those of all cloths in turn
	boxes  []box
	shapes []shape // of all pieces, grown by half the gap
	pins   []*pins
	limits []limit
}

// box is what a box of one fabric may hold whose sides, grown by Apart, lie
// from place i of the grid to the next across, and from j along.
type box struct {
	i, j  int
	first int // kind that the first count is of
	holds []int64
}

// cloth is one fabric's kinds, or a kind that lies alone.
type cloth struct {
	kinds  []Piece
	first  int
	single bool
}

// Bounds on what is looked at: places of the grid a side, kinds of a fabric.
const (
	mostPlaces = 72
	mostKinds  = 5
)

// newSharing sorts pieces by fabric; those that fit no mat are left out.
func newSharing(m Mat, pieces []Piece) *sharing {
	s := &sharing{Mat: m}
	byFabric := map[int]*cloth{}
	for _, p := range pieces {
		if p.Count <= 0 || !s.fits(p) {
			continue
		}
		p.shape = s.shapeOf(p)
		c := byFabric[p.Fabric]
		if p.Alone || c == nil {
			c = &cloth{single: p.Alone}
			s.cloths = append(s.cloths, c)
			if !p.Alone {
				byFabric[p.Fabric] = c
			}
		}
		c.kinds = append(c.kinds, p)
	}
	return s
}

// listAll lists what boxes hold in so many steps, each fabric in its part of
// them. It returns false when it was stopped: then nothing is to be told by
// the lists.
func (s *sharing) listAll(steps int, opt Options) bool {
	for _, c := range s.cloths {
		c.thin(mostKinds)
	}
	s.x = s.grid(s.W, s.H, func(p Piece) length.Len { return p.W }, func(p Piece) length.Len { return p.H })
	s.y = s.grid(s.H, s.W, func(p Piece) length.Len { return p.H }, func(p Piece) length.Len { return p.W })
	found := make([][]box, len(s.cloths))
	cores.Each(len(s.cloths), func(i int) {
		for ok := false; !ok && !opt.stopped(); {
			if found[i], ok = s.list(s.cloths[i], steps/len(s.cloths), opt); !ok {
				s.cloths[i].thin(len(s.cloths[i].kinds) - 1)
			}
		}
	})
	if opt.stopped() {
		return false
	}
	for i, c := range s.cloths {
		c.first = len(s.count)
		for _, k := range c.kinds {
			s.count = append(s.count, int64(k.Count))
		}
		s.count = append(s.count, c.round(found[i])...)
		for _, b := range found[i] {
			b.first = c.first
			s.boxes = append(s.boxes, b)
		}
	}
	return true
}

func (s *sharing) fits(p Piece) bool {
	return p.Aslant || p.W <= s.W && p.H <= s.H || p.Turn && p.H <= s.W && p.W <= s.H
}

// thin keeps the n kinds of most area: to leave pieces out can only lower a
// bound.
func (c *cloth) thin(n int) {
	if len(c.kinds) <= n {
		return
	}
	slices.SortStableFunc(c.kinds, func(a, b Piece) int { return b.Area.Times(b.Count).Cmp(a.Area.Times(a.Count)) })
	c.kinds = c.kinds[:n]
}

// list lists what the cloth's boxes hold, the most of it, each in the smallest
// boxes that may; not ok if that takes too many steps, or was stopped.
func (s *sharing) list(c *cloth, steps int, opt Options) (found []box, ok bool) {
	l := newLister(s, c)
	l.stop = opt.stopped
	for i := range s.x {
		for j := range s.y {
			seen := map[string]bool{}
			l.extend(l.room(i, j), 0, func() {
				if l.within(i-1, j) || l.within(i, j-1) {
					return
				}
				holds := l.byKind()
				if key := fmt.Sprint(holds); !seen[key] {
					seen[key] = true
					found = append(found, box{i: i, j: j, holds: holds})
				}
			})
			if l.steps > steps && len(c.kinds) > 1 || l.off {
				return nil, false
			}
		}
	}
	return found, true
}

// lister lists what boxes hold.
type lister struct {
	*sharing
	cloth *cloth
	ways  []lying
	rooms map[[2]int]*room
	holds []int64 // of each lying
	steps int
	stop  func() bool // asked now and then
	off   bool        // it said true: what is listed is not all

	limits  []held
	lengths []length.Len         // sides of rectangles
	scales  [][][]int64          // sets of scales for them
	pairs   map[[2]int][][]int64 // measures by pairs of two sets
}

// lying is a kind as it lies: upright or, a rectangle, turned.
type lying struct {
	kind int
	w, h length.Len
}

func newLister(s *sharing, c *cloth) *lister {
	l := &lister{sharing: s, cloth: c, rooms: map[[2]int]*room{}, pairs: map[[2]int][][]int64{}}
	for k, p := range c.kinds {
		l.ways = append(l.ways, lying{k, p.W, p.H})
		if p.Rect && !p.Aslant {
			l.lengths = append(l.lengths, p.W+l.Keep, p.H+l.Keep)
			if p.Turn && p.W != p.H {
				l.ways = append(l.ways, lying{k, p.H, p.W})
			}
		}
	}
	slices.Sort(l.lengths)
	l.lengths = slices.Compact(l.lengths)
	l.holds = make([]int64, len(l.ways))
	for _, lim := range s.limits {
		for k := range c.kinds {
			for o := range c.kinds {
				if c.kinds[k].shape == lim.shape[0] && c.kinds[o].shape == lim.shape[1] {
					l.limits = append(l.limits, held{[2]int{k, o}, [2]int64{int64(lim.count[0]), int64(lim.count[1])}})
				}
			}
		}
	}
	return l
}

// held is a limit by the kinds of a cloth.
type held struct {
	kind  [2]int
	count [2]int64
}

// beyond says whether what is held is as much as no mat holds.
func (l *lister) beyond(h *held) bool {
	var n [2]int64
	for v, c := range l.holds {
		for i := range n {
			if l.ways[v].kind == h.kind[i] {
				n[i] += c
			}
		}
	}
	return n[0] >= h.count[0] && n[1] >= h.count[1]
}

// byKind is what is held, however it lies.
func (l *lister) byKind() []int64 {
	out := make([]int64, len(l.cloth.kinds))
	for v, n := range l.holds {
		out[l.ways[v].kind] += n
	}
	return out
}

// within says whether what is held now may be in a box at i, j as well.
func (l *lister) within(i, j int) bool {
	return i >= 0 && j >= 0 && l.may(l.room(i, j))
}

// may says whether what is held keeps within a room's measures, and within
// what there is.
func (l *lister) may(r *room) bool {
	for v, n := range l.holds {
		if n > r.most[v] {
			return false
		}
		if v > 0 && l.ways[v-1].kind == l.ways[v].kind && n+l.holds[v-1] > max(r.most[v-1], r.most[v]) {
			return false // more than there are, some upright and some turned
		}
	}
	for i := range l.limits {
		if l.beyond(&l.limits[i]) {
			return false
		}
	}
	for m, takes := range r.measures {
		left := r.own[m]
		for v, n := range l.holds {
			left -= n * takes[v]
		}
		if left < 0 {
			return false
		}
	}
	return true
}

// extend goes through all a room may hold, one lying after the other, and
// calls do for what no piece can be added to.
func (l *lister) extend(r *room, v int, do func()) {
	const askEvery = 1 << 12
	if l.steps++; l.steps%askEvery == 0 && l.stop() {
		l.off = true
	}
	if l.off {
		return
	}
	if v == len(l.holds) {
		if r.any && l.full(r) {
			do()
		}
		return
	}
	for n := int64(0); n <= r.most[v]; n++ {
		if l.holds[v] = n; !l.may(r) {
			break
		}
		l.extend(r, v+1, do)
	}
	l.holds[v] = 0
}

// full says whether no piece can be added.
func (l *lister) full(r *room) bool {
	for v := range l.holds {
		l.holds[v]++
		ok := l.may(r)
		l.holds[v]--
		if ok {
			return false
		}
	}
	return true
}
