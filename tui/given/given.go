package given

import (
	"context"

	"example.org/matside/plan/queue"
	"example.org/matside/plan/say"
	"example.org/matside/session"
	"example.org/matside/tui/files"
)

// Notebook is where what she does is written down: a *session.Ledger.
type Notebook interface {
	// State is everything written so far.
	State() session.State
	// Do writes one action down. When it returns nil the action is on disk.
	// Asked again after an error it does no harm.
	Do(session.QuiltID, session.Action) (session.State, error)
	// Start opens a quilt; Whole has all loads of one known by its sums only.
	Start(session.Start) (session.QuiltID, session.State, error)
	Whole(session.QuiltID) (*session.Quilt, error)
}

// Opened is what there is to go on with.
type Opened struct {
	Book   Notebook
	Quilt  session.QuiltID // 0: none is under way, the first page is shown
	Notice string          // a sentence to show once, or ""
	Desk   Desk            // nil: as before
	// Planner is at work below Do; nil where it can't be watched.
	Planner Planner
	Demo    bool // say on screen that nothing is kept
}

// Planner plans recuts and edited lists while an action is written down.
type Planner interface {
	// Watch tells the steps of what is planned from now on, and lets it take
	// its time.
	Watch(tell func(say.Sentence))
	// Hurry makes what is planned now end soon, with the best there is.
	Hurry()
}

// Desk is what lies beside the notebook: folders, cut lists and the way from
// a cut list to loads. All but FileOf and Unfinished wait for the disk or the planner,
// and are called from commands.
type Desk interface {
	// Folder lists a folder; "" is the one she is in.
	Folder(path string, all bool) (files.Folder, error)
	// Read reads a cut list. open gives the files beside it.
	Read(path string) (text string, open func(name string) ([]byte, error), err error)
	// Write writes one where was is what it held when it was read, nil for a
	// new one: files.ErrChanged, files.ErrThere.
	Write(path, text string, was *string) error
	// FreeName is a path for a new cut list.
	FreeName(quilt string) string
	// Stamp is what a file looks like from outside.
	Stamp(path string) files.Stamp
	// Plan plans the text of a cut list that lies at path.
	Plan(ctx context.Context, path, text string, tell func(say.Sentence)) (*queue.Queue, error)
	// Take takes up the quilt of a cut list, or starts it.
	Take(ctx context.Context, book Notebook, path string, tell func(say.Sentence)) (session.QuiltID, error)
	// FileOf is where the cut list of a quilt lies, "" where that is not known.
	FileOf(quilt session.QuiltID) string
	// Demo opens a notebook with an invented quilt, to be thrown away.
	Demo(ctx context.Context, tell func(say.Sentence)) (Opened, error)
	// Unfinished is a form that was left unfinished, nil when there is none;
	// Keep keeps one, or with nil forgets it.
	Unfinished() []byte
	Keep(form []byte) error
}
