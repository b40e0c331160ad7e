package session

import (
	"errors"
	"fmt"
	"time"

	"example.org/matside/plan/say"
	"example.org/matside/session/reason"
	"example.org/matside/session/store"
)

// ErrNewer is returned when the log was written by a newer matside.
var ErrNewer = store.ErrNewer

// ErrNoQuilt is returned when no quilt, or none under way, is meant.
var ErrNoQuilt = reason.NoQuilt.Err()

// ErrNothingBack is the *Refused returned when there is no step left to take back.
var ErrNothingBack = refuse(reason.NothingBack)

// ErrCannotFollow is returned by Fold for an event that can't come next.
var ErrCannotFollow = errors.New("event cannot follow")

// Refused says why an action can't be done just now, in her words.
type Refused struct{ Why say.Sentence }

func (r *Refused) Error() string { return r.Why.String() }

// In is the reason in a language, which puts it into words.
func (r *Refused) In(language func(say.Sentence) string) string { return language(r.Why) }

func refuse(why *say.Kind, facts ...any) error { return &Refused{why.Say(facts...)} }

// WetMat is returned when a washed mat is loaded before it is dry; the same
// action with Anyway goes on.
type WetMat struct {
	Mat   string
	Until time.Time
	Other string // a dry mat to use instead, or ""
}

func (w *WetMat) Error() string {
	return fmt.Sprintf("mat %s is still drying until about %s", w.Mat, w.Until.Format("15:04"))
}

// errBrief says that a quilt is known by its sums only.
var errBrief = errors.New("session: only the sums of this quilt are known")
