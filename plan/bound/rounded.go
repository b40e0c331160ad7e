package bound

import (
	"cmp"
	"slices"
)

// Boxes are used whole, which a linear program does not know: five pieces, two
// to a box, take three boxes and not two and a half. A cut says so for some
// kinds of a fabric: if no box holds more than most of them together, as many
// boxes hold some of them as their number over most, rounded up. In the
// program it is a kind of its own, of which every box holds as many as what
// it holds over most, rounded up: to round up what a true inequality in whole
// numbers says (Gomory 1958; Chvátal 1973).

// mostCuts is how many of a fabric are kept.
const mostCuts = 8

// cut is such a kind: the kinds of the cloth it counts, and how much there is.
type cut struct {
	of    []bool
	most  int64
	count int64
	gain  float64 // by how much more there is than without rounding
}

// cutsFor are those of a cloth that say most more than the kinds themselves.
func (c *cloth) cutsFor(boxes []box) (out []cut) {
	for set := 1; set < 1<<len(c.kinds); set++ {
		k := cut{of: make([]bool, len(c.kinds))}
		var all int64
		for i := range c.kinds {
			if k.of[i] = set>>i&1 == 1; k.of[i] {
				all += int64(c.kinds[i].Count)
			}
		}
		for i := range boxes {
			k.most = max(k.most, k.among(boxes[i].holds))
		}
		if k.most == 0 {
			continue
		}
		k.count = (all + k.most - 1) / k.most
		if k.gain = float64(k.count) - float64(all)/float64(k.most); k.gain > 0 {
			out = append(out, k)
		}
	}
	slices.SortStableFunc(out, func(a, b cut) int { return cmp.Compare(b.gain, a.gain) })
	return out[:min(mostCuts, len(out))]
}

// among is how many pieces of its kinds a box holds.
func (k *cut) among(holds []int64) (n int64) {
	for i, in := range k.of {
		if in {
			n += holds[i]
		}
	}
	return n
}

// round adds the cuts to what the boxes of a cloth hold, and gives how much
// there is of each.
func (c *cloth) round(boxes []box) (count []int64) {
	cuts := c.cutsFor(boxes)
	for i := range boxes {
		b := &boxes[i]
		for n := range cuts {
			k := &cuts[n]
			b.holds = append(b.holds, (k.among(b.holds)+k.most-1)/k.most)
		}
	}
	for _, k := range cuts {
		count = append(count, k.count)
	}
	return count
}
