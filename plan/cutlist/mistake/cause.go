package mistake

import (
	"errors"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/say"
	"example.org/matside/plan/shape"
	"example.org/matside/plan/svgpath"
)

// cause is an error of a package below and the sentence that tells it.
type cause struct {
	err  error
	kind *say.Kind
}

// causes are those that come from what she wrote or drew. Other errors are
// told as they are.
var causes = []cause{
	{length.ErrTooLong, LengthTooLong}, {length.ErrDigits, TooManyDigits},
	{length.ErrNotLess, FractionOfOne}, {length.ErrOverZero, DividedByZero},
	told(outline.ErrCorners), told(outline.ErrDoublesBack), told(outline.ErrCrosses),
	told(shape.ErrNothing), told(shape.ErrLongSideFirst), told(shape.ErrDegrees), told(shape.ErrTooLong),
	told(shape.ErrTooSmall), told(shape.ErrCollapsed), told(shape.ErrTooSmallToTrim),
	told(svgpath.ErrNotSVG), told(svgpath.ErrNoSize), told(svgpath.ErrNoPath), told(svgpath.ErrOpen), told(svgpath.ErrMany),
	told(svgpath.ErrPath), told(svgpath.ErrTransform), told(svgpath.ErrTooLarge),
}

// told declares the kind of an error that is told in its own words.
func told(err error) cause { return cause{err, kinds.New(err.Error())} }

// Of tells an error of a package below, or an unknown one by its text.
func Of(err error) say.Sentence {
	if k := KindOf(err); k != nil {
		return k.Say()
	}
	return Other.Say(err)
}

// KindOf is the kind of sentence that tells an error, nil for an unknown one.
func KindOf(err error) *say.Kind {
	for _, c := range causes {
		if errors.Is(err, c.err) {
			return c.kind
		}
	}
	return nil
}
