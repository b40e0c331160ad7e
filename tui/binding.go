package tui

import (
	"time"

	"example.org/matside/session"
	"example.org/matside/tui/settings"
)

// binding is one thing a key does, as data: the help and the key line are
// made from it.
type binding struct {
	name    string   // the same for keys that mean the same; what the gate goes by
	keys    []string // as press.Split names them
	key     string   // as the screen writes it
	says    string   // what it does just now
	refused string   // why it can't be done just now, or ""
	kind    kind
	do      func() action
}

// kind is how events of a key become presses.
type kind uint8

const (
	meant  kind = iota // through the gate: a held key counts once
	typed              // a character of a number: only bounces are dropped
	moving             // moves about: may repeat while held
)

// action is what a screen asks the frame for. nil asks for nothing.
type action interface{}

// The actions.
type (
	show    struct{ screen screen }         // another screen
	save    struct{ action session.Action } // write this down, for the quilt in hand
	saveFor struct {                        // for another one
		quilt  session.QuiltID
		action session.Action
	}
	take struct { // go on with another quilt: leave the one in hand, sit down to it
		quilt  session.QuiltID
		notice string
	}
	ask   struct{ do func() any } // find something out; see listener
	begin struct{ job job }       // work that may take a while; see job
	wait  struct {                // ask again after a time what to do
		d    time.Duration
		then func(v view) action
	}
	both  struct{ one, other action }          // one after the other
	set   struct{ settings settings.Settings } // take these into use and keep them
	turn  struct{}                             // the next look
	leave struct{}                             // leave the program, everything saved
	sleep struct{}                             // hand the terminal back to the shell for a while
)

// find returns the binding of a key.
func find(all []binding, key string) (binding, bool) {
	for _, b := range all {
		for _, k := range b.keys {
			if k == key {
				return b, true
			}
		}
	}
	return binding{}, false
}
