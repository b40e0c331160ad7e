package nest

// An index finds the pieces whose boxes, grown by the gap, share area with a
// box. There are seldom over a hundred on a mat or in a strip: looking at each
// box in turn, all in one run of memory, beats a grid of cells at that.
type index struct{ boxes []box }

// A box is all from lo to hi.
type box struct{ lo, hi vec }

// overlaps reports whether two boxes share area, touches whether they share
// as much as a point.
func (b *box) overlaps(o *box) bool {
	return b.lo.x < o.hi.x && o.lo.x < b.hi.x && b.lo.y < o.hi.y && o.lo.y < b.hi.y
}

func (b *box) touches(o *box) bool {
	return b.lo.x <= o.hi.x && o.lo.x <= b.hi.x && b.lo.y <= o.hi.y && o.lo.y <= b.hi.y
}

// near appends to out the pieces whose boxes share area with b.
func (x *index) near(b box, out []int32) []int32 {
	for j := range x.boxes {
		if b.overlaps(&x.boxes[j]) {
			out = append(out, int32(j))
		}
	}
	return out
}
