package bound

import "example.org/matside/plan/length"

// A pair of scales, f along the bin's width and g along its height, gives
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

// bin is what a full bin is worth in the units of worth.
func (pr pair) bin() length.Area {
	if pr.mean {
		return product(2*pr.f.whole, pr.g.whole)
	}
	return product(pr.f.whole, pr.g.whole)
}

// place is where the sides of a kind stand among the lengths of the two axes; hx
// and wy are for it turned.
type place struct{ wx, hy, hx, wy int }

// bins is the number of bins the pieces are worth, rounded up, exactly.
func (p *problem) bins(pr pair) int64 {
	var total length.Area
	for i, k := range p.kinds {
		total = total.Add(p.worth(pr, i).Times(int(k.count)))
	}
	if total.IsZero() {
		return 0
	}
	return total.CeilDiv(pr.bin())
}

// worth is what a piece of kind i counts under the pair.
func (p *problem) worth(pr pair, i int) length.Area {
	upright, turned := p.ways(pr, i)
	switch {
	case pr.mean:
		return upright.Add(turned)
	case p.kinds[i].turn && turned.Less(upright):
		return turned
	}
	return upright
}

// ways is the worth of a piece of kind i as it is and turned; the latter means
// nothing if neither it nor the bin may turn.
func (p *problem) ways(pr pair, i int) (upright, turned length.Area) {
	at := p.at[i]
	upright = product(pr.f.value[at.wx], pr.g.value[at.hy])
	if p.square || p.kinds[i].turn {
		turned = product(pr.f.value[at.hx], pr.g.value[at.wy])
	}
	return upright, turned
}

// demand is the total worth of all pieces as a linear function of the values
// of one scale, the other being as it is in the pair: of g's with onY, else of
// f's. Under the lesser worth each kind stays turned as it is now.
func (p *problem) demand(pr pair, onY bool) []float64 {
	n := len(p.x.lengths)
	if onY {
		n = len(p.y.lengths)
	}
	out := make([]float64, n)
	count := func(along, across int, n float64) {
		if onY {
			out[across] += float64(n * float64(pr.f.value[along]) / float64(pr.f.whole))
		} else {
			out[along] += float64(n * float64(pr.g.value[across]) / float64(pr.g.whole))
		}
	}
	for i, k := range p.kinds {
		at, n := p.at[i], float64(k.count)
		upright, turned := p.ways(pr, i)
		switch {
		case pr.mean:
			count(at.wx, at.hy, n/2)
			count(at.hx, at.wy, n/2)
		case k.turn && turned.Less(upright):
			count(at.hx, at.wy, n)
		default:
			count(at.wx, at.hy, n)
		}
	}
	return out
}

// dot is the sum of products, unfused.
func dot(demand []float64, f scale) (sum float64) {
	for i, d := range demand {
		sum += float64(d * float64(f.value[i]))
	}
	return sum / float64(f.whole)
}

// promise is about what bins will say before rounding up.
func (p *problem) promise(pr pair) float64 { return dot(p.demand(pr, true), pr.g) }
