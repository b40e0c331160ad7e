package press

import (
	"testing"
	"time"

	"pgregory.net/rapid"
)

const ms = time.Millisecond

// count plays events of one key at the given times, timers and all, and
// returns how many presses count.
func count(times []time.Duration) int { return countWith(New(250*ms), times) }

func countWith(g *Gate, times []time.Duration) int {
	start, n := time.Unix(1000, 0), 0
	var wait Wait
	var due time.Duration
	for i, at := range times {
		keys, w := g.Event("on", start.Add(at))
		n += len(keys)
		if w != (Wait{}) {
			wait, due = w, at+w.For
		}
		if wait != (Wait{}) && (i+1 == len(times) || due <= times[i+1]) {
			if _, ok := g.Settled(wait.Ticket); ok {
				n++
			}
			wait = Wait{}
		}
	}
	return n
}

// held is the events of a key held down: one, a delay, then a stream.
func held(from, delay, interval, length time.Duration) []time.Duration {
	times := []time.Duration{from}
	for at := from + delay; at <= from+length; at += interval {
		times = append(times, at)
	}
	return times
}

func TestLaw1HalfASecondApartAllCount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		gaps := rapid.SliceOfN(rapid.IntRange(500, 3000), 0, 30).Draw(t, "gaps")
		times := []time.Duration{0}
		for _, g := range gaps {
			times = append(times, times[len(times)-1]+time.Duration(g)*ms)
		}
		if got := count(times); got != len(times) {
			t.Fatalf("%d of %d presses count", got, len(times))
		}
	})
}

func TestLaw2HitsWithinATenthCountOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var times []time.Duration
		presses := rapid.IntRange(1, 10).Draw(t, "presses")
		at := time.Duration(0)
		for range presses {
			times = append(times, at)
			last := 0
			for range rapid.IntRange(0, 3).Draw(t, "bounces") {
				last = rapid.IntRange(last, 100).Draw(t, "bounce")
				times = append(times, at+time.Duration(last)*ms)
			}
			at += time.Duration(rapid.IntRange(600, 2500).Draw(t, "gap")) * ms
		}
		if got := count(times); got != presses {
			t.Fatalf("%d presses with bounces count as %d: %v", presses, got, times)
		}
	})
}

func TestLaw3HeldCountsOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		delay := time.Duration(rapid.IntRange(15, 1100).Draw(t, "delay")) * ms
		interval := time.Duration(rapid.IntRange(5, 115).Draw(t, "interval")) * ms
		length := time.Duration(rapid.IntRange(2000, 10000).Draw(t, "length")) * ms
		if got := count(held(0, delay, interval, length)); got != 1 {
			t.Fatalf("held: counts %d", got)
		}
	})
	for interval := 120 * ms; interval < 250*ms; interval += 10 * ms {
		if got := count(held(0, 500*ms, interval, 10*time.Second)); got > 2 {
			t.Errorf("slow repeat of %v: counts %d", interval, got)
		}
	}
}

func TestPressThenHeld(t *testing.T) {
	times := append([]time.Duration{0}, held(600*ms, 500*ms, 33*ms, 3*time.Second)...)
	if got := count(times); got != 2 {
		t.Errorf("a press and a held key: count %d, want 2", got)
	}
}

func TestLaw4OtherKeysAndLatePressesCountAtOnce(t *testing.T) {
	g, start := New(250*ms), time.Unix(0, 0)
	step := func(key string, at time.Duration, want string, waits bool) {
		t.Helper()
		keys, w := g.Event(key, start.Add(at))
		got := ""
		for _, k := range keys {
			got += k
		}
		if got != want || (w != Wait{}) != waits {
			t.Errorf("%s at %v: %q, wait %v; want %q, %v", key, at, got, w, want, waits)
		}
	}
	step("a", 0, "a", false)
	step("b", 10*ms, "b", false)
	step("b", 500*ms, "", true)
	step("a", 550*ms, "ba", false) // what was held back goes first
	step("a", 3000*ms, "a", false)
	if _, ok := g.Settled(1); ok {
		t.Error("a stale ticket let a press go")
	}
}

// With a gap of her own, hits closer than it count once, a held key too, and
// presses twice as far apart all count.
func TestAnyGap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		gap := rapid.IntRange(120, 1500).Draw(t, "gap")
		presses := rapid.IntRange(1, 8).Draw(t, "presses")
		var times []time.Duration
		at := 0
		for range presses {
			times = append(times, time.Duration(at)*ms)
			if again := rapid.IntRange(0, min(gap-1, 99)).Draw(t, "bounce"); again > 0 {
				times = append(times, time.Duration(at+again)*ms)
			}
			at += 2*gap + 150 + rapid.IntRange(0, 1000).Draw(t, "wait")
		}
		if got := countWith(New(time.Duration(gap)*ms), times); got != presses {
			t.Fatalf("gap %d: %d presses count as %d: %v", gap, presses, got, times)
		}
		interval := time.Duration(rapid.IntRange(15, 100).Draw(t, "interval")) * ms
		if got := countWith(New(time.Duration(gap)*ms), held(0, 500*ms, interval, 10*time.Second)); got != 1 {
			t.Fatalf("gap %d: a key held ten seconds counts %d times", gap, got)
		}
	})
}
