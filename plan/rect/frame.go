package rect

// frame places copies of a kind in the bin: a region's origin, and which way one
// step right and one step up in the region lead there.
type frame struct {
	kind   int
	x, y   int64
	rx, ry int64
	ux, uy int64
}

// at gives the frame of a part of the region.
func (f frame) at(p part, mirrored bool) frame {
	g := f
	g.x += p.x*f.rx + p.y*f.ux
	g.y += p.x*f.ry + p.y*f.uy
	if p.left {
		g.rx, g.ry = -g.rx, -g.ry
	}
	if p.up {
		g.ux, g.uy = -g.ux, -g.uy
	}
	if mirrored {
		g.rx, g.ry, g.ux, g.uy = g.ux, g.uy, g.rx, g.ry
	}
	return g
}

// spot lays a w x h rectangle at x, y of the region; turned is as the region
// sees it.
func (f frame) spot(x, y, w, h int64, turned bool) spot {
	x0, y0 := f.x+x*f.rx+y*f.ux, f.y+x*f.ry+y*f.uy
	x1, y1 := x0+w*f.rx+h*f.ux, y0+w*f.ry+h*f.uy
	return spot{f.kind, min(x0, x1), min(y0, y1), turned != (f.rx == 0)}
}

// spots appends the copies that region l, as normal gives it, is known to hold,
// either in rows or divided.
func (p *pallet) spots(dst []spot, l ell, f frame) []spot {
	k := p.know(l)
	if k.how == (way{}) {
		w, h, turned := p.a, p.b, false
		if (p.at[l.W]/w)*(p.at[l.H]/h) < int64(k.has) {
			w, h, turned = h, w, true
		}
		across := p.at[l.W] / w
		for i := range int64(k.has) {
			dst = append(dst, f.spot(i%across*w, i/across*h, w, h, turned))
		}
		return dst
	}
	one, two := p.parts(l, k.how)
	for _, part := range []part{one, two} {
		n, mirrored := p.normal(part.ell)
		dst = p.spots(dst, n, f.at(part, mirrored))
	}
	return dst
}
