package outline

import "errors"

// What is wrong with corners that were to be an outline.
var (
	// ErrCorners is returned when fewer than three corners are left, or all lie on
	// one line.
	ErrCorners = errors.New("an outline needs three corners that are not in line")
	// ErrDoublesBack is returned when a side goes back over the one before it.
	ErrDoublesBack = errors.New("the outline doubles back on itself")
	// ErrCrosses is returned when two sides meet elsewhere than at their corner.
	ErrCrosses = errors.New("the outline crosses itself")
)
