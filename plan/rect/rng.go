package rect

// rng is splitmix64 (Steele, Lea and Flood, "Fast splittable pseudorandom
// number generators", 2014): seeded, short, the same on every machine.
type rng uint64

func (r *rng) next() uint64 {
	*r += 0x9e3779b97f4a7c15
	return mix(uint64(*r))
}

func mix(z uint64) uint64 {
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// below draws a whole number from 0 to n-1.
func (r *rng) below(n int) int { return int(r.next()>>33) % n }

// unit draws from [0, 1).
func (r *rng) unit() float64 { return float64(r.next()>>11) / (1 << 53) }
