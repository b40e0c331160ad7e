package bound

import (
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/rect"
)

// Mat is a mat as Loads sees it. Pieces of one fabric lie together in groups,
// each in a rough cut of its own; a group's box is that of its pieces.
type Mat struct {
	W, H  length.Len // the part that boxes may take up
	Apart length.Len // between two boxes, across or along
	Keep  length.Len // between two rectangles of a group, across or along
	Gap   length.Len // between any two pieces; their Area is grown by half of it all round
}

// Piece is a kind of piece. Its box may be turned by a quarter where Turn
// allows.
type Piece struct {
	Fabric int
	W, H   length.Len
	Turn   bool
	Rect   bool // it is its box
	Aslant bool // it may lie at any angle: then its box says nothing
	Alone  bool // each has a rough cut to itself
	Area   length.Area
	Count  int
	// Ways are the outlines it may lie as, boxes at 0,0; none where they are
	// too many, or it is its box.
	Ways []outline.Outline

	shape int // among those that pins are stuck for
}

// Loads returns a number of mats below which the pieces cannot be cut,
// whatever fabrics share a mat. A piece that fits no mat counts for nothing.
//
// It looks for prices of the pieces that no matful exceeds. A group's box,
// grown by the distance between boxes, is worth at most what a mixture of
// pairs of scales says for a rectangle of its size, and the groups of a mat,
// grown so, are rectangles in a bin: together they are worth at most one mat
// (Fekete and Schepers 2004). What a box of one fabric can hold at the most is
// listed in full: rectangles by pairs of scales within the box, all pieces by
// area, by pins stuck in the mat, and a few large ones by exhaustion. The best
// prices and mixture are those of a linear program whose rows
// come in as they are found (Caprara and Monaci 2009 have one pair and no
// groups). The program is solved in floats; its prices are then checked
// against every box in whole numbers.
//
//	(1) no cutting uses fewer mats;
//	(2) the same input gives the same answer on any machine.
func Loads(m Mat, pieces []Piece, opt Options) int {
	return newSharing(m, pieces).loads(opt, spentOn(opt.Effort))
}

func (s *sharing) loads(opt Options, spent spending) int {
	best := s.stick(opt, spent)
	if !opt.done(best) {
		best = max(best, s.findLimits(spent.few))
	}
	if len(s.cloths) == 0 || opt.done(best) {
		return best
	}
	if !s.listAll(spent.steps, opt) {
		return best
	}
	return max(best, s.bound(opt, spent))
}

// spending is what an effort may cost.
type spending struct {
	steps  int // of listing what boxes hold
	pins   int // of sticking pins by a game
	first  int // rows of the first linear program for pins
	last   int // and of the last
	few    int // of trying a few pieces
	rounds int // of looking for another pair of scales
	work   int // in all of those rounds
}

func spentOn(e rect.Effort) spending {
	switch e {
	case rect.Quick:
		return spending{500_000, 10_000_000, 30, 60, 1_000, 4, 1 << 22}
	case rect.Thorough:
		return spending{16_000_000, 400_000_000, 100, 240, 100_000, 16, 1 << 27}
	}
	return spending{2_000_000, 60_000_000, 80, 160, 10_000, 16, 1 << 25}
}
