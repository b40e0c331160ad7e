package session

import (
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/queue"
)

// Action is what she does, before it is an event: one of the types below.
type Action interface{ action() }

// What moves a quilt along.
type (
	// GoOn ends the step in hand. The rest is for the peel step alone, but
	// Anyway, which lays fabric on a mat that is still wet.
	GoOn struct {
		Spoiled []int // indexes into the load's Pieces, in any order
		Lifted  bool  // fabric came off the mat under the blade
		Ragged  bool  // an edge was ragged
		Apart   bool  // leave recuts that wait as they are
		Anyway  bool
	}
	// Back takes back the last thing that moved the quilt along.
	Back struct{}
	// Move puts a load in another place: To counts from 0 among ToCome.
	Move struct{ Load, To int }
	// Skip puts a load off to the end.
	Skip struct{ Load int }
	// JoinRecuts plans all recuts that wait together.
	JoinRecuts struct{}
	// Replan takes a cut list edited halfway: what is done stays done.
	Replan struct {
		Text string
		List *cutlist.List
	}
	// UseMat goes on with another mat.
	UseMat struct{ Mat string }
)

// Start opens a quilt. Queue is its plan.
type Start struct {
	Text  string
	List  *cutlist.List
	Queue *queue.Queue
	Name  string // "" for the list's own
	Mat   string // "" for the mat used last
}

// The shelf.
type (
	SitDown  struct{} // she sits down to the quilt: time counts
	Leave    struct{} // she leaves it
	Pause    struct{}
	Resume   struct{} // after a pause
	Rename   struct{ Name string }
	PutAside struct{}
	TakeUp   struct{}
	Finish   struct{}
	Remove   struct{} // a backup is made first
)

// The mats, the blade, her minutes. An empty Mat is the one in use.
type (
	AddMat struct {
		Mat   string
		Size  cutlist.Mat // zero: 12 x 12 in
		Loads int         // since its wash, for a mat that isn't new
	}
	Wash    struct{ Mat string }
	Refresh struct{ Mat string } // temporary adhesive
	SetDue  struct {             // her own number of loads; 0: as advised
		Mat   string
		Loads int
	}
	RenameMat   struct{ Mat, To string }
	RetireMat   struct{ Mat string }
	TakeBackMat struct{ Mat string } // the mat's last wash, refresh or due
	ChangeBlade struct{}
	SetHabits   struct{ Habits Habits }
)

func (GoOn) action()        {}
func (Back) action()        {}
func (Move) action()        {}
func (Skip) action()        {}
func (JoinRecuts) action()  {}
func (Replan) action()      {}
func (UseMat) action()      {}
func (Start) action()       {}
func (SitDown) action()     {}
func (Leave) action()       {}
func (Pause) action()       {}
func (Resume) action()      {}
func (Rename) action()      {}
func (PutAside) action()    {}
func (TakeUp) action()      {}
func (Finish) action()      {}
func (Remove) action()      {}
func (AddMat) action()      {}
func (Wash) action()        {}
func (Refresh) action()     {}
func (SetDue) action()      {}
func (RenameMat) action()   {}
func (RetireMat) action()   {}
func (TakeBackMat) action() {}
func (ChangeBlade) action() {}
func (SetHabits) action()   {}

// Wish is what a Planner is asked for.
type Wish struct {
	Wanted []Copy           // pieces cut on the mat
	Hand   bool             // plan what is cut by hand too
	Used   []queue.PanelUse // what has come out of the panels, or is planned to
}

// Planner plans a wish. Load numbers in Used are the quilt's own; the answer's
// count from 1, and its Stock holds only what it takes itself.
type Planner func(list *cutlist.List, w Wish) (*queue.Queue, error)
