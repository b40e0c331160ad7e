// Package guard gives the terminal back when the program can't do it itself:
// killed, or ended by a panic in a goroutine that nobody waits for. A copy of
// the program stands by, reads from a pipe that nobody writes to, and acts
// when the pipe ends without a word of goodbye.
//
// It promises that the terminal's modes are as they were and its usual screen
// and cursor are back, and that the reason is told in one plain sentence. It
// does nothing on systems without termios, and nothing it fails at keeps the
// screens from being shown.
package guard
