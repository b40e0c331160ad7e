package pack

import (
	"cmp"
	"slices"

	"example.org/matside/plan/rect"
)

// budget is how many packings of a rough cut an effort is worth.
func budget(e rect.Effort) int {
	switch e {
	case rect.Quick:
		return 1_000
	case rect.Thorough:
		return 400_000
	}
	return 8_000
}

func (j *Job) stopped() bool { return j.Stop != nil && j.Stop() }

// improve makes fewer loads of them, as far as the effort reaches: by the
// relaxation first, and where that leaves a gap, or the list is small, by
// packing mats anew one by one.
func (s *solver) improve(loads []load) []load {
	if len(loads) <= s.Lower || s.stopped() {
		return loads
	}
	better := func(l []load) {
		if len(l) > 0 && len(l) < len(loads) { // none where it was stopped
			loads = l
		}
	}
	d, dived := s.dive(loads)
	better(dived)
	better(d.over(loads))
	if len(loads) <= d.whole(d.cost)+smallGap && len(loads) > smallList {
		return loads
	}
	better(s.emptied(loads))
	if len(loads) > s.Lower {
		better(s.emptied(s.valued()))
	}
	return loads
}

// smallList is a number of loads up to which it costs little to look twice.
const smallList = 60

// smallGap is how many loads over the relaxation's are seldom got rid of by
// packing mats anew.
const smallGap = 2

// valued packs the whole need several times over, mat by mat, each mat with
// the most worth it can hold. A piece that came to lie on mats with much
// waste is worth more the next time, so that awkward pieces go first and
// others fill up beside them (sequential value correction: Mukhacheva and
// others; Belov and Scheithauer 2007, from memory).
func (s *solver) valued() []load {
	mat := square(s.W, s.H)
	value := slices.Clone(s.area.value)
	for k := range value {
		value[k] *= scale
	}
	var best []load
	for round, work := 0, 0; round < mostRounds && work < budget(s.Effort) && !s.stopped(); round++ {
		f := s.filler(value)
		n := s.all.clone()
		var loads []load
		next := slices.Clone(value)
		for !n.empty() && (best == nil || len(loads) < len(best)) {
			l := s.full(f, n, 3, nil)
			if len(l.offers) == 0 {
				panic("pack: a piece fits no mat")
			}
			var covered int64
			for i := range l.offers {
				covered += s.area.worth(&l.offers[i].Group)
			}
			times := n.times(&l)
			for range times {
				loads = append(loads, l)
				n.addLoad(&l, -1)
			}
			for i := range l.offers {
				for _, p := range l.offers[i].Parts {
					k := p.Kind
					due := s.Kinds[k].area * scale * mat / covered
					next[k] += (due - next[k]) / 4
				}
			}
		}
		if n.empty() && (best == nil || len(loads) < len(best)) {
			best = loads
		}
		value = next
		work += f.work
	}
	for i := range best {
		best[i].worth = 0
		for k := range best[i].offers {
			best[i].worth += s.worth(s.area, &best[i].offers[k])
		}
	}
	return best
}

// scale makes room below an area for corrections.
const scale = 16

// mostTargets bounds how many mats are tried when one is to be emptied.
const mostTargets = 48

// emptied takes the loads that hold least, one after another, and tries to
// spread what they hold over others, packed anew so that they hold more.
func (s *solver) emptied(loads []load) []load {
	loads = slices.Clone(loads)
	byWorth := func(a, b load) int { return cmp.Compare(b.worth, a.worth) }
	for again := true; again; {
		again = false
		slices.SortStableFunc(loads, byWorth)
		for d := len(loads) - 1; d >= max(0, len(loads)-mostTargets) && len(loads) > s.Lower && !s.stopped(); d-- {
			others := slices.Delete(slices.Clone(loads), d, d+1)
			if s.area.work < budget(s.Effort) && s.absorb(&loads[d], others) {
				loads, again = others, true
				break
			}
		}
	}
	return loads
}

// absorb tries to make others hold all that donor holds; they are changed in
// place, and only if it succeeds are they whole.
func (s *solver) absorb(donor *load, others []load) bool {
	pool := &need{make([]int, len(s.Kinds)), make([]int, len(s.solids))}
	pool.addLoad(donor, 1)
	from := max(0, len(others)-mostTargets)
	for progress := true; progress; {
		progress = false
		for t := len(others) - 1; t >= from; t-- {
			target := &others[t]
			pool.addLoad(target, 1)
			l := s.full(s.area, pool, 3, target)
			if l.worth > target.worth {
				*target, progress = l, true
			}
			pool.addLoad(target, -1)
			if pool.empty() {
				return true
			}
		}
	}
	return false
}

// mostRounds bounds how often the whole need is packed over.
const mostRounds = 8
