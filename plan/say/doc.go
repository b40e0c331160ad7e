// Package say holds sentences as data: what kind of sentence it is, and the
// facts in it. Packages that know what happened (the cut list reader, the
// record, the data file) say it so, and never lose the English; the screens
// put it into the quilter's own language by its kind.
//
// It promises that a sentence printed with fmt is its plain English, and that
// a package's kinds can be listed, so that a test can ask for every one of them
// in every language. It knows no other language and chooses none.
package say
