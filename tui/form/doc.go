// Package form is a cut list as a form: a sheet of what is on the list, and
// for each statement a few questions, one at a time. It knows no screen and
// no language; what it asks are names that package words has sentences for.
//
// It promises that every text it makes is one she could have typed (package
// edit writes it), that comments, order and line ends of an opened list stay
// as they are, that what is half answered is kept when she goes elsewhere,
// and that what is wrong is told by the reader of cut lists itself. It reads
// and writes no file: outlines of hers come through Form.Open.
package form
