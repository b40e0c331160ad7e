package pack

import (
	"cmp"
	"slices"

	"example.org/matside/plan/length"
	"example.org/matside/plan/rect"
)

// mostTargets bounds how many mats with room left are looked at when another
// is to be emptied.
const mostTargets = 48

// share lets remainders of several fabrics lie on one mat: again and again it
// takes the emptiest mat and tries to spread its pieces over the room that
// others have left, in rough cuts of their own.
func (j *Job) share(mats []Mat) []Mat {
	j.byFill(mats)
	for len(mats) > 1 && !j.stopped() {
		last := len(mats) - 1
		rest, ok := j.empty(mats[last], mats[max(0, last-mostTargets):last])
		if !ok {
			break
		}
		copy(mats[max(0, last-mostTargets):last], rest)
		mats = mats[:last]
		j.byFill(mats)
	}
	return mats
}

func (j *Job) stopped() bool { return j.Stop != nil && j.Stop() }

// empty moves all groups of donor to the others, or reports that it can't.
func (j *Job) empty(donor Mat, others []Mat) ([]Mat, bool) {
	out := make([]Mat, len(others))
	for i := range others {
		out[i] = Mat{Groups: slices.Clone(others[i].Groups)}
	}
	groups := slices.Clone(donor.Groups)
	slices.SortStableFunc(groups, func(a, b Group) int { return cmp.Compare(b.area(), a.area()) })
	for _, g := range groups {
		if !j.spread(g, out) {
			return nil, false
		}
	}
	return out, true
}

// spread puts a group on mats that have room: whole if it can, else, unless
// it is rigid, in parts.
func (j *Job) spread(g Group, mats []Mat) bool {
	for i := len(mats) - 1; i >= 0; i-- {
		if j.put(g, &mats[i]) {
			return true
		}
	}
	if g.Rigid {
		return false
	}
	want := j.wants(&g)
	for i := len(mats) - 1; i >= 0; i-- {
		for {
			part, ok := j.fillRoom(g.Fabric, want, &mats[i])
			if !ok {
				break
			}
			left := 0
			for _, p := range part.Parts {
				want[p.Kind]--
			}
			for _, n := range want {
				left += n
			}
			if left == 0 {
				return true
			}
		}
	}
	return false
}

// wants counts the pieces of a group by kind.
func (j *Job) wants(g *Group) []int {
	want := make([]int, len(j.Kinds))
	for _, p := range g.Parts {
		want[p.Kind]++
	}
	return want
}

// put lays a whole group in a free place of a mat, reshaped to the place if
// its own shape doesn't fit.
func (j *Job) put(g Group, m *Mat) bool {
	rooms := j.rooms(m)
	for _, r := range rooms {
		if g.W <= r.W && g.H <= r.H {
			g.X, g.Y = r.X, r.Y
			m.Groups = append(m.Groups, g)
			return true
		}
	}
	if g.Rigid {
		return false
	}
	for _, r := range rooms {
		if g.area() > r.area() {
			continue
		}
		if shaped, ok := j.reshape(&g, r.W, r.H); ok {
			shaped.X, shaped.Y = r.X, r.Y
			m.Groups = append(m.Groups, shaped)
			return true
		}
	}
	return false
}

// reshape packs the pieces of a group into w x h.
func (j *Job) reshape(g *Group, w, h length.Len) (Group, bool) {
	bs := j.blocks(j.wants(g))
	gap := j.List.Gap
	bin, _, ok := rect.Strip(w+gap, h+gap, j.sizes(bs), j.options())
	if !ok {
		return Group{}, false
	}
	return j.group(g.Fabric, bs, bin), true
}

// fillRoom puts as many of the wanted pieces as it can in the largest free
// place of a mat that takes any.
func (j *Job) fillRoom(fabric int, want []int, m *Mat) (Group, bool) {
	for _, r := range j.rooms(m) {
		if g, ok := j.Fill(fabric, want, r.W, r.H); ok {
			g.X, g.Y = r.X, r.Y
			m.Groups = append(m.Groups, g)
			return g, true
		}
	}
	return Group{}, false
}

// Fill packs as much as it can of the pieces wanted into one box of at most
// w x h, and of what the mat allows; a fussy piece comes by itself.
func (j *Job) Fill(fabric int, want []int, w, h length.Len) (Group, bool) {
	w, h = min(w, j.W), min(h, j.H)
	if w <= 0 || h <= 0 {
		return Group{}, false
	}
	plain := slices.Clone(want)
	for k, n := range want {
		if p := &j.Kinds[k]; n > 0 && p.Fussy {
			plain[k] = 0
			if g := j.alone(k); g.W <= w && g.H <= h {
				return g, true
			}
		}
	}
	bs := j.blocks(plain)
	bin := rect.Fill(w+j.List.Gap, h+j.List.Gap, j.sizes(bs), nil, j.options())
	if len(bin) == 0 {
		return Group{}, false
	}
	return j.group(fabric, bs, bin), true
}

// rooms are the largest free rectangles of a mat where another group may
// lie, the largest first. They may overlap each other.
func (j *Job) rooms(m *Mat) []Group {
	rooms := []Group{{X: j.X, Y: j.Y, W: j.W, H: j.H}}
	for i := range m.Groups {
		rooms = without(rooms, &m.Groups[i], j.Apart)
	}
	slices.SortStableFunc(rooms, func(a, b Group) int { return cmp.Compare(b.area(), a.area()) })
	return rooms
}

// without takes a group, and what must be kept apart from it, out of free
// rectangles, as the maximal-rectangles method does.
func without(rooms []Group, g *Group, apart length.Len) []Group {
	x0, y0, x1, y1 := g.X-apart, g.Y-apart, g.X+g.W+apart, g.Y+g.H+apart
	var out []Group
	for _, r := range rooms {
		rx1, ry1 := r.X+r.W, r.Y+r.H
		if x1 <= r.X || x0 >= rx1 || y1 <= r.Y || y0 >= ry1 {
			out = append(out, r)
			continue
		}
		if x0 > r.X {
			out = append(out, Group{X: r.X, Y: r.Y, W: x0 - r.X, H: r.H})
		}
		if x1 < rx1 {
			out = append(out, Group{X: x1, Y: r.Y, W: rx1 - x1, H: r.H})
		}
		if y0 > r.Y {
			out = append(out, Group{X: r.X, Y: r.Y, W: r.W, H: y0 - r.Y})
		}
		if y1 < ry1 {
			out = append(out, Group{X: r.X, Y: y1, W: r.W, H: ry1 - y1})
		}
	}
	return maximal(out)
}

// maximal drops rectangles that lie in others.
func maximal(rs []Group) []Group {
	var out []Group
	for i, r := range rs {
		inside := false
		for k, o := range rs {
			if k != i && o.X <= r.X && o.Y <= r.Y && o.X+o.W >= r.X+r.W && o.Y+o.H >= r.Y+r.H &&
				(k < i || o.W != r.W || o.H != r.H) {
				inside = true
				break
			}
		}
		if !inside {
			out = append(out, r)
		}
	}
	return out
}
