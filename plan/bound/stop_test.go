package bound

import (
	"sync/atomic"
	"testing"

	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
)

// Listing what boxes hold gives up soon after it is told to, in the middle of
// a box too: what a quilter waits for after Ctrl+C.
func TestListingIsStopped(t *testing.T) {
	const eighth = length.Inch / 8
	var pieces []Piece
	for i := range length.Len(7) {
		w, h := (9+5*i%34)*eighth, (9+11*i%37)*eighth
		pieces = append(pieces, Piece{W: w, H: h, Area: length.Mul(w, h), Count: 23, Turn: true, Rect: true})
	}
	var asked atomic.Int64
	opt := Options{Stop: func() bool { return asked.Add(1) > 5 }}
	s := newSharing(Mat{W: 11 * length.Inch, H: 11 * length.Inch, Apart: length.Inch / 2}, pieces)
	if s.listAll(spentOn(rect.Thorough).steps, opt) {
		t.Error("all is listed after Stop said true")
	}
	if n := asked.Load(); n < 5 || n > 10 {
		t.Errorf("Stop is asked %d times, and said true the sixth", n)
	}
}
