package stock

import (
	"cmp"
	"slices"

	"example.org/matside/plan/length"
)

// turning says how what may be turned is to lie.
type turning uint8

const (
	asFits  turning = iota // whichever leaves less of a free rectangle
	flat                   // long side across, wherever that goes
	upright                // long side along the grain, wherever that goes
)

// turn says when strips across are cut.
type turn uint8

const (
	afterBorders turn = iota // after what is cut by hand along the grain, before the rest
	beforeAll
	afterAll
)

// way is one way to go about it.
type way struct {
	order   func(a, b Cut) int
	columns bool // strips across are split into columns first; else the shorter rest is split
	turning turning
	across  turn
}

// ways are all that Lay tries, in order of preference: of those that take as
// little fabric, borders come out of the long way of the fabric, before it is
// cut across (common practice, no source: the lengthwise grain stretches
// least, and no strip can then have shortened it).
func ways() []way {
	var out []way
	for _, order := range []func(a, b Cut) int{byHeight, byArea, byWidth} {
		for _, columns := range []bool{true, false} {
			for _, turning := range []turning{upright, asFits, flat} {
				for _, across := range []turn{afterBorders, beforeAll, afterAll} {
					out = append(out, way{order, columns, turning, across})
				}
			}
		}
	}
	return out
}

func byHeight(a, b Cut) int { return cmp.Or(cmp.Compare(b.H, a.H), cmp.Compare(b.W, a.W)) }
func byWidth(a, b Cut) int  { return cmp.Or(cmp.Compare(b.W, a.W), cmp.Compare(b.H, a.H)) }
func byArea(a, b Cut) int {
	return cmp.Or(cmp.Compare(square(b.W, b.H), square(a.W, a.H)), byHeight(a, b))
}

// square is an area to compare by: square tenths of a millimetre.
func square(w, h length.Len) int64 { return int64(w/100_000) * int64(h/100_000) }

// Lay finds every cut a place in the panels, tried in the order given.
func Lay(panels []Panel, cuts []Cut) *Layout {
	var best *Layout
	hasTurn := slices.ContainsFunc(cuts, func(c Cut) bool { return c.Turn && c.W != c.H })
	hasAcross := slices.ContainsFunc(cuts, func(c Cut) bool { return c.Across })
	for _, w := range ways() {
		if w.turning != upright && !hasTurn || w.across != afterBorders && !hasAcross {
			continue
		}
		l := layOneWay(panels, cuts, w)
		if best == nil || l.better(best, panels, cuts) {
			best = l
		}
	}
	return best
}

// better says whether l is better than o: less left over, then less fabric.
func (l *Layout) better(o *Layout, panels []Panel, cuts []Cut) bool {
	return cmp.Or(
		cmp.Compare(leftArea(l, cuts), leftArea(o, cuts)),
		cmp.Compare(l.Fabric(panels), o.Fabric(panels)),
	) < 0
}

func leftArea(l *Layout, cuts []Cut) int64 {
	var sum int64
	for _, i := range l.Left {
		if cuts[i].Across {
			sum += square(max(l.LeftLength, length.Inch), cuts[i].H)
		} else {
			sum += square(cuts[i].W, cuts[i].H)
		}
	}
	return sum
}

// Fabric is how much of the panels is cut into, to compare by: for each, its
// width times how far down it is cut.
func (l *Layout) Fabric(panels []Panel) int64 {
	var sum int64
	for i, p := range panels {
		sum += square(p.W, l.Reach[i])
	}
	return sum
}

// bench is the panels while they are being cut.
type bench struct {
	panels []Panel
	cuts   []Cut
	way    way
	l      *Layout
}

func layOneWay(panels []Panel, cuts []Cut, w way) *Layout {
	b := &bench{panels, cuts, w, &Layout{Reach: make([]length.Len, len(panels)), free: make([][]Box, len(panels))}}
	for i, p := range panels {
		b.l.free[i] = Offcuts(p)
		for _, u := range p.Used {
			b.l.Reach[i] = max(b.l.Reach[i], u.Y+u.H)
		}
	}
	var across, borders, other []int
	for i, c := range cuts {
		switch l := w.lying(c); {
		case c.Across:
			across = append(across, i)
		case c.Hand && l.H > l.W && w.across == afterBorders:
			borders = append(borders, i)
		default:
			other = append(other, i)
		}
	}
	order := func(x, y int) int { return w.order(w.lying(cuts[x]), w.lying(cuts[y])) }
	slices.SortStableFunc(across, func(x, y int) int { return cmp.Compare(cuts[y].H, cuts[x].H) })
	slices.SortStableFunc(borders, order)
	slices.SortStableFunc(other, order)
	for _, i := range borders {
		b.piece(i)
	}
	if w.across != afterAll {
		b.strips(across)
	}
	for _, i := range other {
		b.piece(i)
	}
	if w.across == afterAll {
		b.strips(across)
	}
	slices.Sort(b.l.Left)
	b.l.bench = b
	return b.l
}

// lying is a cut as it is to lie.
func (w way) lying(c Cut) Cut {
	if c.Turn && (w.turning == upright && c.W > c.H || w.turning == flat && c.H > c.W) {
		c.W, c.H = c.H, c.W
	}
	return c
}

func (b *bench) strips(across []int) {
	for _, i := range across {
		need := b.cuts[i].W
		for {
			got, ok := b.strip(i)
			if !ok {
				b.l.Left = append(b.l.Left, i)
				b.l.LeftLength += max(need, 0)
				break
			}
			if need -= got; need <= 0 {
				break
			}
		}
	}
}

// strip cuts one strip across and says how long it is. The widest panel that
// has one comes first: the fewest joins, and no strip of a binding that is
// long enough without it.
func (b *bench) strip(i int) (length.Len, bool) {
	h := b.cuts[i].H
	for _, p := range b.widestFirst() {
		for f, r := range b.l.free[p] {
			if r.W == b.panels[p].W && r.H >= h {
				b.take(i, p, f, r.W, h, false)
				return r.W, true
			}
		}
	}
	return 0, false
}

func (b *bench) widestFirst() []int {
	order := make([]int, len(b.panels))
	for p := range order {
		order[p] = p
	}
	slices.SortStableFunc(order, func(p, q int) int { return cmp.Compare(b.panels[q].W, b.panels[p].W) })
	return order
}

// piece finds a place for one cut: in the free rectangle it leaves least of,
// on the first panel that has one.
func (b *bench) piece(i int) {
	for p := range b.panels {
		for _, lies := range b.turns(b.cuts[i]) {
			if b.pieceOn(i, p, lies) {
				return
			}
		}
	}
	b.l.Left = append(b.l.Left, i)
}

// pieceOn places a cut on a panel, lying one of some ways.
func (b *bench) pieceOn(i, p int, lies []bool) bool {
	best, turned, least := -1, false, fit{}
	for f, r := range b.l.free[p] {
		for _, t := range lies {
			w, h := lying(b.cuts[i], t)
			if w > r.W || h > r.H {
				continue
			}
			s := fit{r.W == b.panels[p].W && b.panels[p].Endless, min(r.W-w, r.H-h), max(r.W-w, r.H-h)}
			if best < 0 || s.less(least) {
				best, turned, least = f, t, s
			}
		}
	}
	if best < 0 {
		return false
	}
	w, h := lying(b.cuts[i], turned)
	b.take(i, p, best, w, h, turned)
	return true
}

func lying(c Cut, turned bool) (w, h length.Len) {
	if turned {
		return c.H, c.W
	}
	return c.W, c.H
}

// turns are the ways a cut may lie: those in the first list are tried before
// those in the next.
func (b *bench) turns(c Cut) [][]bool {
	switch {
	case !c.Turn || c.W == c.H:
		return [][]bool{{false}}
	case b.way.turning == asFits:
		return [][]bool{{false, true}}
	case (c.W > c.H) == (b.way.turning == upright):
		return [][]bool{{true}, {false}}
	}
	return [][]bool{{false}, {true}}
}

// fit is how well a cut suits a free rectangle: smaller is better. Opening a
// new strip of endless fabric comes last.
type fit struct {
	opens       bool
	short, long length.Len
}

func (f fit) less(o fit) bool {
	if f.opens != o.opens {
		return o.opens
	}
	return f.short < o.short || f.short == o.short && f.long < o.long
}

// take cuts w x h out of the top left corner of free rectangle f of panel p.
func (b *bench) take(i, p, f int, w, h length.Len, turned bool) {
	r := b.l.free[p][f]
	b.l.Spots = append(b.l.Spots, Spot{i, p, turned, Box{r.X, r.Y, w, h}})
	b.l.Reach[p] = max(b.l.Reach[p], r.Y+h)
	right, below := Box{r.X + w, r.Y, r.W - w, r.H}, Box{r.X, r.Y + h, w, r.H - h}
	if r.W == b.panels[p].W || !b.way.columns && r.W-w > r.H-h {
		// A strip across first, then the piece off the strip.
		right.H, below.W = h, r.W
	}
	free := slices.Delete(b.l.free[p], f, f+1)
	for _, n := range []Box{right, below} {
		if n.W > 0 && n.H > 0 {
			free = append(free, n)
		}
	}
	b.l.free[p] = free
}

// Free is what is left of panel p, the largest first: rectangles that
// straight cuts free, and that don't overlap.
func (l *Layout) Free(p int) []Box {
	out := slices.Clone(l.free[p])
	slices.SortStableFunc(out, func(a, b Box) int { return cmp.Compare(square(b.W, b.H), square(a.W, a.H)) })
	return out
}

// Take cuts w x h out of r, one of the free rectangles of panel p, as the cut
// with index i.
func (l *Layout) Take(p int, r Box, w, h length.Len, i int) {
	l.bench.take(i, p, slices.Index(l.free[p], r), w, h, false)
}
