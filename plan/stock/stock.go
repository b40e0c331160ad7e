package stock

import "example.org/matside/plan/length"

// Box is a rectangle on a panel, its top left corner at X, Y.
type Box struct{ X, Y, W, H length.Len }

// Panel is one piece of fabric as it can be cut: after shrinking. Used boxes
// are gone already. With no End, H is what it may be at most and as little of
// it as possible is used: fabric still to be bought.
type Panel struct {
	W, H    length.Len
	Used    []Box
	Endless bool
}

// Cut is one rectangle to come out of some panel.
type Cut struct {
	W, H length.Len
	Turn bool // may lie H wide and W high
	Hand bool // cut by hand: a border where it lies along the grain
	// Across makes it a strip H wide from one edge of the panel to the
	// other; W is then how long strips must be together if there is to be
	// one strip after another until they are (binding), or 0 for one strip.
	Across bool
}

// Spot is where a cut came to lie: on which panel (index into those given).
type Spot struct {
	Cut    int // index into the cuts given; a binding has a spot for each strip
	Panel  int
	Turned bool
	Box
}

// Layout is what Lay found.
type Layout struct {
	Spots []Spot
	// Left are indexes of the cuts that found no place, a binding among them
	// when its strips are not long enough together; LeftLength says by how
	// much.
	Left       []int
	LeftLength length.Len
	// Reach is how far down each panel is cut into.
	Reach []length.Len
	free  [][]Box
	bench *bench
}
