// Package given says what the screens and the plain lines have to work with:
// the notebook she cuts by, and the folders, cut lists and planner beside it.
// cmd has them for this machine, tests in memory; both ways of an evening are
// given the same.
package given
