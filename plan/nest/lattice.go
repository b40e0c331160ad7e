package nest

import (
	"cmp"
	"slices"
)

// A lattice is a motif — one piece, or two that touch — laid again and again
// at all whole steps of u and v, at no slant in particular.
type lattice struct {
	motif []spot
	u, v  vec
	cell  float64 // the area of a step: u × v
}

// Lattices kept of a motif, and laid of all; steps along which more are sought.
const (
	latticesEach = 6
	latticesLaid = 24
	shortSteps   = 8
)

// latticed lays an item in the tightest lattices, each where most of it falls
// inside the container, and returns the fullest few.
func (m *model) latticed(item, limit int) [][]spot {
	var all []lattice
	motifs := m.touching(item)
	for _, motif := range motifs {
		all = append(all, m.lattices(motif)...)
	}
	slices.SortStableFunc(all, func(a, b lattice) int {
		return cmp.Compare(a.cell/float64(len(a.motif)), b.cell/float64(len(b.motif)))
	})
	all = append(m.blocks(motifs), all[:min(len(all), latticesLaid)]...)
	var out [][]spot
	for _, l := range all {
		if spots := m.window(l); len(spots) > 0 && m.sound(spots) {
			out = append(out, spots[:min(len(spots), limit)])
		}
	}
	slices.SortStableFunc(out, func(a, b []spot) int { return cmp.Compare(len(b), len(a)) })
	return out[:min(len(out), maxPiles)]
}

// touching are the item's motifs: each shape alone, and the closest of the
// pairs whose corners meet. Of many turns only half turns pair up: with those lie
// the densest lattices of two convex pieces (Kuperberg).
func (m *model) touching(item int) [][]spot {
	var single, pairs [][]spot
	turns := m.turns[item]
	for i, a := range turns {
		single = append(single, []spot{{shape: a}})
		for _, b := range turns[i+1:] {
			if (len(turns) > 4 || len(m.shapes[a].ring) > someCorners) && m.shapes[b].turn-m.shapes[a].turn != halfTurn {
				continue
			}
			for _, d := range m.contacts(a, b) {
				pairs = append(pairs, []spot{{shape: a}, {b, d}})
			}
		}
	}
	between := func(p []spot) float64 { return norm(m.centre(p[0]).sub(m.centre(p[1]))) }
	slices.SortStableFunc(pairs, func(a, b []spot) int { return cmp.Compare(between(a), between(b)) })
	return append(single, pairs[:min(len(pairs), maxPairs)]...)
}

const halfTurn = 180_000_000

// contacts are the places of shape b about a, at 0,0, where a corner of one
// meets a corner of the other, or two parts of a hold one of b, and b is free.
func (m *model) contacts(a, b int) []vec {
	r := m.region(a, b)
	all := slices.Clone(r.corners)
	if m.gap == 0 {
		for _, p := range m.shapes[a].ring.some() {
			for _, q := range m.shapes[b].ring.some() {
				if d := p.sub(q); !r.covers(d) {
					all = append(all, d)
				}
			}
		}
	}
	return thin(spaced(sorted(all)), maxContacts)
}

const (
	someCorners = 24
	maxContacts = 48
	maxPairs    = 16
)

// spaced drops places a hair from one before.
func spaced(ts []vec) []vec {
	var out []vec
	for _, t := range ts {
		if !slices.ContainsFunc(out, func(o vec) bool { return abs(o.x-t.x) < hair && abs(o.y-t.y) < hair }) {
			out = append(out, t)
		}
	}
	return out
}

// some are the ring's corners, not all of a circle's.
func (r ring) some() []vec { return thin(r, someCorners) }

// thin is all, or n of all in equal steps.
func thin(all []vec, n int) []vec {
	if len(all) <= n {
		return all
	}
	out := make([]vec, n)
	for i := range out {
		out[i] = all[i*len(all)/n]
	}
	return out
}

// lattices are the tightest lattices of a motif.
func (m *model) lattices(motif []spot) []lattice {
	steps := m.steps(motif)
	least := 0.0
	for _, p := range motif {
		least += m.area[m.shapes[p.shape].item]
	}
	var all []lattice
	add := func(u, v vec) {
		if c := cross(u, v); c*(1+1e-9) >= least {
			all = append(all, lattice{motif, u, v, c})
		} else if -c*(1+1e-9) >= least {
			all = append(all, lattice{motif, v, u, -c})
		}
	}
	for i, u := range steps {
		for _, v := range steps[:i] {
			add(u, v)
		}
		if i < shortSteps { // the shorter of two reduced steps is short
			m.between(motif, u, func(v vec) { add(u, v) })
		}
	}
	slices.SortStableFunc(all, func(a, b lattice) int { return cmp.Compare(a.cell, b.cell) })
	var out []lattice
	for _, l := range all {
		if len(out) == latticesEach {
			break
		}
		l.reduce()
		if m.clear(l) && !slices.ContainsFunc(out, l.same) {
			out = append(out, l)
		}
	}
	return out
}

// between adds the steps v to a motif that touches both the first and the next
// one along u.
func (m *model) between(motif []spot, u vec, add func(vec)) {
	for _, p := range motif {
		for _, q := range motif {
			for _, p2 := range motif {
				for _, q2 := range motif {
					meet(m.region(p.shape, q.shape), p.at.sub(q.at), m.region(p2.shape, q2.shape), u.add(p2.at).sub(q2.at), add)
				}
			}
		}
	}
}

// steps are the ways from a motif to another just like it that touches it,
// one of each two opposite ones.
func (m *model) steps(motif []spot) []vec {
	var all []vec
	for _, p := range motif {
		for _, q := range motif {
			for _, d := range m.contacts(p.shape, q.shape) {
				t := d.add(p.at).sub(q.at)
				if t.y < 0 || t.y == 0 && t.x < 0 {
					t = t.neg()
				}
				if !m.clash(motif, t) {
					all = append(all, t)
				}
			}
		}
	}
	all = thin(spaced(sorted(all)), maxContacts)
	slices.SortStableFunc(all, func(a, b vec) int { return cmp.Compare(norm(a), norm(b)) })
	return all
}

// clash reports whether a motif and the same moved by t are in each other's way.
func (m *model) clash(motif []spot, t vec) bool {
	for _, p := range motif {
		for _, q := range motif {
			if m.region(p.shape, q.shape).covers(t.add(q.at).sub(p.at)) {
				return true
			}
		}
	}
	return false
}

// clear reports whether no two motifs of a reduced lattice near each other are
// in each other's way. (What is laid is proved sound once more, whole.)
func (m *model) clear(l lattice) bool {
	for i := int64(0); i <= 2; i++ {
		for j := int64(-2); j <= 2; j++ {
			if (i > 0 || j > 0) && m.clash(l.motif, l.at(i, j)) {
				return false
			}
		}
	}
	return true
}

func (l *lattice) at(i, j int64) vec { return vec{i*l.u.x + j*l.v.x, i*l.u.y + j*l.v.y} }

// reduce makes u and v as short as they come (Lagrange's and Gauss's reduction).
func (l *lattice) reduce() {
	for range 64 {
		if norm(l.u) > norm(l.v) {
			l.u, l.v = l.v, l.u.neg()
		}
		k := nearest(dotProduct(l.u, l.v) / norm(l.u))
		if k == 0 {
			return
		}
		l.v = l.v.sub(vec{k * l.u.x, k * l.u.y})
	}
}

func (l lattice) same(o lattice) bool { return l.u == o.u && l.v == o.v }
