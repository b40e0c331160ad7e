package bound

import "example.org/matside/plan/length"

// A pair of scales, one along the bin's width and one along its height, gives
// every piece a worth such that those sharing a bin are worth at most one bin.
//
// A piece that turns counts at its lesser worth, as in Dell'Amico, Martello
// and Vigo ("A lower bound for the non-oriented two-dimensional bin packing
// problem", Discrete Appl. Math. 118 (2002)). In a square bin the layout may
// be turned whole, so the mean of the two worths does as well, and is better:
// the doubled instance of Clautiaux, Jouglet and El Hayek ("A new lower bound
// for the non-oriented two-dimensional bin-packing problem", Op. Res. Letters
// 35 (2007)).
type pair struct {
	f, g scale
	mean bool
}

// bins is the number of bins the pieces are worth, rounded up, exactly.
func (p *problem) bins(pr pair) int64 {
	var total length.Area
	for i, k := range p.kinds {
		total = total.Add(p.worth(pr, i).Times(int(k.count)))
	}
	bin := product(pr.f.whole, pr.g.whole)
	if pr.mean {
		bin = bin.Times(2)
	}
	return total.CeilDiv(bin)
}

// worth is what a piece of kind i counts under the pair; a bin is
// f.whole*g.whole, twice that for the mean.
func (p *problem) worth(pr pair, i int) length.Area {
	at := p.at[i]
	upright := product(pr.f.value[at.wx], pr.g.value[at.hy])
	if !pr.mean && !p.kinds[i].turn {
		return upright
	}
	turned := product(pr.f.value[at.hx], pr.g.value[at.wy])
	switch {
	case pr.mean:
		return upright.Add(turned)
	case turned.Less(upright):
		return turned
	}
	return upright
}

// place is where a kind's sides stand in the lists of lengths of the two
// axes; hx and wy only if the piece or the bin can turn.
type place struct{ wx, hy, hx, wy int }

// scaleBins tries all pairs of scales: floats say which pair promises more
// than is proved, whole numbers decide.
func scaleBins(p *problem, best int) int {
	fs := p.x.scales()
	gs := fs
	if !p.square {
		gs = p.y.scales()
	}
	for i, f := range fs {
		row := p.weigh(f)
		for j, g := range gs {
			if p.square && j < i && p.turning {
				continue // the mean is the same both ways
			}
			for _, mean := range p.views() {
				if row.promise(g, mean) > float64(best)-1e-6 {
					best = max(best, int(p.bins(pair{f, g, mean})))
				}
			}
		}
	}
	return best
}

// views says which of mean and lesser worth can be best.
func (p *problem) views() []bool {
	switch {
	case !p.square:
		return []bool{false}
	case p.turning:
		return []bool{true}
	}
	return []bool{true, false}
}
