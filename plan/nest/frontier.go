package nest

import "slices"

// A frontier is a layout in the making with the places where each shape in
// play could go next: free places where it touches two things at once (a
// piece's corner counts), or lies in a corner of the container.
type frontier struct {
	m     *model
	spots []spot
	boxes []box   // of the spots
	ways  [][]vec // by shape; nil: not in play
}

// newFrontier is a container with some pieces laid and no shape in play.
func newFrontier(m *model, spots []spot) *frontier {
	f := &frontier{m: m, spots: slices.Clone(spots), ways: make([][]vec, len(m.shapes))}
	for _, p := range spots {
		f.boxes = append(f.boxes, m.boxOf(p))
	}
	return f
}

// enter brings a shape into play: every place it could go now.
func (f *frontier) enter(s int) {
	x, y := f.m.w-f.m.shapes[s].w, f.m.h-f.m.shapes[s].h
	f.ways[s] = sorted([]vec{{0, 0}, {x, 0}, {0, y}, {x, y}})
	for i, p := range f.spots {
		f.update(s, p, i)
	}
}

// lay puts p down and brings every shape's places up to date.
func (f *frontier) lay(p spot) {
	for s := range f.ways {
		if f.ways[s] != nil {
			f.update(s, p, len(f.spots))
		}
	}
	f.spots = append(f.spots, p)
	f.boxes = append(f.boxes, f.m.boxOf(p))
}

// drop takes a shape out of play.
func (f *frontier) drop(s int) { f.ways[s] = nil }

// update drops shape s's places that p covers and adds those p makes, among
// the first n spots.
func (f *frontier) update(s int, p spot, n int) {
	r := f.m.region(p.shape, s)
	kept := f.ways[s][:0]
	for _, t := range f.ways[s] {
		if !r.covers(t.sub(p.at)) {
			kept = append(kept, t)
		}
	}
	old := len(kept)
	add := func(t vec) {
		if f.m.inside(s, t) && !r.covers(t.sub(p.at)) && f.free(s, t, n) {
			kept = append(kept, t)
		}
	}
	for _, c := range r.corners {
		add(c.add(p.at))
	}
	f.alongWalls(s, r, p.at, add)
	z := f.m.shapes[s].size()
	b := f.m.boxOf(p)
	b.lo, b.hi = b.lo.sub(z), b.hi.add(z)
	for i, q := range f.spots[:n] {
		if b.touches(&f.boxes[i]) {
			meet(r, p.at, f.m.region(q.shape, s), q.at, add)
		}
	}
	if len(kept) > old {
		kept = sorted(kept)
	}
	f.ways[s] = kept
}

// free reports whether shape s at t keeps clear of the first n spots.
func (f *frontier) free(s int, t vec, n int) bool {
	b := f.m.bare(spot{s, t})
	for i := range f.boxes[:n] {
		if b.overlaps(&f.boxes[i]) {
			if q := &f.spots[i]; f.m.region(q.shape, s).covers(t.sub(q.at)) {
				return false
			}
		}
	}
	return true
}

// alongWalls adds where shape s touches both p and a side of the container.
func (f *frontier) alongWalls(s int, r *region, at vec, add func(vec)) {
	right, bottom := f.m.w-f.m.shapes[s].w, f.m.h-f.m.shapes[s].h
	for i := range r.parts {
		c := &r.parts[i]
		for _, y := range [2]int64{0, bottom} {
			if a, b, ok := c.stretch(level, y-at.y); ok {
				add(vec{a + at.x, y})
				add(vec{b + at.x, y})
			}
		}
		for _, x := range [2]int64{0, right} {
			if a, b, ok := c.stretch(upright, x-at.x); ok {
				add(vec{x, a + at.y})
				add(vec{x, b + at.y})
			}
		}
	}
}

// meet adds places next to where the edges of two regions cross.
func meet(a *region, pa vec, b *region, pb vec, add func(vec)) {
	d := pb.sub(pa)
	if a.lo.x > b.hi.x+d.x || a.hi.x < b.lo.x+d.x || a.lo.y > b.hi.y+d.y || a.hi.y < b.lo.y+d.y {
		return
	}
	for i := range a.parts {
		for j := range b.parts {
			crossings(&a.parts[i], &b.parts[j], d, func(t vec) { add(t.add(pa)) })
		}
	}
}
