package tui

import "example.org/matside/session"

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
	show  struct{ screen screen }         // another screen
	save  struct{ action session.Action } // write this down
	leave struct{}                        // leave the program, everything saved
	sleep struct{}                        // hand the terminal back to the shell for a while
	turn  struct{}                        // the next look
	ask   struct{ do func() any }         // find something out; see listener
	take  struct {                        // go on with another quilt
		quilt  session.QuiltID
		notice string
	}
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
