// Package piecepic draws one piece as it is cut: to scale, in half blocks,
// what is sewn in solid and its seam allowance lighter, the cut size on its
// edges.
//
// It promises that a picture is never larger than it was asked to be and that
// its sides are true to half a cell. It measures nothing anybody cuts by.
package piecepic
