package reason

import "example.org/matside/plan/say"

var kinds say.Kinds

// Kinds are all of them.
func Kinds() []*say.Kind { return kinds.All() }

// Why an action is refused just now.
var (
	NoQuilt      = kinds.New("no such quilt under way")
	NothingBack  = kinds.New("this is where the quilt began: nothing to take back")
	NothingOfMat = kinds.New("there is nothing of mat %s to take back")
	NoMat        = kinds.New("there is no mat %s")
	AllDone      = kinds.New("every load is done")
	SetAside     = kinds.New("%s is set aside; take it up again first")
	OnlySoMany   = kinds.New("load %s has only %s pieces")
	LoadDone     = kinds.New("that load is done")
	FabricCut    = kinds.New("its fabric is cut already; peel it, or go back to its fabric step")
	LastLoad     = kinds.New("it is the last load already")
	FabricOn     = kinds.New("the fabric is on mat %s; peel it first")
	NameNeeded   = kinds.New("a name needs a letter at least")
	NameTooLong  = kinds.New("that name is too long: 60 letters at most")
	DueFrom      = kinds.New("1 to 1000 loads, or 0 for the advice")
	LoadsFrom    = kinds.New("a number of loads from 0 to 1000")
	MatThere     = kinds.New("there is a mat %s already")
	MatGone      = kinds.New("mat %s was thrown away; give this one another name")
	MatTooLarge  = kinds.New("a mat's size is a length of cloth at most")
	MatInUse     = kinds.New("%s is cut on mat %s; use another there first")
	MinutesFrom  = kinds.New("minutes from 0 to %s")
	NoneToJoin   = kinds.New("there are no two loads of pieces to cut again")
)
