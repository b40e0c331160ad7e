package nest

// rng is splitmix64 (Steele, Lea and Flood, "Fast splittable pseudorandom
// number generators", OOPSLA 2014): the same numbers on every machine.
type rng uint64

func (r *rng) next() uint64 {
	*r += 0x9e3779b97f4a7c15
	z := uint64(*r)
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// below is a number from 0 to n−1. (Its bias, under n/2^64, is of no matter.)
func (r *rng) below(n int64) int64 {
	if n <= 1 {
		return 0
	}
	return int64(r.next() % uint64(n))
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
