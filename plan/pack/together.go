package pack

import (
	"cmp"
	"math/bits"
	"slices"

	"example.org/matside/plan/length"
)

// form is one way to lay all pieces of some fabrics in a box.
type form struct {
	w, h   length.Len
	groups []Group
}

// mostTogether is how many fabrics Together lays on a mat at most.
const mostTogether = 4

// Together lays pieces, want[k] of each kind, all on one mat, each fabric's in
// one rough cut, in every way it finds that isn't larger than another both
// across and along: the least fabric first. Rough cuts of several fabrics
// are parted by straight cuts (Stockmeyer's curves of a slicing tree, Information and Control
// 57, 1983, over all trees). None where a piece is fussy.
func (j *Job) Together(want []int) (out []Mat) {
	var fabrics []int
	for f := range j.of {
		if slices.ContainsFunc(j.of[f], func(k int) bool { return want[k] > 0 }) {
			fabrics = append(fabrics, f)
		}
	}
	if len(fabrics) == 0 || len(fabrics) > mostTogether ||
		slices.ContainsFunc(fabrics, func(f int) bool { return j.anyFussy(f, want) }) {
		return nil
	}
	all := make([][]form, 1<<len(fabrics))
	for set := 1; set < len(all); set++ {
		if set&(set-1) == 0 {
			all[set] = j.forms(fabrics[bits.TrailingZeros(uint(set))], want)
		}
		for part := (set - 1) & set; part > set&^part; part = (part - 1) & set {
			all[set] = append(all[set], j.beside(all[part], all[set&^part])...)
		}
		if all[set] = least(all[set]); len(all[set]) == 0 {
			return nil
		}
	}
	forms := all[len(all)-1]
	slices.SortStableFunc(forms, func(a, b form) int { return cmp.Compare(j.fabric(a), j.fabric(b)) })
	for _, f := range forms {
		m := Mat{Groups: slices.Clone(f.groups)}
		for i := range m.Groups {
			m.Groups[i].X += j.X
			m.Groups[i].Y += j.Y
		}
		out = append(out, m)
	}
	return out
}

// beside puts every form of some fabrics beside and above every form of
// others, as far as the mat has room.
func (j *Job) beside(some, others []form) (out []form) {
	put := func(a, b form, x, y length.Len) {
		f := form{w: max(a.w, x+b.w), h: max(a.h, y+b.h), groups: slices.Clone(a.groups)}
		if f.w > j.W || f.h > j.H {
			return
		}
		for _, g := range b.groups {
			g.X, g.Y = g.X+x, g.Y+y
			f.groups = append(f.groups, g)
		}
		out = append(out, f)
	}
	for _, a := range some {
		for _, b := range others {
			put(a, b, a.w+j.Apart, 0)
			put(a, b, 0, a.h+j.Apart)
		}
	}
	return out
}

// least keeps the forms that aren't larger than another both ways, narrowest
// first.
func least(all []form) (out []form) {
	slices.SortStableFunc(all, func(a, b form) int { return cmp.Or(cmp.Compare(a.w, b.w), cmp.Compare(a.h, b.h)) })
	for _, f := range all {
		if len(out) == 0 || f.h < out[len(out)-1].h {
			out = append(out, f)
		}
	}
	return out
}

// fabric is the area of a form's rough cuts, to compare by.
func (j *Job) fabric(f form) (sum int64) {
	for i := range f.groups {
		sum += j.rough(&f.groups[i])
	}
	return sum
}

func (j *Job) anyFussy(f int, want []int) bool {
	return slices.ContainsFunc(j.of[f], func(k int) bool { return want[k] > 0 && j.Kinds[k].Fussy })
}
