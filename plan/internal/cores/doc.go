// Package cores does independent pieces of work on all the cores there are.
//
// It promises that what is given back depends on nothing but the pieces: each
// is done once, by one goroutine, and what comes of them is gathered in their
// order, however they were scheduled. A panic in a piece of work comes out
// where its result is waited for, so that whoever guards the caller guards the
// work too.
//
// It does not keep pieces apart: they must share nothing that one of them
// changes.
package cores
