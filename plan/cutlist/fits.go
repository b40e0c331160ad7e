package cutlist

import (
	"math"

	"example.org/matside/plan/length"
	"example.org/matside/plan/outline"
)

// Fits says whether a w by h rectangle has room for the outline at a turn that
// the grain allows; on a one-way fabric none does but the one it has. The
// answer is exact for quarter turns, and for AnyGrain that of TurnThatFits.
func Fits(o outline.Outline, grain Grain, oneWay bool, w, h length.Len) bool {
	b := o.Bounds()
	pw, ph := b.Width(), b.Height()
	if pw <= w && ph <= h {
		return true
	}
	if oneWay || grain == Lengthwise || grain == Crosswise {
		return false
	}
	if ph <= w && pw <= h {
		return true
	}
	if grain != AnyGrain {
		return false
	}
	_, ok := TurnThatFits(o, w, h)
	return ok
}

// The turns that TurnThatFits looks at, in micro-degrees. A half turn changes
// neither width nor height.
const (
	halfTurn   = 180_000_000
	sweepStep  = 250_000
	sweepTurns = halfTurn / sweepStep
)

// TurnThatFits finds a turn, in micro-degrees counter-clockwise as seen on the
// mat, at which the outline fits into a w by h rectangle.
//
// It sweeps half a turn by quarters of a degree, and from every turn that is
// tighter than none of its neighbours it goes on in ever smaller steps to the
// best one near. That a piece fits is exact: its corners, turned, lie inside.
// That it does not may be wrong for a piece that fits within a few
// micro-degrees only.
func TurnThatFits(o outline.Outline, w, h length.Len) (microDegrees int, ok bool) {
	if w <= 0 || h <= 0 {
		return 0, false
	}
	var tight [sweepTurns]float64
	for i := range tight {
		tight[i] = tightness(o, i*sweepStep, w, h)
	}
	for i, t := range tight {
		left, right := tight[(i+sweepTurns-1)%sweepTurns], tight[(i+1)%sweepTurns]
		if t > left || t > right {
			continue
		}
		turn := loosest(o, i*sweepStep, t, w, h)
		if b := o.Turn(turn).Bounds(); b.Width() <= w && b.Height() <= h {
			return turn, true
		}
	}
	return 0, false
}

// loosest goes downhill from a turn to the loosest one near it.
func loosest(o outline.Outline, turn int, tight float64, w, h length.Len) int {
	for step := sweepStep / 2; step > 0; step /= 2 {
		for _, t := range [2]int{turn - step, turn + step} {
			if now := tightness(o, t, w, h); now < tight {
				turn, tight = t, now
			}
		}
	}
	return (turn + halfTurn) % halfTurn
}

// tightness is over 1 by as much as the turned outline sticks out of a w by h
// rectangle. It steers the search and decides nothing. The conversions keep
// products from being fused, so that it is the same on every machine.
func tightness(o outline.Outline, turn int, w, h length.Len) float64 {
	sin, cos := math.Sincos(float64(turn) / halfTurn * math.Pi)
	x0, x1, y0, y1 := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, p := range o {
		x := float64(float64(p.X)*cos) + float64(float64(p.Y)*sin)
		y := float64(float64(p.Y)*cos) - float64(float64(p.X)*sin)
		x0, x1, y0, y1 = min(x0, x), max(x1, x), min(y0, y), max(y1, y)
	}
	return max((x1-x0)/float64(w), (y1-y0)/float64(h))
}
