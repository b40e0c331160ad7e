package plan

import (
	"cmp"
	"slices"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/internal/cores"
	"example.org/matside/plan/length"
	"example.org/matside/plan/pack"
	"example.org/matside/plan/queue"
	"example.org/matside/plan/rect"
)

// Trade plans a cut list several times over and gives every plan worth
// having: each takes more loads than the one before it and less fabric. The
// first has as few loads as Make's, all miss equally few pieces, and there is
// at least one. What fabric there may be to save is what these attempts find;
// it is not promised that no plan lies between two of them.
func Trade(list *cutlist.List, opt Options) []*queue.Queue {
	m := newMaker(list, opt)
	var all []*attempt
	best := m.best()
	all = append(all, m.cutOut(best))
	all = append(all, m.thrifty(best)...)
	var out []*queue.Queue
	for _, a := range front(all) {
		out = append(out, m.emit(m.laidAlike(a)))
	}
	return out
}

// AtMost is the plan of a front that takes least fabric in at most so many
// loads; nil where each of them takes more.
func AtMost(front []*queue.Queue, loads int) *queue.Queue {
	var best *queue.Queue
	for _, q := range front {
		if len(q.Loads) <= loads {
			best = q
		}
	}
	return best
}

// thrifty are attempts that look for less fabric at the price of loads. A
// fabric packed by itself, in rough cuts that suit its panels, takes least of
// it; mats then share those rough cuts as they are. So it is done fabric by
// fabric, then with more and more of them, the cheapest first, and with all.
func (m *maker) thrifty(best *attempt) (out []*attempt) {
	saving := m.savingLimits(best)
	try := func(limits []pack.Limit) *attempt {
		a := m.attempt(slices.Clone(limits))
		m.reshaped(a)
		a = m.cutOut(a)
		out = append(out, a)
		return a
	}
	type price struct {
		fabric, loads int
		saved         int64
	}
	var prices []price
	alone := make([]pack.Limit, len(m.tables))
	for f := range m.tables {
		if m.stopped() || m.job.Empty(f) {
			continue
		}
		limits := slices.Clone(best.limits)
		alone[f] = m.byItself(f, saving[f])
		limits[f] = alone[f]
		if a := try(limits); a.fabric < best.fabric {
			prices = append(prices, price{f, len(a.mats) - len(best.mats), best.fabric - a.fabric})
		}
	}
	slices.SortStableFunc(prices, func(a, b price) int { return cmp.Or(cmp.Compare(a.loads, b.loads), cmp.Compare(b.saved, a.saved)) })
	limits := slices.Clone(best.limits)
	for i, p := range prices {
		limits[p.fabric] = alone[p.fabric]
		if i > 0 && !m.stopped() {
			try(limits)
		}
	}
	return out
}

// byItself packs a fabric by itself, each rough cut on a mat of its own, and
// gives what takes least of it as a limit: the rough cuts as they are.
func (m *maker) byItself(f int, saving pack.Limit) pack.Limit {
	var best *attempt
	for _, l := range []pack.Limit{saving, {}} {
		groups, err := m.job.Fabric(f, l)
		if err != nil {
			continue
		}
		for _, shape := range []func(*pack.Group) pack.Group{m.smallest, func(g *pack.Group) pack.Group { return *g }} {
			a := m.apart(f, groups, shape)
			if best == nil || m.saves(m.tables[f], a.spread[f], best.spread[f]) {
				best = a
			}
		}
	}
	l := pack.Limit{Groups: []pack.Group{}}
	for _, mat := range best.mats {
		l.Groups = append(l.Groups, mat.Groups...)
	}
	return l
}

// apart lays each rough cut of a fabric on a mat of its own, in some shape to
// begin with, and plans no other fabric.
func (m *maker) apart(f int, groups []pack.Group, shape func(*pack.Group) pack.Group) *attempt {
	a := &attempt{spread: make([]*spread, len(m.tables))}
	for i := range groups {
		mat := pack.Mat{Groups: []pack.Group{shape(&groups[i])}}
		mat.Groups[0].X, mat.Groups[0].Y = m.job.X, m.job.Y
		a.rough = append(a.rough, m.snapped(&mat))
		a.mats = append(a.mats, mat)
	}
	m.place(a, f)
	m.reshapeFabric(a, f)
	return a
}

// smallest is a group in the shape that takes the smallest rough cut.
func (m *maker) smallest(g *pack.Group) pack.Group {
	area := func(g *pack.Group) length.Area { r := m.exact(g); return length.Mul(r.W, r.H) }
	best := *g
	for _, s := range m.job.Shapes(g) {
		if area(&s).Less(area(&best)) {
			best = s
		}
	}
	return best
}

// savingLimits are for each fabric the limit within which it takes least by
// itself.
func (m *maker) savingLimits(best *attempt) []pack.Limit {
	saving := slices.Clone(best.limits)
	for f := range m.tables {
		all := m.suitsOf(f, true)
		if len(all) == 0 {
			continue
		}
		saving[f] = slices.MinFunc(all, func(a, b *suit) int {
			return cmp.Or(cmp.Compare(a.missing, b.missing), cmp.Compare(a.fabric, b.fabric), cmp.Compare(a.rough, b.rough))
		}).limit
	}
	return saving
}

// front keeps the attempts that miss fewest pieces, and of those each that
// takes less fabric than any with as few loads; fewest loads first.
func front(all []*attempt) []*attempt {
	slices.SortStableFunc(all, func(a, b *attempt) int {
		return cmp.Or(cmp.Compare(a.missing, b.missing), cmp.Compare(len(a.mats), len(b.mats)),
			cmp.Compare(a.fabric, b.fabric), cmp.Compare(a.raw, b.raw))
	})
	out := all[:1]
	for _, a := range all[1:] {
		last := out[len(out)-1]
		if a.missing == last.missing && len(a.mats) > len(last.mats) && a.fabric < last.fabric {
			out = append(out, a)
		}
	}
	return out
}

// best is the plan with fewest pieces missing, then fewest loads, then least
// fabric, among a few attempts: as if there were fabric enough, with rough
// cuts that suit the panels, and what less effort comes to.
func (m *maker) best() *attempt {
	m.say(Packing)
	m.bound = m.least(m.job.Counts(), 0, rect.Quick)
	m.job.Lower = m.bound
	best := m.attempt(make([]pack.Limit, len(m.tables)))
	if m.stopped() {
		return best
	}
	less := m.withLess(best)
	m.say(Fitting)
	m.reshaped(best)
	for _, limits := range m.suits(best) {
		a := m.attempt(limits)
		m.reshaped(a)
		if a.better(best) {
			best = a
		}
	}
	if a := less(); a != nil && cmp.Or(cmp.Compare(a.missing, best.missing), cmp.Compare(len(a.mats), len(best.mats))) < 0 {
		return a
	}
	return best
}

// withLess begins to plan the same with less effort, if loads may be saved
// at all. More effort looks in other places, so now and then it finds more
// loads, and she would be punished for asking.
func (m *maker) withLess(best *attempt) func() *attempt {
	if m.opt.Effort == rect.Quick || len(best.mats) <= m.bound {
		return func() *attempt { return nil }
	}
	opt := m.opt
	opt.Progress, opt.Effort = nil, opt.Effort.Less()
	return cores.Start(func() *attempt {
		o := newMaker(m.list, opt)
		o.proof = func() int { return 0 } // m looks for it
		return o.best()
	})
}
