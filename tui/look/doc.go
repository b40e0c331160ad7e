// Package look is the one place for colours: four looks (dark, light, high
// contrast and no colour), and what each makes of an ink on a paper.
//
// It promises that text stands at 7:1 or more against every paper it is put
// on and marks at 3:1, in every colour a terminal may turn a look into
// (look_test.go computes the ratios by the formula of WCAG 2.2, "relative
// luminance" and "contrast ratio"); that both hold, and the cloths stay apart,
// for eyes that take some colours for others (sight_test.go simulates the
// three common kinds); that bold and reverse stand in every
// look; and that a look paints its own paper, so that it never depends on
// what the terminal's background happens to be. Without colour nothing is
// painted: the terminal's own colours stay.
package look
