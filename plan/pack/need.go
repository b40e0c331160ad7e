package pack

import "slices"

// need is what is still to be put on mats: pieces by kind, and solids, which
// are groups to be taken as they are, by class.
type need struct {
	want  []int
	solid []int
}

func (n *need) clone() *need { return &need{slices.Clone(n.want), slices.Clone(n.solid)} }

func (n *need) empty() bool {
	some := func(c int) bool { return c > 0 }
	return !slices.ContainsFunc(n.want, some) && !slices.ContainsFunc(n.solid, some)
}

// offer is a group that could go on a mat, of solid class solid or made up of
// pieces (-1).
type offer struct {
	Group
	solid int
}

// load is a mat made of offers.
type load struct {
	offers []offer
	worth  int64
}

// add counts what is on a load back in, sign 1, or out, sign -1.
func (n *need) add(o *offer, sign int) {
	if o.solid >= 0 {
		n.solid[o.solid] += sign
		return
	}
	for _, p := range o.Parts {
		n.want[p.Kind] += sign
	}
}

func (n *need) addLoad(l *load, sign int) {
	for i := range l.offers {
		n.add(&l.offers[i], sign)
	}
}

// times says how often a load can be cut before something of it runs out.
func (n *need) times(l *load) int {
	one := &need{make([]int, len(n.want)), make([]int, len(n.solid))}
	one.addLoad(l, 1)
	most := -1
	for _, c := range [2][2][]int{{n.want, one.want}, {n.solid, one.solid}} {
		for i, per := range c[1] {
			if per > 0 && (most < 0 || c[0][i]/per < most) {
				most = c[0][i] / per
			}
		}
	}
	return max(most, 0)
}

func (l *load) mat() Mat {
	m := Mat{}
	for _, o := range l.offers {
		m.Groups = append(m.Groups, o.Group)
	}
	return m
}
