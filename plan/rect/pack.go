package rect

import (
	"fmt"
	"sort"

	"example.org/matside/plan/length"
)

// Pack puts every rectangle, Count copies of each size, into as few w x h bins
// as it can. It returns ErrTooBig, naming the size, when one fits at no
// allowed turn; otherwise every copy is placed.
func Pack(w, h length.Len, sizes []Size, opt Options) ([]Bin, error) {
	for i, s := range sizes {
		if s.Count > 0 && !fits(w, h, s) {
			return nil, fmt.Errorf("size %d: %w", i, ErrTooBig)
		}
	}
	left := append([]Size(nil), sizes...)
	var bins []Bin
	for {
		b := Fill(w, h, left, nil, opt)
		if len(b) == 0 {
			return bins, nil
		}
		for _, p := range b {
			left[p.Size].Count--
		}
		bins = append(bins, b)
	}
}

// Fill packs one w x h bin with the most value out of at most Count copies of
// each size; value[i] is the worth of one copy of size i, nil means its area.
// Sizes that do not fit, or are worth nothing, are left out.
func Fill(w, h length.Len, sizes []Size, value []int64, opt Options) Bin {
	sky := newSkyline(w, h)
	order := make([]int, len(sizes))
	for i := range order {
		order[i] = i
	}
	worth := func(i int) float64 {
		if value == nil {
			return float64(sizes[i].W) * float64(sizes[i].H)
		}
		return float64(value[i])
	}
	sort.SliceStable(order, func(a, b int) bool { return worth(order[a]) > worth(order[b]) })
	var bin Bin
	for _, i := range order {
		for n := 0; n < sizes[i].Count && worth(i) > 0; n++ {
			p, ok := drop(sky, i, sizes[i])
			if !ok {
				break
			}
			bin = append(bin, p)
		}
	}
	return bin
}

func fits(w, h length.Len, s Size) bool {
	return s.W <= w && s.H <= h || s.Turn && s.H <= w && s.W <= h
}

// drop lays one copy of size s as low as it goes.
func drop(sky *skyline, i int, s Size) (Placed, bool) {
	x, y, ok := sky.lowest(s.W, s.H)
	w, h, turned := s.W, s.H, false
	if s.Turn {
		if tx, ty, tok := sky.lowest(s.H, s.W); tok && (!ok || ty+s.W < y+s.H) {
			x, y, ok, w, h, turned = tx, ty, true, s.H, s.W, true
		}
	}
	if !ok {
		return Placed{}, false
	}
	sky.add(x, w, y+h)
	return Placed{Size: i, X: x, Y: y, Turned: turned}, true
}

// Strip packs all of sizes into a strip w wide, as low as it can and no higher
// than maxH; it reports the height used, false when it found no way.
func Strip(w, maxH length.Len, sizes []Size, opt Options) (Bin, length.Len, bool) {
	b := Fill(w, maxH, sizes, nil, opt)
	n, top := 0, length.Len(0)
	for _, s := range sizes {
		n += s.Count
	}
	for _, p := range b {
		s := sizes[p.Size]
		if p.Turned {
			top = max(top, p.Y+s.W)
		} else {
			top = max(top, p.Y+s.H)
		}
	}
	return b, top, len(b) == n
}

// Most packs as many copies of one size as it can into a w x h bin; Count is
// the most that are wanted.
func Most(w, h length.Len, size Size) Bin {
	return Fill(w, h, []Size{size}, nil, Options{})
}
