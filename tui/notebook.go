package tui

import (
	"context"
	"time"

	"example.org/matside/plan/say"
	"example.org/matside/session"
)

// Notebook is where what she does is written down: a *session.Ledger.
type Notebook interface {
	// State is everything written so far.
	State() session.State
	// Do writes one action down. When it returns nil the action is on disk.
	// Asked again after an error it does no harm.
	Do(session.QuiltID, session.Action) (session.State, error)
	// Start opens a quilt; Whole has all loads of one known by its sums only.
	Start(session.Start) (session.QuiltID, session.State, error)
	Whole(session.QuiltID) (*session.Quilt, error)
}

// Opener opens the notebook once the first picture stands: it opens the data
// file, plans, starts or takes up a quilt and sits down to it. It tells the
// steps it takes as they come, and ends early when ctx is done.
type Opener func(ctx context.Context, tell func(step say.Sentence)) (Opened, error)

// Opened is what there is to go on with.
type Opened struct {
	Book   Notebook
	Quilt  session.QuiltID // 0: none is under way, the first page is shown
	Notice string          // a sentence to show once, or ""
	Desk   Desk            // nil: as before
	Demo   bool            // say on screen that nothing is kept
}

// Advice is what can be said of time; nothing is said where it is nil.
type Advice struct {
	// Left is the time the rest of a quilt takes, and whether it is a guess
	// made without evenings of her own.
	Left func(*session.State, *session.Quilt) (d time.Duration, guess bool)
}
