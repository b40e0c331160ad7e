package pack

import (
	"cmp"
	"slices"

	"example.org/matside/plan/length"
)

// solver packs a job within limits.
type solver struct {
	*Job
	limits []Limit
	solids []Group // one of each class
	all    need
	area   *filler // packs by area

	trimmed map[string]Group
}

func (j *Job) solver(limits []Limit) *solver {
	s := &solver{Job: j, limits: limits, area: j.filler(nil), trimmed: map[string]Group{}}
	s.all.want = make([]int, len(j.Kinds))
	for f := range j.of {
		if limits[f].Groups != nil {
			for i := range limits[f].Groups {
				s.addSolid(&limits[f].Groups[i])
			}
			continue
		}
		for _, k := range j.of[f] {
			if !j.Kinds[k].Fussy {
				s.all.want[k] = j.Kinds[k].Count
				continue
			}
			g := j.alone(k)
			for range j.Kinds[k].Count {
				s.addSolid(&g)
			}
		}
	}
	return s
}

// addSolid counts a group in with its class: the groups just like it.
func (s *solver) addSolid(g *Group) {
	for i := range s.solids {
		if o := &s.solids[i]; o.Fabric == g.Fabric && slices.Equal(o.Parts, g.Parts) {
			s.all.solid[i]++
			return
		}
	}
	s.solids = append(s.solids, *g)
	s.all.solid = append(s.all.solid, 1)
}

// start packs each fabric by itself, each group a load.
func (s *solver) start() ([]load, error) {
	var out []load
	put := func(g Group, solid int) {
		g.X, g.Y = s.X, s.Y
		o := offer{g, solid}
		out = append(out, load{[]offer{o}, s.worth(s.area, &o)})
	}
	for f := range s.of {
		if s.limits[f].Groups != nil {
			continue
		}
		want := make([]int, len(s.Kinds))
		for _, k := range s.of[f] {
			want[k] = s.all.want[k]
		}
		w, h := s.reachOf(s.limits[f])
		groups, err := s.within(f, want, w, h, s.effortFor(f))
		if err != nil {
			return nil, err
		}
		for _, g := range groups {
			put(g, -1)
		}
	}
	for i, n := range s.all.solid {
		for range n {
			put(s.solids[i], i)
		}
	}
	return out, nil
}

// worth is what an offer is worth to a filler.
func (s *solver) worth(f *filler, o *offer) int64 {
	if o.solid >= 0 && f.solid != nil {
		return f.solid[o.solid]
	}
	return f.worth(&o.Group)
}

// full packs one mat with as much worth as it can of what is needed, starting
// from each fabric in turn and from what lies on the mat already, if any.
func (s *solver) full(f *filler, n *need, breadth int, from *load) load {
	starts := s.starts(f, n, breadth)
	if from != nil {
		starts = append(starts, *from)
	}
	var best load
	for _, l := range starts {
		rest := n.clone()
		rest.addLoad(&l, -1)
		l = s.extend(f, rest, l)
		if l.worth > best.worth {
			best = l
		}
	}
	return best
}

// starts are loads of a single group each, the most promising first.
func (s *solver) starts(f *filler, n *need, breadth int) []load {
	var out []load
	for _, o := range s.offers(f, n, box{s.X, s.Y, s.W, s.H}) {
		out = append(out, load{[]offer{o}, s.worth(f, &o)})
	}
	slices.SortStableFunc(out, func(a, b load) int { return cmp.Compare(b.worth, a.worth) })
	return out[:min(len(out), breadth)]
}

// mostRooms is how many free places of a mat are looked at.
const mostRooms = 3

// extend adds to a load as long as something of worth fits.
func (s *solver) extend(f *filler, rest *need, l load) load {
	l.offers = slices.Clip(l.offers)
	for {
		m := l.mat()
		rooms := s.rooms(&m)
		var best offer
		var most int64
		for _, r := range rooms[:min(len(rooms), mostRooms)] {
			for _, o := range s.offers(f, rest, r) {
				if w := s.worth(f, &o); w > most {
					best, most = o, w
				}
			}
		}
		if most == 0 {
			return l
		}
		rest.add(&best, -1)
		l.offers = append(l.offers, best)
		l.worth += most
	}
}

// offers are the groups that each fabric, and each class of solids, has for a
// room.
func (s *solver) offers(f *filler, n *need, r box) []offer {
	var out []offer
	for fabric := range s.of {
		w, h := s.reachOf(s.limits[fabric])
		if s.limits[fabric].Groups != nil || !s.any(fabric, n, min(w, r.w), min(h, r.h)) {
			continue
		}
		if g := f.fill(fabric, n.want, min(w, r.w), min(h, r.h)); len(g.Parts) > 0 {
			g.X, g.Y = r.x, r.y
			out = append(out, offer{g, -1})
		}
	}
	for i, c := range n.solid {
		if g := s.solids[i]; c > 0 && g.W <= r.w && g.H <= r.h {
			g.X, g.Y = r.x, r.y
			out = append(out, offer{g, i})
		}
	}
	return out
}

// any says whether a fabric has a wanted piece small enough for w x h.
func (s *solver) any(fabric int, n *need, w, h length.Len) bool {
	for _, k := range s.of[fabric] {
		p := &s.Kinds[k]
		if n.want[k] > 0 && (p.Turns == AnyTurn || s.upright(p, w, h)) {
			return true
		}
	}
	return false
}
