package rect

import "example.org/matside/plan/length"

// Most packs as many copies of one size as it can into a w x h bin; Count is
// the most that are wanted.
func Most(w, h length.Len, size Size) Bin {
	p := newProblem(w, h, []Size{size}, nil)
	if len(p.kinds) == 0 {
		return nil
	}
	return p.bins([]pattern{{p.most(0, p.kinds[0].n, Usual), 1}})[0]
}

// divisions is how many ways to cut a region in two may be looked at in search
// of a better layout of one kind, some 0.1 µs each.
func (e Effort) divisions() int64 {
	switch e {
	case Quick:
		return 100_000
	case Thorough:
		return 100_000_000
	default:
		return 10_000_000
	}
}

// most packs at most n copies of kind k alone into a bin: in rows, or better if
// it may turn.
func (p *problem) most(k, n int, e Effort) []spot {
	a, b := p.kinds[k].w, p.kinds[k].h
	if !p.kinds[k].turn {
		return rows(k, n, p.w, p.h, a, b, false)
	}
	q := newPallet(p.w, p.h, a, b)
	if q == nil { // so many that rows are nearly as good as anything
		upright, turned := rows(k, n, p.w, p.h, a, b, false), rows(k, n, p.w, p.h, b, a, true)
		if len(turned) > len(upright) {
			return turned
		}
		return upright
	}
	x, y := q.floor(p.w), q.floor(p.h)
	whole, mirrored := q.normal(ell{x, y, x, y})
	q.search(whole, min(q.coloured(whole), int32(n)), e.divisions())
	spots := q.spots(nil, whole, frame{kind: k, rx: 1, uy: 1}.at(part{}, mirrored))
	return spots[:min(len(spots), n)]
}

// alone packs a problem of one kind.
func (p *problem) alone(e Effort) []pattern {
	n := p.kinds[0].n
	full := p.most(0, n, e)
	out := []pattern{{full, n / len(full)}}
	if rest := n % len(full); rest > 0 {
		out = append(out, pattern{full[:rest], 1})
	}
	return out
}

// rows lays at most n w x h copies of kind k side by side, row upon row.
func rows(k, n int, W, H, w, h int64, turned bool) []spot {
	across := W / w
	out := make([]spot, min(int64(n), across*(H/h)))
	for i := range out {
		out[i] = spot{k, int64(i) % across * w, int64(i) / across * h, turned}
	}
	return out
}

// search looks for more copies than straight cuts give, up to enough: one more
// as long as that comes easily, then from enough down.
func (p *pallet) search(whole ell, enough int32, divisions int64) {
	for t := p.know(whole).has + 1; t <= enough; t++ {
		p.work = divisions / 4
		if !p.holds(whole, t) {
			break
		}
	}
	for t := enough; t > p.know(whole).has; t-- {
		p.work = divisions / 2
		if p.holds(whole, t) {
			return
		}
		divisions -= divisions/2 - max(p.work, 0)
	}
}
