package bound

import (
	"cmp"
	"slices"

	"example.org/matside/plan/length"
)

// Discrete is a kind of piece of any outline, known by its area alone.
type Discrete struct {
	Area  length.Area
	Most  int // no bin holds more of this kind, as the caller has proved; 0 if unknown
	Count int
}

// Areas returns a number of bins below which pieces of those areas cannot do,
// whatever their outlines: the area of all together; each kind by itself, as
// only whole pieces go in a bin; and all together as lengths in a row as long
// as the bin's area, by dual feasible functions. A kind larger than the bin
// counts for nothing.
func Areas(bin length.Area, pieces []Discrete) int {
	if bin.IsZero() {
		return 0
	}
	var total length.Area
	var best int64
	var row axis
	for _, d := range lumped(bin, pieces) {
		total = total.Add(d.Area.Times(d.Count))
		most := bin.FloorDiv(d.Area)
		if d.Most > 0 {
			most = min(most, int64(d.Most))
		}
		best = max(best, (int64(d.Count)+most-1)/most)
		row.lengths = append(row.lengths, share(d.Area, bin))
		row.copies = append(row.copies, int64(d.Count))
	}
	row.side = maxGrid
	return int(max(best, total.CeilDiv(bin), row.bins()))
}

// lumped drops what does not count, smallest area first.
func lumped(bin length.Area, pieces []Discrete) []Discrete {
	out := slices.DeleteFunc(slices.Clone(pieces), func(d Discrete) bool {
		return d.Count <= 0 || d.Area.IsZero() || bin.Less(d.Area)
	})
	slices.SortFunc(out, func(a, b Discrete) int {
		return cmp.Or(a.Area.Cmp(b.Area), cmp.Compare(a.Most, b.Most))
	})
	return out
}

// share is a in maxGrid-ths of the bin, rounded down; see coarsen for why that
// is sound.
func share(a, bin length.Area) int64 { return a.Times(maxGrid).FloorDiv(bin) }

// bins is the least number of rows the axis's pieces are worth under any of
// its scales.
func (a *axis) bins() int64 {
	var best int64
	for _, f := range a.scales() {
		var total length.Area
		for i, v := range f.value {
			total = total.Add(product(v, a.copies[i]))
		}
		best = max(best, total.CeilDiv(product(f.whole, 1)))
	}
	return best
}
