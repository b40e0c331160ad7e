package plan

import (
	"cmp"
	"slices"

	"example.org/matside/plan/pack"
)

// ordered sorts the loads: those with the First label, then by fabric, what
// sheds last; within a fabric like drawings together, small pieces before
// large ones, while the mat is fresh.
func (m *maker) ordered(a *attempt) []int {
	type keyed struct {
		mat                        int
		first, sheds, fabric, size int
		drawing                    string
	}
	all := make([]keyed, len(a.mats))
	for i := range a.mats {
		mat := &a.mats[i]
		k := keyed{mat: i, first: 1, drawing: m.sketch(mat)}
		most := 0
		for g := range mat.Groups {
			group := &mat.Groups[g]
			if m.list.Fabrics[group.Fabric].Sheds {
				k.sheds = 1
			}
			if len(group.Parts) > most {
				most, k.fabric = len(group.Parts), group.Fabric
			}
			k.size -= len(group.Parts)
			for _, p := range group.Parts {
				for _, line := range m.job.Kinds[p.Kind].Lines {
					k.first = min(k.first, m.late(line))
				}
			}
		}
		all[i] = k
	}
	slices.SortStableFunc(all, func(a, b keyed) int {
		return cmp.Or(cmp.Compare(a.first, b.first), cmp.Compare(a.sheds, b.sheds), cmp.Compare(a.fabric, b.fabric),
			cmp.Compare(a.size, b.size), cmp.Compare(a.drawing, b.drawing))
	})
	out := make([]int, len(all))
	for i := range all {
		out[i] = all[i].mat
	}
	return out
}

// sketch tells mats with different drawings apart.
func (m *maker) sketch(mat *pack.Mat) string {
	var all []string
	for i := range mat.Groups {
		g := &mat.Groups[i]
		for _, p := range g.Parts {
			all = append(all, corners(m.job.Lay(p, g.X, g.Y)))
		}
	}
	slices.Sort(all)
	var b []byte
	for _, s := range all {
		b = append(b, s...)
	}
	return string(b)
}
