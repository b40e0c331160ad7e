package tui

import (
	"time"

	"example.org/matside/session"
)

// Notebook is where what she does is written down: a *session.Ledger.
type Notebook interface {
	// State is everything written so far.
	State() session.State
	// Do writes one action down. When it returns nil the action is on disk.
	// Asked again after an error it does no harm.
	Do(session.QuiltID, session.Action) (session.State, error)
}

// Advice is what can be said of time; nothing is said where it is nil.
type Advice struct {
	// Left is the time the rest of a quilt takes, and whether it is a guess
	// made without evenings of her own.
	Left func(*session.State, *session.Quilt) (d time.Duration, guess bool)
}
