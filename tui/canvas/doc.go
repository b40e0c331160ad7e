// Package canvas is a grid of character cells to draw on: every screen draws
// here and nowhere else.
//
// It promises that what comes out has exactly the height asked for, that no
// line is wider than the canvas, and that no control character reaches the
// terminal but the colour changes of Render, whatever text was put in.
// Drawing outside the canvas does nothing. It knows cells, not screens.
//
// A grid instead of joined strings, because a picture with letters laid over
// lines over patterns is a grid, and because width is then kept in one place.
package canvas
