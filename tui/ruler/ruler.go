package ruler

import (
	"cmp"
	"slices"

	"example.org/matside/plan/length"
)

// Box is a rectangle on a panel: top left corner and size.
type Box struct{ X, Y, W, H length.Len }

func (b Box) right() length.Len  { return b.X + b.W }
func (b Box) bottom() length.Len { return b.Y + b.H }

// Cut is one straight cut right across the piece in hand.
type Cut struct {
	Hand   Box        // the piece in hand, on the panel
	Across bool       // along the crosswise grain; else along the lengthwise
	At     length.Len // from the top edge of Hand, or from its left edge
}

// Cuts returns the cuts that free the boxes want (indexes into boxes) from a
// panel, in order, when those of earlier have been freed before. What ends
// at an edge of the panel needs no cut there.
func Cuts(w, h length.Len, boxes []Box, earlier, want []int) []Cut {
	t := tree{boxes: boxes, made: make(map[Cut]bool)}
	all := make([]int, len(boxes))
	for i := range all {
		all[i] = i
	}
	panel := Box{0, 0, w, h}
	for _, i := range earlier {
		t.free(panel, all, i)
	}
	t.cuts = nil
	for _, i := range want {
		t.free(panel, all, i)
	}
	return t.cuts
}

// tree walks the tree of cuts from the panel down to a box.
type tree struct {
	boxes []Box
	made  map[Cut]bool
	cuts  []Cut
}

// free makes the cuts on the way from the piece in hand, which holds the
// boxes in, to the box aim.
func (t *tree) free(hand Box, in []int, aim int) {
	for {
		cut, ok := t.first(hand, in)
		if !ok {
			return
		}
		if !t.made[cut] {
			t.made[cut] = true
			t.cuts = append(t.cuts, cut)
		}
		one, other := cut.parts()
		if !one.holds(t.boxes[aim]) {
			one = other
		}
		hand = one
		in = slices.DeleteFunc(slices.Clone(in), func(i int) bool { return !one.holds(t.boxes[i]) })
	}
}

// Repeats reports that c is the cut before once more: as far from the edge
// that the one before has left.
func (c Cut) Repeats(before Cut) bool {
	_, rest := before.parts()
	return c.Across == before.Across && c.At == before.At && c.Hand == rest
}

func (c Cut) parts() (one, other Box) {
	one, other = c.Hand, c.Hand
	if c.Across {
		one.H = c.At
		other.Y, other.H = c.Hand.Y+c.At, c.Hand.H-c.At
	} else {
		one.W = c.At
		other.X, other.W = c.Hand.X+c.At, c.Hand.W-c.At
	}
	return one, other
}

func (b Box) holds(o Box) bool {
	return o.X >= b.X && o.Y >= b.Y && o.right() <= b.right() && o.bottom() <= b.bottom()
}

// first is the first cut to make in a piece: the topmost across that runs
// through no box, else the leftmost along. A piece that is one whole box has
// none.
func (t *tree) first(hand Box, in []int) (Cut, bool) {
	if len(in) == 1 && t.boxes[in[0]] == hand {
		return Cut{}, false
	}
	for _, across := range []bool{true, false} {
		if at, ok := t.place(hand, in, across); ok {
			return Cut{hand, across, at}, true
		}
	}
	return Cut{}, false
}

// place finds the nearest edge of a box at which hand can be cut through.
func (t *tree) place(hand Box, in []int, across bool) (length.Len, bool) {
	side := func(b Box) (from, to length.Len) {
		if across {
			return b.Y - hand.Y, b.bottom() - hand.Y
		}
		return b.X - hand.X, b.right() - hand.X
	}
	whole := hand.W
	if across {
		whole = hand.H
	}
	var edges []length.Len
	for _, i := range in {
		from, to := side(t.boxes[i])
		edges = append(edges, from, to)
	}
	slices.SortFunc(edges, func(a, b length.Len) int { return cmp.Compare(a, b) })
	for _, at := range edges {
		if at <= 0 || at >= whole {
			continue
		}
		through := func(i int) bool {
			from, to := side(t.boxes[i])
			return from < at && at < to
		}
		if !slices.ContainsFunc(in, through) {
			return at, true
		}
	}
	return 0, false
}
