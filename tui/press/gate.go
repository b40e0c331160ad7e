package press

import "time"

// Gate decides which key events count. The zero value lets nothing but
// bounces apart; use New. A key is any name that stays the same for the same
// meaning: Enter and space should come in as one.
type Gate struct {
	Rearm  time.Duration // a shorter gap continues what is going on
	Watch  time.Duration // after a longer gap a press counts at once
	Settle time.Duration // how long a press is held back within Watch
	Hold   time.Duration // events going on longer than this are a held key

	key     string
	at      time.Time // of the last event of key
	waiting bool      // a press of key is held back
	since   time.Time // when it was made
	ticket  int
}

// New returns a gate that takes events less than gap apart for one press.
func New(gap time.Duration) *Gate {
	return &Gate{
		Rearm:  gap,
		Watch:  1200 * time.Millisecond,
		Settle: 120 * time.Millisecond,
		Hold:   150 * time.Millisecond,
	}
}

// Wait says that a press is held back: call Settled with Ticket after For.
// The zero Wait asks for nothing.
type Wait struct {
	Ticket int
	For    time.Duration
}

// Event takes a key event and returns the keys that count now, in order: a
// press of another key that was held back is let go first.
func (g *Gate) Event(key string, at time.Time) (count []string, wait Wait) {
	if key != g.key {
		if last, ok := g.flush(); ok {
			count = append(count, last)
		}
		g.key, g.at = key, at
		return append(count, key), Wait{}
	}
	gap := at.Sub(g.at)
	g.at = at
	switch {
	case gap < g.Rearm && g.waiting && at.Sub(g.since) > g.Hold:
		g.waiting = false // a stream: the key is held down
	case gap < g.Rearm && g.waiting:
		return nil, g.hold()
	case gap < g.Rearm:
	case gap < g.Watch:
		if last, ok := g.flush(); ok {
			count = append(count, last)
		}
		g.since = at
		return count, g.hold()
	default:
		if last, ok := g.flush(); ok {
			count = append(count, last)
		}
		return append(count, key), Wait{}
	}
	return nil, Wait{}
}

// Settled says that a wait is over, and returns the key that counts, if it
// is still the one waited for.
func (g *Gate) Settled(ticket int) (key string, ok bool) {
	if ticket != g.ticket {
		return "", false
	}
	return g.flush()
}

func (g *Gate) hold() Wait {
	g.waiting = true
	g.ticket++
	return Wait{g.ticket, g.Settle}
}

func (g *Gate) flush() (string, bool) {
	was := g.waiting
	g.waiting = false
	return g.key, was
}
