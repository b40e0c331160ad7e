package nest

import "example.org/matside/plan/internal/random"

// rng draws what the searches need.
type rng struct{ random.Source }

// below is a number from 0 to n−1. (Its bias, under n/2^64, is of no matter.)
func (r *rng) below(n int64) int64 {
	if n <= 1 {
		return 0
	}
	return int64(r.Next() % uint64(n))
}

// within is a number from lo to hi, both counted.
func (r *rng) within(lo, hi int64) int64 { return lo + r.below(hi-lo+1) }

// shuffle puts a in random order.
func (r *rng) shuffle(a []int) {
	for i := len(a) - 1; i > 0; i-- {
		j := r.below(int64(i + 1))
		a[i], a[j] = a[j], a[i]
	}
}
