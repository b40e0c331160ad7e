package tui

import (
	"context"
	"time"

	"example.org/matside/plan/say"
	"example.org/matside/session"
	"example.org/matside/tui/given"
)

// What the screens work with; the plain lines work with the same.
type (
	Notebook = given.Notebook
	Opened   = given.Opened
	Desk     = given.Desk
	Planner  = given.Planner
)

// Opener opens the notebook once the first picture stands: it opens the data
// file, plans, starts or takes up a quilt and sits down to it. It tells the
// steps it takes as they come, and ends early when ctx is done.
type Opener func(ctx context.Context, tell func(step say.Sentence)) (Opened, error)

// Advice is what can be said of time; nothing is said where it is nil.
type Advice struct {
	// Left is the time the rest of a quilt takes, and whether it is a guess
	// made without evenings of her own.
	Left func(*session.State, *session.Quilt) (d time.Duration, guess bool)
}
