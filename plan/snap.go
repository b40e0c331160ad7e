package plan

import (
	"example.org/matside/plan/length"
	"example.org/matside/plan/pack"
	"example.org/matside/plan/stock"
)

// ruler is the step a quilter's ruler and the mat's grid are read in: an
// eighth of an inch, or 5 mm.
func ruler(u length.Unit) length.Len {
	if u == length.In {
		return length.Inch / 8
	}
	return 5 * length.Millimetre
}

// exact is the rough cut of a group as it lies on the mat: the box of its
// pieces with the margin round it.
func (m *maker) exact(g *pack.Group) stock.Box {
	e := m.list.Margin
	return stock.Box{X: g.X - e, Y: g.Y - e, W: g.W + 2*e, H: g.H + 2*e}
}

// snapped gives a mat's rough cuts edges on whole steps of the ruler, as far
// as the mat's edge and the other rough cuts leave room.
func (m *maker) snapped(mat *pack.Mat) []stock.Box {
	out := make([]stock.Box, len(mat.Groups))
	for i := range mat.Groups {
		out[i] = m.exact(&mat.Groups[i])
	}
	step := ruler(m.list.Unit)
	for i := range out {
		b := out[i]
		left, top := b.X-b.X%step, b.Y-b.Y%step
		right, bottom := up(b.X+b.W, step), up(b.Y+b.H, step)
		for _, try := range []stock.Box{
			{X: left, Y: b.Y, W: b.X + b.W - left, H: b.H},
			{X: b.X, Y: b.Y, W: right - b.X, H: b.H},
		} {
			m.widen(mat, out, i, try)
		}
		b = out[i]
		m.widen(mat, out, i, stock.Box{X: b.X, Y: b.Y, W: right - b.X, H: b.H})
		b = out[i]
		m.widen(mat, out, i, stock.Box{X: b.X, Y: top, W: b.W, H: b.Y + b.H - top})
		b = out[i]
		m.widen(mat, out, i, stock.Box{X: b.X, Y: b.Y, W: b.W, H: bottom - b.Y})
	}
	return out
}

// widen makes rough cut i as large as try, if it stays on the mat and clear
// of the others.
func (m *maker) widen(mat *pack.Mat, all []stock.Box, i int, try stock.Box) {
	if try.X < 0 || try.Y < 0 || try.X+try.W > m.list.Mat.Width || try.Y+try.H > m.list.Mat.Height {
		return
	}
	for k, o := range all {
		if k != i && try.X < o.X+o.W && o.X < try.X+try.W && try.Y < o.Y+o.H && o.Y < try.Y+try.H {
			return
		}
	}
	all[i] = try
}

// exactly gives a fabric's rough cuts without the snapping; nil if none has
// been snapped.
func (m *maker) exactly(a *attempt, f int) []stock.Box {
	var out []stock.Box
	differs := false
	a.eachGroup(f, func(g *pack.Group, r *stock.Box) {
		e := m.exact(g)
		differs = differs || e != *r
		out = append(out, e)
	})
	if !differs {
		return nil
	}
	return out
}

func up(l, step length.Len) length.Len { return (l + step - 1) / step * step }
