package nest

import (
	"math"
	"slices"

	"example.org/matside/plan/outline"
)

// A shape is one item at one turn, its bounding box at 0,0.
type shape struct {
	item, turn int
	ring       ring
	parts      []ring
	w, h       int64 // the bounding box
}

// A model is one question put to the search: items as shapes, what they are
// worth, and the regions between every two shapes, made when first asked for.
type model struct {
	container
	items   []Item
	shapes  []shape
	turns   [][]int           // shapes of each item that fit the container
	value   []int64           // worth of one piece of each item
	area    []float64         // nm², for ranking
	stacks  [][]spot          // by item: a container full of it, once found
	regions []*region         // shape a · len(shapes) + shape b: b moving round a
	crowded map[string][]spot // what crowding came to, by what it began with
}

func newModel(c container, items []Item) *model {
	m := &model{container: c, items: items, crowded: map[string][]spot{}}
	for i, it := range items {
		m.addShapes(i, it)
		m.area = append(m.area, math.Abs(ringOf(it.Outline).area2())/2)
	}
	m.appraise(nil)
	m.stacks = make([][]spot, len(items))
	m.regions = make([]*region, len(m.shapes)*len(m.shapes))
	return m
}

// appraise sets what the items are worth, nil for their areas.
func (m *model) appraise(value []int64) {
	if m.value = value; value != nil {
		return
	}
	for _, a := range m.area {
		// Square micrometres: 100 000 pieces of a square metre fit in an int64.
		m.value = append(m.value, max(1, int64(a/1e6)))
	}
}

// beside is the model for a search that goes on beside others.
func (m *model) beside() *model {
	own := *m
	own.regions = slices.Clone(m.regions)
	return &own
}

// counts is how many of each item there are to lay.
func (m *model) counts() []int {
	n := make([]int, len(m.items))
	for i, it := range m.items {
		n[i] = it.Count
	}
	return n
}

// laid is the area of the pieces laid.
func (m *model) laid(spots []spot) float64 {
	var a float64
	for _, s := range spots {
		a += m.area[m.shapes[s.shape].item]
	}
	return a
}

// addShapes adds item i at each of its turns at which it fits and looks new.
func (m *model) addShapes(i int, it Item) {
	turns := it.Turns
	if len(turns) == 0 {
		turns = []int{0}
	}
	var mine []int
	for _, t := range turns {
		s := newShape(i, t, it.Outline)
		if s.w > m.w || s.h > m.h || m.known(mine, s.ring) {
			continue
		}
		mine = append(mine, len(m.shapes))
		m.shapes = append(m.shapes, s)
	}
	m.turns = append(m.turns, mine)
}

func newShape(item, turn int, o outline.Outline) shape {
	o = o.Turn(turn).Normalise()
	box := o.Bounds()
	s := shape{item: item, turn: turn, ring: ringOf(o), w: int64(box.Width()), h: int64(box.Height())}
	for _, p := range outline.Parts(o) {
		s.parts = append(s.parts, ringOf(p).straight())
	}
	return s
}

// known reports whether r is, corner by corner from some start, within a
// hair of one of the shapes: a square turned is the same square.
func (m *model) known(shapes []int, r ring) bool {
	for _, s := range shapes {
		if sameRing(m.shapes[s].ring, r) {
			return true
		}
	}
	return false
}

// hair is a difference no one can cut: 20 nm.
const hair = 20

func sameRing(a, b ring) bool {
	if len(a) != len(b) {
		return false
	}
	for shift := range b {
		same := true
		for i := range a {
			d := a[i].sub(b[(i+shift)%len(b)])
			if abs(d.x) > hair || abs(d.y) > hair {
				same = false
				break
			}
		}
		if same {
			return true
		}
	}
	return false
}

// region is where shape b must not be put, seen from where shape a lies.
func (m *model) region(a, b int) *region {
	if r := m.regions[a*len(m.shapes)+b]; r != nil {
		return r
	}
	return m.makeRegion(a, b)
}

func (m *model) makeRegion(a, b int) *region {
	r := newRegion(m.shapes[a].parts, m.shapes[b].parts, m.gap, max(m.w, m.h))
	m.regions[a*len(m.shapes)+b] = r
	return r
}

// makeRegions makes every region: from then on searches may share the model.
func (m *model) makeRegions() {
	for a := range m.shapes {
		for b := range m.shapes {
			m.region(a, b)
		}
	}
}

// A spot is one piece laid: a shape, and where its bounding box's corner is.
type spot struct {
	shape int
	at    vec
}

func (s *shape) size() vec { return vec{s.w, s.h} }

// bare is the bounding box of a spot, boxOf the same grown by the gap.
func (m *model) bare(s spot) box {
	sh := &m.shapes[s.shape]
	return box{s.at, vec{s.at.x + sh.w, s.at.y + sh.h}}
}

func (m *model) boxOf(s spot) box {
	b := m.bare(s)
	return box{vec{b.lo.x - m.gap, b.lo.y - m.gap}, vec{b.hi.x + m.gap, b.hi.y + m.gap}}
}

// placed turns spots into the answer.
func (m *model) placed(spots []spot) []Placed {
	out := make([]Placed, len(spots))
	for i, s := range spots {
		sh := &m.shapes[s.shape]
		out[i] = Placed{sh.item, sh.turn, sh.ring.outlineAt(s.at)}
	}
	return out
}

// inside reports whether a shape at t lies in the container.
func (m *model) inside(s int, t vec) bool {
	sh := &m.shapes[s]
	return t.x >= 0 && t.y >= 0 && t.x+sh.w <= m.w && t.y+sh.h <= m.h
}

// free reports whether shape s at t keeps clear of all the spots: exact.
func (m *model) free(s int, t vec, spots []spot) bool {
	for i := range spots {
		if m.region(spots[i].shape, s).covers(t.sub(spots[i].at)) {
			return false
		}
	}
	return true
}

// sound reports whether the spots are a layout.
func (m *model) sound(spots []spot) bool {
	for _, s := range spots {
		if !m.inside(s.shape, s.at) {
			return false
		}
	}
	return m.apart(spots)
}

// worth is the value of what is laid.
func (m *model) worth(spots []spot) int64 {
	var v int64
	for _, s := range spots {
		v += m.value[m.shapes[s.shape].item]
	}
	return v
}
