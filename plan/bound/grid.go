package bound

import (
	"slices"

	"example.org/matside/plan/length"
)

// grid are the places worth telling apart on a side of the mat: where boxes
// of whole rows of one fabric end, and, for outlines, evenly spread ones.
func (s *sharing) grid(side, other length.Len, along, across func(Piece) length.Len) []length.Len {
	whole := side + s.Apart
	out := []length.Len{whole}
	outlines := false
	add := func(box length.Len) {
		if box > 0 && box < side {
			out = append(out, box+s.Apart)
		}
	}
	for _, c := range s.cloths {
		var ls []length.Len
		for _, p := range c.kinds {
			if p.Aslant || !p.Rect {
				outlines = true
				for _, box := range s.nearlyFull(p, side, other) {
					add(box)
				}
			}
			if !p.Aslant {
				ls = append(ls, along(p)+s.Keep)
				if p.Turn {
					ls = append(ls, across(p)+s.Keep)
				}
			}
		}
		for _, at := range rowsWithin(ls, side+s.Keep, c.single) {
			add(at - s.Keep)
		}
	}
	if outlines {
		for i := range length.Len(evenly) {
			add(1 + (side-1)*i/evenly)
		}
	}
	slices.Sort(out)
	return spread(slices.Compact(out), mostPlaces)
}

// evenly is how many places are spread over a side where there are outlines.
const evenly = 20

// nearlyFull are the sides at which a box across the whole mat may hold one
// outline more, the last few.
func (s *sharing) nearlyFull(p Piece, side, other length.Len) []length.Len {
	var out []length.Len
	lane := length.Mul(other+s.Gap, 1)
	most := length.Mul(side+s.Gap, other+s.Gap).FloorDiv(p.Area)
	for n := max(1, most-5); n <= most; n++ {
		out = append(out, length.Len(p.Area.Times(int(n)).CeilDiv(lane))-s.Gap)
	}
	return out
}

// rowsWithin are the lengths of rows within a side, or of single pieces.
func rowsWithin(ls []length.Len, side length.Len, single bool) []length.Len {
	out := []length.Len{0}
	for _, l := range ls {
		for i := 0; i < len(out) && l > 0 && len(out) < 8*mostPlaces; i++ {
			if at := out[i] + l; at <= side && (!single || out[i] == 0) && !slices.Contains(out, at) {
				out = append(out, at)
			}
		}
	}
	return out[1:]
}

// spread keeps n of ascending lengths, evenly, the ends always.
func spread(ls []length.Len, n int) []length.Len {
	if len(ls) <= n {
		return ls
	}
	out := make([]length.Len, n)
	for i := range out {
		out[i] = ls[i*(len(ls)-1)/(n-1)]
	}
	return out
}
