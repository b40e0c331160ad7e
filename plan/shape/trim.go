package shape

import "example.org/matside/plan/internal/real"

// sharp is the angle below which `trimmed` cuts a corner, in degrees.
const sharp = 80

// trim cuts back every corner of f sharper than 80 degrees, one seam beyond the
// finished corner, which is the corner of f drawn in by the seam: square to
// the side on the grain where there is one to go by (onGrain), so that two edges
// to be sewn together are equally long, else square to the line that halves the
// corner. Arcs end in corners that are square once sewn and stay.
func (f figure) trim(seam real.Real, onGrain bool) (figure, error) {
	if seam.Sign() == 0 {
		return f, nil // the finished corner is the corner
	}
	finished, err := f.grow(seam.Neg())
	if err != nil {
		return nil, ErrTooSmallToTrim
	}
	var trimmed figure
	ends := make([][2]place, len(f)) // where the sides before and after each corner end
	for i := range f {
		p := f[i].from
		ends[i] = [2]place{p, p}
		if f.isSharp(i) {
			out := f.tipWay(i, onGrain)
			at := finished[i].from.add(out.times(seam))
			ends[i] = [2]place{crossing(p, f.along(i-1), at, out), crossing(p, f.along(i), at, out)}
			trimmed = append(trimmed, side{from: ends[i][0]})
		}
		trimmed = append(trimmed, side{ends[i][1], f[i].centre})
	}
	for i := range f {
		left := ends[(i+1)%len(f)][0].sub(ends[i][1])
		if f[i].centre == nil && left.dot(f.along(i)).Sign() <= 0 {
			return nil, ErrTooSmallToTrim
		}
	}
	return trimmed, nil
}

// isSharp says whether corner i points outward at less than 80 degrees.
func (f figure) isSharp(i int) bool {
	if f[i].centre != nil || f[(i+len(f)-1)%len(f)].centre != nil {
		return false
	}
	in, out := f.along(i-1), f.along(i)
	_, limit := real.SinCos(real.Degrees(real.Int(sharp)))
	return in.cross(out).Sign() > 0 && limit.Less(in.dot(out).Neg())
}

// tipWay is the unit way in which corner i points: along its side on the grain,
// or halfway between its two sides.
func (f figure) tipWay(i int, onGrain bool) place {
	in, back := f.along(i-1), f.along(i).times(real.Int(-1))
	if onGrain {
		for _, d := range []place{in, back} {
			if negligible(d.x) || negligible(d.y) {
				return d
			}
		}
	}
	return in.add(back).unit()
}

// crossing is where the line through p the way u crosses the line through q
// square to v.
func crossing(p, u, q, v place) place {
	return p.add(u.times(q.sub(p).dot(v).Quo(u.dot(v))))
}
