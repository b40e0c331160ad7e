package plan

import (
	"testing"

	"example.org/matside/plan/check"
	"example.org/matside/plan/length"
	"example.org/matside/plan/queue"
	"example.org/matside/plan/rect"
	"pgregory.net/rapid"
)

// reachOf is how far down the panels of a fabric are cut into, together.
func reachOf(q *queue.Queue, fabric int) (sum length.Len) {
	for _, u := range q.Stock {
		if u.Fabric != fabric {
			continue
		}
		var down length.Len
		for _, r := range u.RoughCuts {
			down = max(down, r.Y+r.Height)
		}
		for _, h := range u.ByHand {
			down = max(down, h.Y+h.Height)
		}
		sum += down
	}
	return sum
}

// Four rough cuts of 10 1/2 in use a width of 42 in whole, where three of
// 11 1/2 waste a strip: 400 squares of 1 in are four loads either way.
func TestFourUseTheWidth(t *testing.T) {
	l := read(t, "quilt Four\nfabric Ink, 42 in x 1 yd\ncut from Ink\n400 squares 1")
	q := Make(l, Options{})
	for _, f := range check.Check(q) {
		t.Error(f)
	}
	if len(q.Loads) != 4 || reachOf(q, 0) != eighths(84) {
		t.Errorf("%d loads, %v down", len(q.Loads), reachOf(q, 0))
	}
	for _, load := range q.Loads {
		for _, r := range load.RoughCuts {
			if r.Width != eighths(84) || r.Height != eighths(84) {
				t.Errorf("load %d: %v x %v", load.Number, r.Width, r.Height)
			}
		}
	}
}

// Beside three full rough cuts and a border there is room for a single row:
// the last ten squares fit only so, though two rows of five take less fabric
// by themselves.
func TestReshapedToFit(t *testing.T) {
	l := read(t, "quilt Row\nfabric Ink, 42 x 11 1/2\ncut from Ink\n373 squares 1\n1 rectangle 6 x 11 1/2 for border, by hand, lengthwise")
	q := Make(l, Options{})
	for _, f := range check.Check(q) {
		t.Error(f)
	}
	if len(q.Loads) != 4 || len(q.Short) > 0 {
		t.Errorf("%d loads, short %v", len(q.Loads), q.Short)
	}
}

// The laws of Trade: (1) every plan of the front is without fault; (2) each
// takes more loads than the one before, and less fabric; (3) AtMost is the
// last that takes no more loads than allowed.
func TestTrade(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := drawList(t)
		front := Trade(l, Options{Effort: rect.Quick})
		if len(front) == 0 {
			t.Fatal("no plan")
		}
		for i, q := range front {
			for _, f := range check.Check(q) {
				t.Error(f)
			}
			if i > 0 && (len(q.Loads) <= len(front[i-1].Loads) || fabricOf(q) >= fabricOf(front[i-1])) {
				t.Errorf("%d loads of %d after %d of %d", len(q.Loads), fabricOf(q), len(front[i-1].Loads), fabricOf(front[i-1]))
			}
			if got := AtMost(front, len(q.Loads)); got != q {
				t.Errorf("at most %d loads: %d", len(q.Loads), len(got.Loads))
			}
		}
		if got := AtMost(front, len(front[0].Loads)-1); got != nil {
			t.Errorf("a plan of %d loads, fewer than the fewest", len(got.Loads))
		}
	})
}

// fabricOf is what a plan takes in square tenths of a millimetre: what is
// bought in whole steps, of stock what is cut into.
func fabricOf(q *queue.Queue) (sum int64) {
	for _, u := range q.Stock {
		down := u.Height
		if len(q.List.Fabrics[u.Fabric].Stock) > 0 {
			down = 0
			for _, r := range u.RoughCuts {
				down = max(down, r.Y+r.Height)
			}
			for _, h := range u.ByHand {
				down = max(down, h.Y+h.Height)
			}
		}
		sum += int64(u.Width/length.TenthMM) * int64(down/length.TenthMM)
	}
	return sum
}
