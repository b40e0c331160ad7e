package nest

import (
	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
	"example.org/matside/plan/rect"
)

// Item is a kind of piece to be laid Count times.
type Item struct {
	// Outline is the piece's outline; where its own frame lies is of no matter.
	Outline outline.Outline
	// Turns are the turns allowed, in micro-degrees as outline.Turn takes
	// them. None listed means as drawn.
	Turns []int
	// Count is how many there are. For Most, 0 is as many as there is room for.
	Count int
	// Value is the worth of one piece to Fill; 0 is its area. Either all items
	// of a call have a Value or none.
	Value int64
}

// Placed is one piece laid: Item is an index into the items given, Turn the
// turn it lies at, Outline its outline in the container, whose top left corner
// is 0,0.
type Placed struct {
	Item, Turn int
	Outline    outline.Outline
}

// Options guide a search. The zero value is the usual effort, never
// interrupted.
type Options struct {
	Effort rect.Effort
	// Seed varies the search; the same seed gives the same layout.
	Seed uint64
	// Stop, if not nil, is asked between rounds of work, by one goroutine at a
	// time; once it says true the best layout so far is returned.
	Stop func() bool
}

// stopped reports whether the caller wants no more.
func (o Options) stopped() bool { return o.Stop != nil && o.Stop() }

// container is a w x h rectangle in nanometres, gap the least distance kept
// between two pieces in it.
type container struct{ w, h, gap int64 }

func newContainer(w, h, gap length.Len) container {
	return container{int64(w), int64(h), int64(max(gap, 0))}
}
