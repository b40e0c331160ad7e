package nest

// A trial is a place under consideration and its weighted overlap.
type trial struct {
	spot
	loss float64
}

// Samples a move: places drawn from all over, places drawn near by, and how
// many of the best go on to be improved along lines.
const (
	samplesFar  = 24
	samplesNear = 12
	descents    = 2
	maxLines    = 4
)

// move puts piece i at the best place a sample of places leads to, if that is
// better than where it lies.
func (s *separator) move(i int) {
	here := trial{s.spots[i], s.weighted(i)}
	best := here
	turns := s.m.turns[s.m.shapes[here.shape].item]
	var top [descents]trial
	held := 0
	offer := func(sh int, t vec) {
		limit := here.loss * 4
		if held == descents {
			limit = top[descents-1].loss
		}
		l := s.loss(i, sh, t, limit)
		if l >= limit {
			return
		}
		k := held
		if held < descents {
			held++
		} else {
			k = descents - 1
		}
		for ; k > 0 && top[k-1].loss > l; k-- {
			top[k] = top[k-1]
		}
		top[k] = trial{spot{sh, t}, l}
	}
	for range samplesFar {
		sh := turns[s.rng.below(int64(len(turns)))]
		z := &s.m.shapes[sh]
		offer(sh, vec{s.rng.within(0, s.m.w-z.w), s.rng.within(0, s.m.h-z.h)})
	}
	for range samplesNear {
		sh := turns[s.rng.below(int64(len(turns)))]
		z := &s.m.shapes[sh]
		x, y := here.at.x, here.at.y
		dx, dy := z.w/4, z.h/4
		offer(sh, vec{
			s.rng.within(max(0, min(x-dx, s.m.w-z.w)), min(s.m.w-z.w, max(0, x+dx))),
			s.rng.within(max(0, min(y-dy, s.m.h-z.h)), min(s.m.h-z.h, max(0, y+dy))),
		})
	}
	for _, start := range append(top[:held:held], here) {
		if got := s.descend(i, start); got.loss < best.loss {
			best = got
			if best.loss == 0 {
				break
			}
		}
	}
	if best.loss < here.loss {
		s.shift(i, best.spot)
	}
}

// descend moves along lines, level and upright by turns, each time to the
// best place on the line, until neither helps.
func (s *separator) descend(i int, from trial) trial {
	at, stuck := from, 0
	ax := axis(s.rng.Next() & 1)
	// Between two slanted sides the steps can shrink without end: count them.
	for lines := 0; lines < maxLines && stuck < 2 && at.loss > 0; lines++ {
		if to := s.bestOnLine(i, at, ax); to.loss < at.loss {
			at, stuck = to, 0
		} else {
			stuck++
		}
		ax = upright - ax
	}
	return at
}
