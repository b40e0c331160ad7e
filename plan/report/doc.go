// Package report writes a plan down: as the JSON that programs read (package
// schema says what is in it, plan/check what must hold of it), and as the text
// that the quilter reads before she starts.
//
// It only tells what a queue says and works nothing out that decides anything;
// the same queue gives the same bytes.
package report
