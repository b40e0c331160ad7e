package outline

import (
	"cmp"
	"slices"
)

// Simple says whether o is a simple polygon: three corners or more, no two the
// same, and sides that meet nowhere but at the corner they share. Which way round
// the corners run doesn't matter.
func (o Outline) Simple() bool {
	if len(o) < 3 {
		return false
	}
	for i, p := range o {
		if p == o.next(i) || o.doublesBack(i) {
			return false
		}
	}
	return !o.crossesItself()
}

// doublesBack says whether the way out of corner i goes back over the way in.
func (o Outline) doublesBack(i int) bool {
	p := o[i]
	in, out := o.prev(i).Sub(p), o.next(i).Sub(p)
	return Cross(in, out) == 0 && dot(in, out) > 0
}

// crossesItself says whether two sides that are not neighbours meet. Sides are
// taken from left to right, and each is compared with those that start before
// it ends.
func (o Outline) crossesItself() bool {
	n := len(o)
	left := func(i int) int64 { return int64(min(o[i].X, o.next(i).X)) }
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(i, j int) int { return cmp.Compare(left(i), left(j)) })
	for k, i := range order {
		right := int64(max(o[i].X, o.next(i).X))
		for _, j := range order[k+1:] {
			if left(j) > right {
				break
			}
			if (i+1)%n != j && (j+1)%n != i && meet(o[i], o.next(i), o[j], o.next(j)) {
				return true
			}
		}
	}
	return false
}

// Tidy makes an outline of corners as they were drawn: corners that repeat or
// lie on a straight side are dropped, and the rest run clockwise to the eye.
// What makes no simple polygon is ErrCorners, ErrDoublesBack or ErrCrosses.
func Tidy(corners []Point) (Outline, error) {
	o := dropRepeats(corners)
	if len(o) < 3 {
		return nil, ErrCorners
	}
	for i := range o {
		if o.doublesBack(i) {
			return nil, ErrDoublesBack
		}
	}
	if o = o.dropStraight(); len(o) < 3 {
		return nil, ErrCorners
	}
	if o.crossesItself() {
		return nil, ErrCrosses
	}
	if o.shoelace().Sign() < 0 {
		slices.Reverse(o)
	}
	return o, nil
}

func dropRepeats(corners []Point) (o Outline) {
	o = slices.Compact(slices.Clone(corners))
	for len(o) > 1 && o[len(o)-1] == o[0] {
		o = o[:len(o)-1]
	}
	return o
}

func (o Outline) dropStraight() (kept Outline) {
	for i, p := range o {
		if Orient(o.prev(i), p, o.next(i)) != 0 {
			kept = append(kept, p)
		}
	}
	return kept
}
