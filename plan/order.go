package plan

import (
	"cmp"
	"slices"

	"example.org/matside/plan/length"
	"example.org/matside/plan/pack"
	"example.org/matside/plan/queue"
)

// matload is a mat on its way into the queue.
type matload struct {
	mat     int   // index into the attempt's mats
	fabrics []int // that lie on it, ascending
	first   bool  // it has pieces of the First label
	sheds   bool
	area    int64 // of its pieces, to compare by
	pieces  int
	drawing string
}

// ordered sorts the loads.
//
//	(1) Those that the First label's pieces need come before all others, no
//	    more of them than needed.
//	(2) Of these, and of the rest, what sheds comes last, when the mat is soon
//	    to be washed.
//	(3) Within that, loads of the same fabrics stay together, and follow each
//	    other so that as few fabrics as can be are pressed and set up anew.
//	(4) Loads of the same fabrics: small pieces first, while the mat is fresh,
//	    and the same drawing's together.
func (m *maker) ordered(a *attempt) (out []int) {
	all := m.matloads(a)
	var last []int
	for class := range 4 {
		var these []matload
		for _, l := range all {
			if l.first == (class < 2) && l.sheds == (class%2 == 1) {
				these = append(these, l)
			}
		}
		these, last = inRuns(these, last)
		for _, l := range these {
			out = append(out, l.mat)
		}
	}
	return out
}

// inRuns puts loads of the same fabrics together, the runs in the order that
// takes fewest new fabrics after those that lay on the mat before.
func inRuns(loads []matload, before []int) ([]matload, []int) {
	slices.SortStableFunc(loads, matload.compare)
	var runs [][]matload
	var sets [][]int
	for _, l := range loads {
		i := slices.IndexFunc(sets, func(s []int) bool { return slices.Equal(s, l.fabrics) })
		if i < 0 {
			i = len(sets)
			sets, runs = append(sets, l.fabrics), append(runs, nil)
		}
		runs[i] = append(runs[i], l)
	}
	var out []matload
	for _, i := range route(sets, before) {
		out, before = append(out, runs[i]...), sets[i]
	}
	return out, before
}

// compare puts loads of small pieces first, by their mean area, and of those
// the fuller ones.
func (l matload) compare(o matload) int {
	return cmp.Or(cmp.Compare(l.area*int64(o.pieces), o.area*int64(l.pieces)), cmp.Compare(o.pieces, l.pieces), cmp.Compare(l.drawing, o.drawing))
}

func (m *maker) matloads(a *attempt) []matload {
	first := m.firstMats(a)
	out := make([]matload, len(a.mats))
	for i := range a.mats {
		mat := &a.mats[i]
		l := matload{mat: i, first: first[i], drawing: m.sketch(mat)}
		for g := range mat.Groups {
			group := &mat.Groups[g]
			l.fabrics = append(l.fabrics, group.Fabric)
			l.sheds = l.sheds || m.list.Fabrics[group.Fabric].Sheds
			l.pieces += len(group.Parts)
			for _, p := range group.Parts {
				l.area += m.job.Kinds[p.Kind].Outline.Area().FloorDiv(length.Mul(length.TenthMM, length.TenthMM))
			}
		}
		slices.Sort(l.fabrics)
		l.fabrics = slices.Compact(l.fabrics)
		out[i] = l
	}
	return out
}

// firstMats says which mats the First label's pieces need: those with most of
// them, one after another, and then without those that the others make
// needless. So each of them gets a piece of the label however the pieces are
// dealt.
func (m *maker) firstMats(a *attempt) []bool {
	need, holds := m.firstNeed(), make([][]int, len(a.mats))
	for i := range a.mats {
		holds[i] = make([]int, len(need))
		for _, g := range a.mats[i].Groups {
			for _, p := range g.Parts {
				holds[i][p.Kind]++
			}
		}
	}
	useful := func(i int) (n int) {
		for k, h := range holds[i] {
			n += max(0, min(h, need[k]))
		}
		return n
	}
	first := make([]bool, len(a.mats))
	take := func(i, sign int) {
		for k, h := range holds[i] {
			need[k] -= sign * h // below 0: more room than pieces
		}
		first[i] = sign > 0
	}
	for {
		best := -1
		for i := range a.mats {
			if !first[i] && useful(i) > 0 && (best < 0 || useful(i) > useful(best)) {
				best = i
			}
		}
		if best < 0 {
			break
		}
		take(best, 1)
	}
	for i := range first {
		if first[i] {
			if take(i, -1); useful(i) > 0 {
				take(i, 1)
			}
		}
	}
	return first
}

// firstNeed counts the pieces of the First label by kind.
func (m *maker) firstNeed() []int {
	need := make([]int, len(m.job.Kinds))
	for k := range m.job.Kinds {
		for _, line := range m.job.Kinds[k].Lines {
			if m.late(line) == 0 {
				need[k] += len(m.copies[line])
			}
		}
	}
	return need
}

// sketch tells mats with different drawings apart.
func (m *maker) sketch(mat *pack.Mat) string {
	var l queue.Load
	for i := range mat.Groups {
		g := &mat.Groups[i]
		for _, p := range g.Parts {
			l.Pieces = append(l.Pieces, queue.Placement{Outline: m.job.Lay(p, g.X, g.Y)})
		}
	}
	return l.Drawing()
}
