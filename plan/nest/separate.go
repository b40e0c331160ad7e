package nest

import (
	"slices"

	"example.org/matside/plan/internal/random"
)

// A separator holds a layout in which pieces may overlap, and drives the
// overlap out: each piece that overlaps moves to the place where its weighted
// overlap is least, and the weights of pairs that stay in each other's way grow
// until one of them gives.
type separator struct {
	m     *model
	spots []spot
	depth [][]float64 // depth[i][j]: how deep i and j overlap; 0 exactly if they don't
	pull  [][]float64 // the pair's weight, at least 1
	index index
	rng   rng
	line  liner
	order []int
	found []int32 // scratch

	work int // pairs of pieces looked at: counted work
}

func newSeparator(m *model, spots []spot, seed uint64) *separator {
	s := &separator{m: m, rng: rng{random.Source(seed)}}
	n := len(spots)
	s.depth, s.pull = square(n, 0), square(n, 1)
	s.reset(spots)
	return s
}

func square(n int, v float64) [][]float64 {
	flat := make([]float64, n*n)
	rows := make([][]float64, n)
	for i := range flat {
		flat[i] = v
	}
	for i := range rows {
		rows[i] = flat[i*n : (i+1)*n]
	}
	return rows
}

// reset takes up another layout of as many pieces; the weights stay.
func (s *separator) reset(spots []spot) {
	s.spots = append(s.spots[:0], spots...)
	s.index.boxes = s.index.boxes[:0]
	for i := range s.spots {
		s.clamp(i)
		s.index.boxes = append(s.index.boxes, s.m.boxOf(s.spots[i]))
	}
	for i := range s.spots {
		s.measure(i)
	}
}

// shift moves piece i to another place.
func (s *separator) shift(i int, to spot) {
	s.spots[i] = to
	s.clamp(i)
	s.index.boxes[i] = s.m.boxOf(s.spots[i])
	s.measure(i)
}

// clamp moves piece i into the container.
func (s *separator) clamp(i int) {
	p := &s.spots[i]
	sh := &s.m.shapes[p.shape]
	p.at = vec{max(0, min(p.at.x, s.m.w-sh.w)), max(0, min(p.at.y, s.m.h-sh.h))}
}

// forget sets all weights to 1.
func (s *separator) forget() {
	for _, row := range s.pull {
		for j := range row {
			row[j] = 1
		}
	}
}

// measure brings piece i's depths up to date.
func (s *separator) measure(i int) {
	for j, d := range s.depth[i] {
		if d > 0 {
			s.depth[i][j], s.depth[j][i] = 0, 0
		}
	}
	p := s.spots[i]
	s.found = s.index.near(s.m.bare(p), s.found[:0])
	for _, j := range s.found {
		if q := s.spots[j]; int(j) != i {
			d := s.m.region(q.shape, p.shape).depth(p.at.sub(q.at))
			s.depth[i][j], s.depth[j][i] = d, d
		}
	}
}

// total is the sum of all depths; 0 exactly when the layout is sound.
func (s *separator) total() float64 {
	var sum float64
	for i, row := range s.depth {
		for _, d := range row[:i] {
			sum += d
		}
	}
	return sum
}

// weighted is piece i's weighted overlap.
func (s *separator) weighted(i int) float64 {
	var sum float64
	for j, d := range s.depth[i] {
		sum += float64(d * s.pull[i][j])
	}
	return sum
}

// loss is the weighted overlap of piece i as shape sh at t, or any number not
// below limit once it is clear that it is not below limit.
func (s *separator) loss(i, sh int, t vec, limit float64) float64 {
	var sum float64
	s.found = s.index.near(s.m.bare(spot{sh, t}), s.found[:0])
	s.work += 4 + 4*len(s.found)
	for _, j := range s.found {
		if int(j) == i {
			continue
		}
		q := &s.spots[j]
		if sum += float64(s.pull[i][j] * s.m.region(q.shape, sh).depth(t.sub(q.at))); sum >= limit {
			return sum
		}
	}
	return sum
}

// pass moves every overlapping piece once, in random order.
func (s *separator) pass() {
	s.order = s.order[:0]
	for i := range s.spots {
		if s.overlaps(i) {
			s.order = append(s.order, i)
		}
	}
	s.rng.shuffle(s.order)
	for _, i := range s.order {
		if s.overlaps(i) {
			s.move(i)
		}
	}
}

func (s *separator) overlaps(i int) bool {
	for _, d := range s.depth[i] {
		if d > 0 {
			return true
		}
	}
	return false
}

// How weights grow and fade (after Gardeyn and Wauters): the worst pair's
// doubles, the least one's grows by a fifth, a pair no longer overlapping fades.
const (
	growMost  = 2.0
	growLeast = 1.2
	fade      = 0.95
)

// reweigh makes pairs that overlap count more and the others less.
func (s *separator) reweigh() {
	worst := 0.0
	for i, row := range s.depth {
		worst = max(worst, slices.Max(row[:i+1]))
	}
	if worst == 0 {
		return
	}
	for i, row := range s.depth {
		for j, d := range row[:i] {
			w := s.pull[i][j]
			if d > 0 {
				w *= growLeast + float64((growMost-growLeast)*(d/worst))
			} else {
				w = max(1, w*fade)
			}
			s.pull[i][j], s.pull[j][i] = w, w
		}
	}
}

// A budget bounds the work of one attempt at separating: rounds without
// progress before a strike, strikes before giving up.
type budget struct{ patience, strikes int }

// separate works until no two pieces overlap (true) or the budget is spent
// (false); then the least overlapping layout found stands.
func (s *separator) separate(b budget, stop func() bool) bool {
	least := s.total()
	best := slices.Clone(s.spots)
	for strikes := 0; strikes < b.strikes && least > 0; {
		began := least
		for idle := 0; idle < b.patience; {
			s.pass()
			now := s.total()
			switch {
			case now == 0:
				return true
			case now < least:
				if now < 0.98*least {
					idle = 0
				}
				least = now
				best = append(best[:0], s.spots...)
			default:
				idle++
			}
			s.reweigh()
			if stop != nil && stop() {
				s.reset(best)
				return false
			}
		}
		if least > 0.98*began {
			strikes++
		} else {
			strikes = 0
		}
		s.reset(best)
	}
	return least == 0
}
