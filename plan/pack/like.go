package pack

import (
	"slices"

	"example.org/matside/plan/outline"
)

// Like lays the pieces of a mat where those of another lie, so that one
// drawing cuts both: rough cut by rough cut, or all in one rough cut where
// the mat has a single fabric. Not ok where the outlines are others, or a
// grain forbids the turn. It may miss a way where several kinds of pieces are
// drawn alike.
func (j *Job) Like(m, other *Mat) (out Mat, ok bool) {
	groups := other.Groups
	if len(m.Groups) == 1 && len(groups) > 1 {
		groups = []Group{j.joined(groups)}
	}
	if len(groups) != len(m.Groups) {
		return Mat{}, false
	}
	used := make([]bool, len(groups))
	for i := range groups {
		for k := range m.Groups {
			if used[k] {
				continue
			}
			if g, ok := j.likeGroup(&m.Groups[k], &groups[i]); ok {
				out.Groups, used[k] = append(out.Groups, g), true
				break
			}
		}
		if len(out.Groups) <= i {
			return Mat{}, false
		}
	}
	return out, true
}

// joined is what several groups on a mat are as one.
func (j *Job) joined(groups []Group) (out Group) {
	for i := range groups {
		for _, p := range groups[i].Parts {
			p.X, p.Y = p.X+groups[i].X, p.Y+groups[i].Y
			out.Parts = append(out.Parts, p)
		}
	}
	x, y := corner(out.Parts)
	for i := range groups { // parts aslant have boxes of their own: ask the groups
		x, y = min(x, groups[i].X), min(y, groups[i].Y)
	}
	out.X, out.Y = x, y
	j.tighten(&out)
	return out
}

// likeGroup lays a group's pieces where another's lie. Kinds that fit fewest
// places choose first.
func (j *Job) likeGroup(g, other *Group) (Group, bool) {
	if len(g.Parts) != len(other.Parts) {
		return Group{}, false
	}
	left := map[int]int{}
	var kinds []int
	for _, p := range g.Parts {
		if left[p.Kind]++; left[p.Kind] == 1 {
			kinds = append(kinds, p.Kind)
		}
	}
	out := Group{Fabric: g.Fabric, X: other.X, Y: other.Y, W: other.W, H: other.H, Parts: make([]Part, len(other.Parts))}
	turns := make([][]int, len(kinds)) // by kind, by place: the turn it takes there, or none
	for i, k := range kinds {
		turns[i] = make([]int, len(other.Parts))
		for n, p := range other.Parts {
			turns[i][n] = j.turnLike(k, p)
		}
	}
	places := func(i int) (n int) {
		for _, t := range turns[i] {
			if t != none {
				n++
			}
		}
		return n
	}
	order := make([]int, len(kinds))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return places(a) - places(b) })
	taken := make([]bool, len(other.Parts))
	for _, i := range order {
		for n, p := range other.Parts {
			if left[kinds[i]] > 0 && !taken[n] && turns[i][n] != none {
				out.Parts[n] = Part{Kind: kinds[i], Turn: turns[i][n], X: p.X, Y: p.Y}
				left[kinds[i]]--
				taken[n] = true
			}
		}
		if left[kinds[i]] > 0 {
			return Group{}, false
		}
	}
	return out, true
}

// none stands for no turn.
const none = -1

// turnLike is the turn at which a kind is drawn as a part is, or none.
func (j *Job) turnLike(k int, p Part) int {
	a, b := &j.Kinds[k], &j.Kinds[p.Kind]
	if k == p.Kind || a.shape == b.shape {
		return p.Turn
	}
	if len(a.Outline) != len(b.Outline) || a.area != b.area {
		return none
	}
	want := b.at(p.Turn)
	for _, t := range a.turns {
		if outline.Same(a.at(t), want) {
			return t
		}
	}
	return none
}
