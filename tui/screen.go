package tui

import (
	"time"

	"example.org/matside/session"
	"example.org/matside/tui/canvas"
	"example.org/matside/tui/settings"
	"example.org/matside/tui/words"
)

// screen is what fills the body of the window. Screens are values that hold
// no more than what was typed; all else they read from the view.
type screen interface {
	// bindings are the keys of the screen, the one that goes on first.
	bindings(v view) []binding
	// body draws the screen on a canvas of the size that is there for it.
	body(v view, c *canvas.Canvas)
	// caution is what can hurt at what the screen asks for, or "".
	caution(v view) string
	// title stands left in the second row, unless the trail does.
	title(v view) string
}

// stayer is a screen that stays after what it asked for has been written
// down, or refused.
type stayer interface{ stay(v view) screen }

// pointed is a screen with zones that no key has: a binding is made for one
// when it is clicked.
type pointed interface {
	pointed(v view, name string) (binding, bool)
}

// after is the screen that follows a save.
func (v view) after(s screen) screen {
	if s, ok := s.(stayer); ok {
		return s.stay(v)
	}
	return v.home()
}

// view is what a screen may read.
type view struct {
	words  words.Words
	state  *session.State
	quilt  *session.Quilt // nil when there is none
	advice Advice
	now    time.Time
	demo   bool
	look   string

	settings settings.Settings
	last     *drawn   // the last picture of the mat
	desk     Desk     // nil: there are no cut lists to be had
	book     Notebook // for jobs alone
}

// mat is the mat in use.
func (v view) mat() *session.Mat {
	if v.quilt != nil {
		if m := v.state.Mat(v.quilt.Mat); m != nil {
			return m
		}
	}
	return v.state.Mat(v.state.LastMat())
}

// home is the screen that the record calls for.
func (v view) home() screen {
	switch {
	case v.quilt == nil:
		return first{}
	case v.quilt.Standing == session.Aside || v.quilt.Standing == session.Gone:
		return shelf{at: v.quilt.ID}
	case v.quilt.Paused:
		return pausing{}
	case v.quilt.InHand() == nil:
		return finished{}
	}
	return walk{}
}
