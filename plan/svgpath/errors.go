package svgpath

import "errors"

// What can be wrong with a file.
var (
	// ErrNotSVG is returned when the file is no XML whose outermost element is svg.
	ErrNotSVG = errors.New("this is no SVG file")
	// ErrNoSize is returned when the file doesn't say how large it is.
	ErrNoSize = errors.New("the drawing has no true size: save it with its width and height in inches or millimeters")
	// ErrNoPath is returned when there is no closed path.
	ErrNoPath = errors.New("the drawing has no closed path")
	// ErrOpen is returned when there are only paths that don't end where they began.
	ErrOpen = errors.New("the path is not closed: its end must meet its beginning")
	// ErrMany is returned when there is more than one closed path.
	ErrMany = errors.New("the drawing has more than one closed path: leave only the outline to be cut")
	// ErrPath is returned when path data can't be read.
	ErrPath = errors.New("the path can't be read")
	// ErrTransform is returned when a transform can't be read.
	ErrTransform = errors.New("a transform in the drawing can't be read")
	// ErrTooLarge is returned when the path goes on beyond 100 m or a few thousand
	// corners.
	ErrTooLarge = errors.New("the drawing is too large: more than 100 m or too many corners")
)
