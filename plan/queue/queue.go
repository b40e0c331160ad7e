package queue

import (
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// Queue is a plan: the mat loads in the order they are cut, and the fabric
// they come out of. Indexes into Lines and Fabrics of List count from 0;
// copies, loads, layouts and panels count from 1.
type Queue struct {
	List   *cutlist.List
	Loads  []Load
	Stock  []PanelUse
	Buy    []Buy
	Short  []Short
	Fewest Fewest
}

// Load is one matful.
type Load struct {
	Number    int
	Layout    int // loads with the same number are cut from the same drawing
	RoughCuts []RoughCut
	Pieces    []Placement
	CutLength length.Len // what the blade travels, a shared cut counted once
}

// RoughCut is a rectangle of one fabric, laid on the mat with its top left
// corner at X, Y, and cut out of one panel of that fabric.
type RoughCut struct {
	Fabric              int
	Panel               int
	X, Y, Width, Height length.Len
}

// Placement is one piece on the mat.
type Placement struct {
	Line     int // index into List.Lines
	Copy     int
	RoughCut int // index into the load's RoughCuts
	Turn     int // micro-degrees counter-clockwise as seen on the mat, 0 to 359 999 999
	Mirrored bool
	Outline  outline.Outline // as placed, mat coordinates
}

// PanelUse is one panel and what comes out of it. For a fabric without stock
// it is the length to buy.
type PanelUse struct {
	Fabric        int
	Panel         int // from 1 within the fabric
	Width, Height length.Len
	RoughCuts     []FromPanel
	ByHand        []HandCut
}

// Reach is how far down a panel is cut into.
func (u *PanelUse) Reach() (down length.Len) {
	for _, r := range u.RoughCuts {
		down = max(down, r.Y+r.Height)
	}
	for _, h := range u.ByHand {
		down = max(down, h.Y+h.Height)
	}
	return down
}

// FromPanel says where a rough cut comes out of its panel.
type FromPanel struct {
	Load, RoughCut int // load number from 1, index into its RoughCuts
	X, Y           length.Len
	Width, Height  length.Len // the rough cut's, so that a panel's use is whole by itself
}

// HandCut is a piece cut at the table.
type HandCut struct {
	Line                int // index into List.Lines
	Copy                int
	X, Y, Width, Height length.Len
}

// Buy says how much of a fabric without stock it takes, rounded up to a
// buying step.
type Buy struct {
	Fabric        int
	Width, Length length.Len
}

// Short says what a fabric's stock can't give: Missing has a count for each
// of List.Lines, and Length at the fabric's width would do.
type Short struct {
	Fabric  int
	Missing []int
	Length  length.Len
}

// ToBuy is how much more of the fabric to buy, in whole steps as it is sold,
// and how wide it must be: as the widest panel there is, or as a fabric without
// stock is bought. No length where none would do.
func (s *Short) ToBuy(l *cutlist.List) (width, long length.Len) {
	step := cutlist.BuyStep(l.Unit)
	for _, p := range l.Fabrics[s.Fabric].Stock {
		width = max(width, p.Width)
	}
	if width == 0 {
		width = cutlist.BuyWidth
	}
	return width, (s.Length + step - 1) / step * step
}

// Fewest is a true lower bound on the number of loads; Proved says that the
// queue has exactly that many.
type Fewest struct {
	Loads  int
	Proved bool
}
