package pack

import (
	"cmp"
	"slices"

	"example.org/matside/plan/internal/cores"
	"example.org/matside/plan/length"
	"example.org/matside/plan/nest"
	"example.org/matside/plan/rect"
)

// tiles are the rectangles that each fabric's pieces are laid out with, those
// of the fabrics whose groups are given left out.
func (s *solver) tiles() [][]tile {
	out := make([][]tile, len(s.of))
	nests := s.nestings()
	for f := range s.of {
		if s.limits[f].Groups != nil {
			continue
		}
		for _, k := range s.of[f] {
			if s.all.want[k] == 0 {
				continue
			}
			out[f] = append(out[f], s.lying(k)...)
			for _, d := range s.nestBoxes(k) {
				if g := s.laid(f, []int{k}, nests[nesting{s.Kinds[k].shape, d}]); len(g.Parts) > 1 {
					out[f] = append(out[f], tile{g.W, g.H, g.Parts})
				}
			}
		}
	}
	return out
}

// lying are a kind's single piece and the blocks it makes, lying each way
// they may.
func (s *solver) lying(k int) []tile {
	p := &s.Kinds[k]
	if !s.upright(p, s.W, s.H) {
		return nil
	}
	var out []tile
	single := block{w: p.W, h: p.H, turn: p.Turns >= QuarterTurns, parts: []Part{{Kind: k}}}
	for _, b := range append(s.wholes(k), single) {
		out = append(out, tile{b.w, b.h, b.parts})
		if b.turn && b.w != b.h {
			var parts []Part
			for _, p := range b.parts {
				parts = append(parts, s.quarterTurned(p, b.w))
			}
			out = append(out, tile{b.h, b.w, parts})
		}
	}
	return out
}

// nesting is a shape laid by itself in a box.
type nesting struct {
	shape int
	box   [2]length.Len
}

// nestBoxes are the boxes that a kind's outlines are laid in as they are: a
// whole mat and its halves.
func (s *solver) nestBoxes(k int) [][2]length.Len {
	p := &s.Kinds[k]
	w, h := s.reachOf(s.limits[p.Fabric])
	if p.Outline.IsRect() && p.Turns < AnyTurn || p.Fussy || int64(s.all.want[k])*p.area < square(w, h)/4 {
		return nil
	}
	if s.Effort == rect.Quick {
		return [][2]length.Len{{w, h}}
	}
	return [][2]length.Len{{w, h}, {w, h / 2}, {w / 2, h}}
}

// nestings lays every shape in the boxes worth it, on all cores: each laying
// depends on nothing but its shape and box.
func (s *solver) nestings() map[nesting][]nested {
	var all []nesting
	kind := map[nesting]int{}
	for f := range s.of {
		for _, k := range s.of[f] {
			if s.limits[f].Groups != nil || s.all.want[k] == 0 {
				continue
			}
			for _, d := range s.nestBoxes(k) {
				n := nesting{s.Kinds[k].shape, d}
				if _, ok := s.nests.alone[n]; !ok && !contains(kind, n) {
					kind[n] = k
					all = append(all, n)
				}
			}
		}
	}
	// The larger the box and the more of it is to be cut, the sooner.
	weight := func(n nesting) int64 {
		k := kind[n]
		return square(n.box[0], n.box[1]) / 1000 * (int64(s.all.want[k]) * s.Kinds[k].area / 1000)
	}
	slices.SortStableFunc(all, func(a, b nesting) int { return cmp.Compare(weight(b), weight(a)) })
	all = all[:min(len(all), s.nests.lone)]
	s.nests.lone -= len(all)
	laid := make([][]nested, len(all))
	cores.Each(len(all), func(i int) {
		n := all[i]
		p := &s.Kinds[kind[n]]
		item := nest.Item{Outline: p.base, Turns: p.turns}
		laid[i] = takenDown(nest.Most(n.box[0], n.box[1], s.List.Gap, item, nest.Options{Effort: rect.Quick, Stop: s.Stop}))
	})
	for i, n := range all {
		s.nests.alone[n] = laid[i]
	}
	return s.nests.alone
}

func contains[K comparable, V any](m map[K]V, k K) bool {
	_, ok := m[k]
	return ok
}
