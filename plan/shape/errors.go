package shape

import "errors"

// What can be wrong with a Spec, in words for the quilter.
var (
	// ErrNothing is returned when a number of the SIZE is not above 0.
	ErrNothing = errors.New("a size must be more than 0")
	// ErrLongSideFirst is returned when a trapezoid's first number is not the
	// largest of the two sides.
	ErrLongSideFirst = errors.New("the long side comes first and must be longer than the short side")
	// ErrDegrees is returned when a diamond or parallelogram has another angle.
	ErrDegrees = errors.New("the angle must be 45 or 60")
	// ErrTooLong is returned when a shape comes out more than 200 m wide or high.
	ErrTooLong = errors.New("the shape comes out longer than any fabric")
	// ErrTooSmall is returned when nothing is left of a shape in whole nanometres.
	ErrTooSmall = errors.New("the shape is too small or too thin to be cut")
	// ErrCollapsed is returned when a side of an own outline vanishes in its seam
	// allowance.
	ErrCollapsed = errors.New("the seam allowance fills an inward corner of the outline: widen it, or draw the outline with its seam and leave out `finished`")
	// ErrTooSmallToTrim is returned when what is left within the seam has no tips.
	ErrTooSmallToTrim = errors.New("the shape is too small to be trimmed: nothing is left inside its seam")
)
