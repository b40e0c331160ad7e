// Package settings is what she chose about the screen: look, size of letters,
// units, sounds, pause, keys, language. The screens read it and change it; it
// knows no screen.
//
// It is kept in a text file a line each, in the style of a cut list: `look
// dark`, with # for comments. Read takes what it understands of any text and
// says what it does not; Write changes the lines that must change and leaves
// every other byte alone, what it does not understand too. It opens no file.
package settings
