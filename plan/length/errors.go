package length

import "errors"

// What can be wrong with a length. Parse and Scan wrap these, so ask with
// errors.Is.
var (
	// ErrNone is returned when no number starts the text.
	ErrNone = errors.New("no length")
	// ErrUnit is returned by Parse when the word after the number is no unit.
	ErrUnit = errors.New("no such unit")
	// ErrRest is returned by Parse when something stands after the length.
	ErrRest = errors.New("more than one length")
	// ErrOverZero is returned for a fraction over 0.
	ErrOverZero = errors.New("nothing is divided by 0")
	// ErrNotLess is returned for a fraction of 1 or more behind a whole number
	// (2 5/4): that is a slip of the pen.
	ErrNotLess = errors.New("a fraction behind a whole number is less than 1")
	// ErrTooLong is returned for a length over MaxLen.
	ErrTooLong = errors.New("longer than 100 m")
	// ErrDigits is returned for a number written with more than 40 digits.
	ErrDigits = errors.New("too many digits")
)
