package bound

import "slices"

// maxSteps caps how many parameters a family is tried with.
const maxSteps = 96

// scales lists scales of the axis worth trying, equal ones once: dual feasible
// functions over whole numbers, f superadditive with f(0) = 0, so that
// x1+...+xn <= side implies f(x1)+...+f(xn) <= f(side).
func (a *axis) scales() []scale {
	c := a.side
	out := []scale{a.scaleOf(func(x int64) int64 { return x })}
	for k := int64(1); k <= min(c, maxSteps); k++ {
		out = append(out, a.scaleOf(stepped(c, k)))
	}
	for _, k := range a.thresholds() {
		out = append(out, a.scaleOf(trimmed(c, k)), a.scaleOf(mirrored(c, k)))
		if s, ok := a.counted(k); ok {
			out = append(out, s)
		}
	}
	return out
}

// thresholds are the parameters at which a family changes on this axis.
func (a *axis) thresholds() []int64 {
	var ks []int64
	for _, x := range a.lengths {
		for _, k := range []int64{x, a.side - x, a.side - x + 1, x + 1} {
			if k > 0 && 2*k <= a.side {
				ks = append(ks, k)
			}
		}
	}
	slices.Sort(ks)
	return thin(slices.Compact(ks), maxSteps)
}

// thin keeps n of the values, evenly spread, if there are more.
func thin(v []int64, n int) []int64 {
	if len(v) <= n {
		return v
	}
	out := make([]int64, n)
	for i := range out {
		out[i] = v[i*len(v)/n]
	}
	return out
}

// stepped is u^(k) of Fekete and Schepers ("New classes of fast lower bounds
// for bin packing problems", Math. Programming 91 (2001)), after Lueker: x
// counts for as many k-ths of the side as it exceeds (k+1)-ths.
func stepped(c, k int64) func(int64) int64 {
	return func(x int64) int64 {
		if (k+1)*x%c == 0 {
			return x * k
		}
		return (k + 1) * x / c * c
	}
}

// trimmed is U^(e) of the same paper: lengths under e count nothing, those
// that leave less than e count as the whole side.
func trimmed(c, e int64) func(int64) int64 {
	return func(x int64) int64 {
		switch {
		case x < e:
			return 0
		case x > c-e:
			return c
		}
		return x
	}
}

// mirrored is f_2^k of Carlier, Clautiaux and Moukrim ("New reduction
// procedures and lower bounds for the two-dimensional bin packing problem with
// fixed orientation", Computers & Op. Res. 34 (2007)): lengths counted in
// whole k, those over half by what they leave.
func mirrored(c, k int64) func(int64) int64 {
	return func(x int64) int64 {
		switch {
		case 2*x > c:
			return 2 * (c/k - (c-x)/k)
		case 2*x == c:
			return c / k
		}
		return 2 * (x / k)
	}
}

// counted is f_1^k of the same paper, after Boschetti and Mingozzi ("The
// two-dimensional finite bin packing problem", 4OR 1 (2003)): middling lengths,
// k to half the side, count one; a long one counts for the middling ones it
// displaces. It depends on which pieces there are.
func (a *axis) counted(k int64) (scale, bool) {
	most := func(room int64) (n int64) { // middling pieces in a row
		for i, x := range a.lengths {
			if x < k || 2*x > a.side {
				continue
			}
			m := min(a.copies[i], room/x)
			n, room = n+m, room-m*x
		}
		return n
	}
	all := most(a.side)
	if all == 0 {
		return scale{}, false
	}
	return a.scaleOf(func(x int64) int64 {
		switch {
		case x == a.side:
			return all
		case 2*x > a.side:
			return all - most(a.side-x)
		case x >= k:
			return 1
		}
		return 0
	}), true
}
