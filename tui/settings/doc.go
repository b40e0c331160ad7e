// Package settings is what she chose about the screen: look, size of letters,
// units, sounds, pause, keys. The screens read it and change it; it knows no
// screen.
package settings
