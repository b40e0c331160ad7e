// Package press tells meant key presses from a key held down, a bounce and a
// shaking hand. It knows times and keys, no terminal and no clock.
//
// A terminal reports no key being let go: a held key is one event, a wait of
// a quarter to a whole second, then a stream of events; and the first event
// of that stream looks exactly like a second press. So an event that follows
// another of the same key within Watch is held back for Settle, until the
// stream has shown itself or not. What a Gate promises:
//
//	(1) presses half a second apart or more all count,
//	(2) hits within a tenth of a second of each other count once,
//	(3) a key held down counts once, however long, if it repeats at least
//	    eight times a second; a slower repeat counts at most twice,
//	(4) a press counts at once if no other of its key came within Watch
//	    before it, and Settle after its last bounce otherwise.
package press
