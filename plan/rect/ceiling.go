package rect

import (
	"cmp"
	"slices"
)

// knots are the steps of a ceiling.
const knots = 512

// ceiling says how much worth a part of the bin can still hold: the best
// pieces by worth for their area, the last one cut (Dantzig's bound of the
// knapsack), tabulated at each 1/knots of the bin.
type ceiling struct {
	perArea float64
	worth   [knots + 2]float64
	order   []piece // scratch
}

// set fills the table for pieces of which n[kind] can be had.
func (c *ceiling) set(bin float64, pieces []piece, n []int) {
	c.perArea = knots / bin
	c.order = append(c.order[:0], pieces...)
	slices.SortFunc(c.order, func(x, y piece) int {
		if d := cmp.Compare(y.value/y.area, x.value/x.area); d != 0 {
			return d
		}
		return cmp.Compare(x.shape, y.shape)
	})
	// a kind's two turns stand side by side: they are one supply
	c.order = slices.CompactFunc(c.order, func(x, y piece) bool { return x.kind == y.kind })
	worth, area, next := 0.0, 0.0, 0
	for i := range c.worth {
		size := mul(bin, float64(i)/knots)
		for next < len(c.order) {
			p := &c.order[next]
			all := mul(p.area, float64(n[p.kind]))
			if area+all > size {
				break
			}
			area += all
			worth += mul(p.value, float64(n[p.kind]))
			next++
		}
		c.worth[i] = worth
		if next < len(c.order) {
			p := &c.order[next]
			c.worth[i] += mul(p.value/p.area, size-area)
		}
		c.worth[i] = mul(c.worth[i], 1+1e-9)
	}
}

// over bounds the worth that area can hold; nothing fits in less than none.
func (c *ceiling) over(area float64) float64 {
	if area < 0 {
		return 0
	}
	return c.worth[min(int(mul(area, c.perArea))+1, knots+1)]
}
