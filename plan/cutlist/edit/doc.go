// Package edit changes the text of a cut list the way a careful person with a
// pencil would: one statement at a time, in its place, and not a byte besides.
//
// It promises that a Doc nobody has changed is the very text it was made of;
// that changing, inserting or removing a statement leaves every other line,
// every comment, the indentation and the kind of line ends alone; and that
// what it writes reads back (Write and cutlist.Apart undo each other). Docs
// are values: an edit makes a new one.
//
// It does not promise that the list is right: cutlist.Read says that, of the
// text as it stands.
package edit
