// Package session keeps the cutting: a log of events, and the state that a
// pure function folds from it.
//
// It promises that what Do has returned without an error is on disk; that the
// state is the fold of the log and nothing else; that taking back is an event
// and never a deletion; and that an old log reads the same after the packer
// has changed, because every planned load stands in the event that brought it.
//
// It does not draw, ask or print, and it knows no terminal. The log's file is
// package store's business, the statistics of the mat package wear's, and the
// minutes package pace's. Nothing here reads the clock but Ledger, which may
// be given another.
package session
