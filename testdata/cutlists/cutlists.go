// Package cutlists holds matside's invented cut lists: the demo's, and those
// that the tests and benchmarks read. The go command leaves folders named
// testdata out of ./..., but a package in one can be imported, so that the
// demo and the tests read the very same files.
package cutlists

import "embed"

// Files are the cut lists by file name.
//
//go:embed *.cutlist
var Files embed.FS

// Demo is the file name of the demo's cut list.
const Demo = "gatepost-evening.cutlist"

// Examples are the file names of the invented quilts that `matside examples`
// writes, from the least work to the most.
var Examples = []string{
	"first-nine-patch.cutlist",
	"puddle-moons.cutlist",
	"millrace-kites.cutlist",
	Demo,
	"hundred-combs.cutlist",
	"teacup-row.cutlist",
}

// Read returns one cut list's text. It panics on a name that isn't here,
// which is our own mistake.
func Read(name string) []byte {
	text, err := Files.ReadFile(name)
	if err != nil {
		panic(err)
	}
	return text
}
