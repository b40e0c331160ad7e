package bound

import "example.org/matside/plan/internal/cover"

// row packs lengths into one row of an axis: a bounded knapsack by dynamic
// programming, worth per length given, at most copies of each.
type row[V int64 | float64] struct {
	a     *axis
	value []V       // by room
	taken [][]int32 // by length, by room: how many of it
}

func newRow[V int64 | float64](a *axis) *row[V] {
	r := &row[V]{a: a, value: make([]V, a.side+1)}
	for range a.lengths {
		r.taken = append(r.taken, make([]int32, a.side+1))
	}
	return r
}

// rowWork is about what one call of most costs.
func (a *axis) rowWork() int { return len(a.lengths) * int(a.side) * 2 }

// most is the greatest worth of a row.
func (r *row[V]) most(worth []V) V {
	clear(r.value)
	for i, x := range r.a.lengths {
		clear(r.taken[i])
		switch n := r.a.copies[i]; {
		case worth[i] <= 0:
		case n*x > r.a.side-x:
			r.plenty(x, worth[i], r.taken[i])
		default:
			r.few(x, n, worth[i], r.taken[i])
		}
	}
	return r.value[r.a.side]
}

// plenty admits any number of a length.
func (r *row[V]) plenty(x int64, worth V, taken []int32) {
	for room := x; room <= r.a.side; room++ {
		if v := r.value[room-x] + worth; v > r.value[room] {
			r.value[room], taken[room] = v, taken[room-x]+1
		}
	}
}

// few admits at most copies of a length.
func (r *row[V]) few(x, copies int64, worth V, taken []int32) {
	for room := r.a.side; room >= x; room-- {
		best, sum := r.value[room], V(0)
		for n := int64(1); n <= copies && n*x <= room; n++ {
			sum += worth
			if v := r.value[room-n*x] + sum; v > best {
				best, taken[room] = v, int32(n)
			}
		}
		r.value[room] = best
	}
}

// pattern is how many of each length the last row of most worth has.
func (r *row[V]) pattern() []cover.Entry {
	var out []cover.Entry
	room := r.a.side
	for i := len(r.a.lengths) - 1; i >= 0; i-- {
		if n := int64(r.taken[i][room]); n > 0 {
			out = append(out, cover.Entry{Row: i, Count: float64(n)})
			room -= n * r.a.lengths[i]
		}
	}
	return out
}
