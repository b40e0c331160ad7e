package plan

import (
	"example.org/matside/plan/length"
	"example.org/matside/plan/pack"
	"example.org/matside/plan/rect"
)

// levelled lowers the limit on a fabric's rough cuts as far as it takes no
// more of them: four of 10 1/2 in then use a width of 42 in whole, where
// three of 11 1/2 waste a strip of it and leave the fourth nearly empty. It
// halves the way between the least height there could be, by area, and the
// height there is; nil where that leads nowhere.
func (m *maker) levelled(f int, s *suit) *suit {
	if s.rough < 2 || s.missing > 0 || s.limit.H < m.job.H || m.opt.Effort == rect.Quick {
		return nil
	}
	step := ruler(m.list.Unit)
	low, high := m.leastHeight(f, s), s.limit.H
	var best *suit
	for low < high && !m.stopped() {
		mid := low + (high-low)/2/step*step
		t := m.try(f, pack.Limit{W: s.limit.W, H: mid})
		if t == nil || t.missing > s.missing || t.rough > s.rough {
			low = mid + step
			continue
		}
		high = mid
		if best == nil || t.fabric <= best.fabric {
			best = t
		}
	}
	return best
}

// leastHeight is a height, in whole steps of the ruler less the margins, that
// so many rough cuts of a width must have by area.
func (m *maker) leastHeight(f int, s *suit) length.Len {
	var sum length.Area
	for k := range m.job.Kinds {
		if p := &m.job.Kinds[k]; p.Fabric == f {
			sum = sum.Add(p.Outline.Area().Times(p.Count))
		}
	}
	return m.onRuler(length.Len(sum.CeilDiv(length.Mul(s.limit.W, length.Len(s.rough)))))
}

// onRuler is the least height of pieces, no less than h, whose rough cut is a
// whole step of the ruler high.
func (m *maker) onRuler(h length.Len) length.Len {
	return m.inset(up(h+2*m.list.Margin, ruler(m.list.Unit)))
}
