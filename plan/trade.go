package plan

import (
	"cmp"
	"slices"

	"example.org/matside/plan/cutlist"
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
		out = append(out, m.emit(a))
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

// thrifty are attempts that look for less fabric at the price of loads: rough
// cuts that suit the panels before all else, and mats not shared, since each
// rough cut has its margins.
func (m *maker) thrifty(best *attempt) []*attempt {
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
	var out []*attempt
	for _, limits := range [][]pack.Limit{saving, best.limits, make([]pack.Limit, len(m.tables))} {
		for _, alone := range []bool{false, true} {
			if m.stopped() {
				return out
			}
			m.job.Alone = alone
			out = append(out, m.cutOut(m.attempt(limits)))
		}
	}
	m.job.Alone = false
	return out
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
// fabric, among a few attempts: as if there were fabric enough, and with
// rough cuts that suit the panels.
func (m *maker) best() *attempt {
	m.say("packing the loads")
	m.job.Lower = m.least(m.job.Counts(), 0, rect.Quick)
	best := m.attempt(make([]pack.Limit, len(m.tables)))
	if m.stopped() {
		return best
	}
	m.say("fitting rough cuts to the fabric")
	for _, limits := range m.suits(best) {
		if a := m.attempt(limits); a.better(best) {
			best = a
		}
	}
	return best
}
