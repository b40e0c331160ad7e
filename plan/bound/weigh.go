package bound

// weighed is a problem seen through one scale along the width, ready to be
// multiplied by scales along the height.
type weighed struct {
	p      *problem
	f      scale
	linear []float64 // square bins: share of the mean per unit of g.value
}

func (p *problem) weigh(f scale) weighed {
	r := weighed{p: p, f: f}
	if !p.square {
		return r
	}
	r.linear = make([]float64, len(p.y.lengths))
	for i, k := range p.kinds {
		at, n := p.at[i], float64(k.count)/2/float64(f.whole)
		r.linear[at.hy] += float64(n * float64(f.value[at.wx]))
		r.linear[at.wy] += float64(n * float64(f.value[at.hx]))
	}
	return r
}

// promise is about what bins will say before rounding up.
func (r weighed) promise(g scale, mean bool) float64 {
	var sum float64
	if mean {
		for j, v := range r.linear {
			sum += float64(v * float64(g.value[j]))
		}
		return sum / float64(g.whole)
	}
	for i, k := range r.p.kinds {
		at := r.p.at[i]
		worth := float64(r.f.value[at.wx]) * float64(g.value[at.hy])
		if k.turn {
			worth = min(worth, float64(r.f.value[at.hx])*float64(g.value[at.wy]))
		}
		sum += float64(float64(k.count) * worth)
	}
	return sum / float64(r.f.whole) / float64(g.whole)
}
