// Package store keeps numbered lines in two files that can each rebuild the
// other: a bbolt data file, and beside it a journal in plain text.
//
// It promises that a line is on disk in both before Append returns nil, that
// trying again after an error does no harm, that no line which was
// acknowledged is lost to a kill or to damage of one of the files, and that a
// damaged, foreign, full or locked file gives a *Trouble in plain words, never
// a panic or a signal's death. It does not know what the lines mean.
//
// bbolt keeps no checksum of its data pages, so every record carries its own:
// CRC-32C (Castagnoli; the polynomial of RFC 3720, appendix B.4). The data file
// is read by our own reader (pages.go), which checks every offset and maps
// nothing into memory; bbolt itself is let near a file only after that.
package store
