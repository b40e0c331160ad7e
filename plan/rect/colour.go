package rect

// coloured bounds the copies that a region holds by colouring its unit squares
// in diagonals, n colours in turn: an n x 1 strip covers each colour once, and
// an a x b rectangle is b strips a long as well as a strips b long (Barnes
// 1979, who does it for rectangles).
func (p *pallet) coloured(l ell) int32 {
	t := p.atMost(l)
	for _, n := range []int64{p.a, p.b} {
		if n > mostColours {
			continue
		}
		across := p.a + p.b - n
		W, H, w, h := p.at[l.W], p.at[l.H], p.at[l.w], p.at[l.h]
		// diagonals one way, and the other way as in the region's mirror
		for _, shift := range []int64{h, h + W - w} {
			for c := range n {
				cells := diagonal(W, h, n, c) + diagonal(w, H-h, n, (c+n-shift%n)%n)
				t = min(t, int32(cells/across))
			}
		}
	}
	return t
}

// mostColours is where colouring would cost more than it saves.
const mostColours = 100

// diagonal counts the unit squares (i, j) of a w x h rectangle with i+j = c
// modulo n.
func diagonal(w, h, n, c int64) int64 {
	r, s := w%n, h%n
	cells := (w*h - r*s) / n
	if r > 0 && s > 0 {
		for k := c; k <= r+s-2; k += n {
			cells += min(k, r-1, s-1, r+s-2-k) + 1
		}
	}
	return cells
}
