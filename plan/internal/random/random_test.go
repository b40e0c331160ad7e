package random

import "testing"

// The first draws from 1234567, as published with the reference code in C
// (Vigna, splitmix64.c, public domain; the values from memory of its ports).
func TestDraws(t *testing.T) {
	s := Source(1234567)
	for i, want := range []uint64{6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821} {
		if got := s.Next(); got != want {
			t.Errorf("draw %d is %d, want %d", i, got, want)
		}
	}
}

// Unit and Below keep to their bounds and come near all of them.
func TestBounds(t *testing.T) {
	s, seen, low, high := Source(1), make([]int, 7), 1.0, 0.0
	for range 10_000 {
		u := s.Unit()
		low, high = min(low, u), max(high, u)
		seen[s.Below(len(seen))]++
	}
	if low < 0 || low > 0.01 || high >= 1 || high < 0.99 {
		t.Errorf("from %v to %v", low, high)
	}
	for n, c := range seen {
		if c < 1_200 || c > 1_700 {
			t.Errorf("%d drawn %d times of 10 000", n, c)
		}
	}
}
