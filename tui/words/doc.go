// Package words has every sentence that the screens and the plain lines say,
// one value of Words for each language, so that nothing is said in two ways
// and everything can be said in another tongue. Lengths are written here too,
// for a language may have a comma where another has a point.
//
// Sentences she acts on have twelve words at most, and no word that is ours
// and not hers; words_test.go counts.
package words
