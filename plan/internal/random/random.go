// Package random draws numbers that look random and are the same on every
// machine and with every release of Go, for searches that must give the same
// result wherever they run. They are splitmix64's (Steele, Lea and Flood,
// "Fast splittable pseudorandom number generators", OOPSLA 2014). It is not
// for secrets.
package random

// Source is a row of draws, told apart from others by the number it starts as.
type Source uint64

// Next draws any number.
func (s *Source) Next() uint64 {
	*s += 0x9e3779b97f4a7c15
	return Mix(uint64(*s))
}

// Unit draws from [0, 1).
func (s *Source) Unit() float64 { return float64(s.Next()>>11) / (1 << 53) }

// Below draws a whole number from 0 to n-1, n under 2^31.
func (s *Source) Below(n int) int { return int(s.Next()>>33) % n }

// Mix makes of a number another; near ones come far apart, and no two the same.
func Mix(z uint64) uint64 {
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}
