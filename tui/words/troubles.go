package words

import "example.org/matside/plan/say"

var kinds say.Kinds

// Kinds are the kinds of what is said here of files, and of a piece of work
// that broke off.
func Kinds() []*say.Kind { return kinds.All() }

// What is wrong with a file that she chose, and what to do.
var (
	NoFile       = kinds.New("there is no file %s")
	CheckName    = kinds.New("Check the name, or write `matside demo` to see one at work.")
	CantRead     = kinds.New("%s can't be read: %s")
	WhoMayRead   = kinds.New("Check who may read it.")
	IsFolder     = kinds.New("%s is a folder")
	NameListIn   = kinds.New("Name the cut list in it.")
	NothingToCut = kinds.New("%s has nothing to cut on the mat")
	SeePlan      = kinds.New("`matside plan` shows what is cut by hand, and what is missing.")
	NoDemoRoom   = kinds.New("there is no room for the demo's data file: %s")
	FreeSpace    = kinds.New("Free some space, or set TMPDIR to a folder that is writable.")
)

// What broke off, which is a fault of ours.
var (
	BrokeOff       = kinds.New("it broke off: %s")
	SavingBrokeOff = kinds.New("saving broke off: %s")
	PlanAtFault    = kinds.New("the plan of %s did not pass its check; this is a fault of matside's\n%s")
	NothingChanged = kinds.New("Nothing was changed. Please keep the cut list and report it.")
)

// What is told when a quilt is begun.
var Offered = kinds.New("%s left fabric that this quilt uses: see matside shelf leftovers.")
