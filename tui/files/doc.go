// Package files is the folder the screens see: what is in it, a cut list's
// text, writing one down, and whether it has changed since.
//
// It promises that a file is written whole or not at all (a new one beside
// it, flushed, then renamed), never over one that has changed since it was
// read and never over one nobody read, and that folders come before files,
// each by name. It follows links when reading and replaces what they point
// to when writing. It keeps nothing open.
package files
