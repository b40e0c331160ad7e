package pack

import "slices"

// bringIn looks for loads worth more than a mat at the present prices and
// takes them in as columns; it says whether it found one.
func (r *relaxation) bringIn() bool {
	value, solid := r.values()
	fill := r.s.filler(value)
	fill.solid = solid
	return r.fromMosaic(fill) || r.fromFills(fill) || r.fromFull(fill) || r.nest(value)
}

// offer takes in what is needed of a load if that is worth more than a mat.
func (r *relaxation) offer(l *load) bool {
	t := r.s.trimmedTo(l, r.need)
	column := r.column(&t)
	if r.program.Worth(column) <= 1+tiny {
		return false
	}
	r.take(t, column)
	return true
}

// mostDampings is how often the mosaic is asked for a load that holds less of
// what it held too much of.
const mostDampings = 8

// fromMosaic offers the mosaic's load of most worth. A mosaic lays each piece
// as often as it likes: where that is more than are needed, the load is cut
// back and filled up with others, and the piece made less worth for the next,
// until one pays.
func (r *relaxation) fromMosaic(fill *filler) bool {
	value, solid := slices.Clone(fill.value), slices.Clone(fill.solid)
	for n := range mostDampings {
		l := r.mosaic.solve(value, solid)
		if r.offer(&l) {
			return true
		}
		if n == 0 && r.mosaic.most() <= paying || !r.damp(&l, value, solid) {
			return false
		}
		if t := r.s.trimmedTo(&l, r.need); r.s.fetches(fill, &t) >= fine/2 {
			rest := r.need.clone()
			rest.addLoad(&t, -1)
			if t = r.s.extend(fill, rest, t); r.offer(&t) {
				return true
			}
		}
	}
	return false
}

// fetches is what a load is worth to a filler.
func (s *solver) fetches(fill *filler, l *load) (sum int64) {
	for i := range l.offers {
		sum += s.worth(fill, &l.offers[i])
	}
	return sum
}

// damp lowers the worth of what a load holds more of than is needed; it says
// whether there is any.
func (r *relaxation) damp(l *load, value, solid []int64) (any bool) {
	has := need{make([]int, len(value)), make([]int, len(solid))}
	has.addLoad(l, 1)
	lower := func(v []int64, has, needed []int) {
		for i, n := range has {
			if n > needed[i] {
				v[i], any = v[i]*int64(needed[i])/int64(n), true
			}
		}
	}
	lower(value, has.want, r.need.want)
	lower(solid, has.solid, r.need.solid)
	return any
}

// fromFills offers for each fabric the mat of most worth.
func (r *relaxation) fromFills(fill *filler) (paid bool) {
	s := r.s
	for f := range s.of {
		if s.limits[f].Groups != nil {
			continue
		}
		w, h := s.reachOf(s.limits[f])
		g := fill.fill(f, r.need.want, w, h)
		g.X, g.Y = s.X, s.Y
		paid = len(g.Parts) > 0 && r.offer(&load{offers: []offer{{g, -1}}}) || paid
	}
	return paid
}

// fromFull offers the best mat found rough cut by rough cut.
func (r *relaxation) fromFull(fill *filler) bool {
	l := r.s.full(fill, r.need, 3, nil)
	return r.offer(&l)
}

// nest offers, for one fabric, a mat of its outlines as they are, all kinds of
// them together.
func (r *relaxation) nest(value []int64) bool {
	s := r.s
	for f := range s.of {
		if s.limits[f].Groups != nil || r.barren[f] || !s.slanted(f, r.need.want) {
			continue
		}
		w, h := s.reachOf(s.limits[f])
		g := s.priced(f, r.need.want, value, w, h)
		g.X, g.Y = s.X, s.Y
		if len(g.Parts) > 0 && r.offer(&load{offers: []offer{{g, -1}}}) {
			return true
		}
		r.barren[f] = true
	}
	return false
}
