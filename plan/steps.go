package plan

import "example.org/matside/plan/say"

var steps say.Kinds

// Steps are the kinds of what Progress is told.
func Steps() []*say.Kind { return steps.All() }

// What planning does, as Progress is told.
var (
	Packing = steps.New("packing the loads")
	Fitting = steps.New("fitting rough cuts to the fabric")
	Alike   = steps.New("laying loads alike")
)
