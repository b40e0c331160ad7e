// Package tui is the screen beside the cutter: it shows the one thing to do
// now, takes a few large keys, and has what was done written down before it
// says so.
//
// It promises that no press is recorded that was not meant (package press),
// that the screen never runs ahead of the record, that leaving waits for a
// save under way, that no line is wider than the window and no frame taller,
// and that no text of hers steers the terminal (package canvas). It keeps no
// file and plans nothing: session does. This and the packages under it are
// the only ones that know Bubble Tea.
package tui
