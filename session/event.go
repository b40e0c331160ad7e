package session

import (
	"encoding/json"
	"fmt"
	"time"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/queue"
)

// QuiltID names a quilt under way: the number of the event that started it.
type QuiltID uint64

// Event is one line of the log. Seq counts from 1 without a gap, over all
// quilts and mats. An event never changes once it is on disk.
type Event struct {
	Seq     uint64
	At      time.Time // to the millisecond, with her own offset from UTC
	Quilt   QuiltID   // 0 for what belongs to no quilt
	Version int       // of the content's form
	Content Content
}

// Content is what an event says. The kinds are the types below, and no
// others.
type Content interface{ kind() kind }

type kind string

// Copy is one piece of the cut list: the Copy-th of List.Lines[Line].
type Copy struct {
	Line int `json:"line"` // from 0
	Copy int `json:"copy"` // from 1
}

// Planned is a queue as an event carries it. Loads are numbered by their ID.
type Planned struct {
	Loads  []queue.Load
	Stock  []queue.PanelUse
	Buy    []queue.Buy
	Short  []queue.Short
	Fewest queue.Fewest
}

// The kinds that move a quilt along: Back takes the last of them back.
type (
	// Started opens a quilt with its cut list and its whole queue.
	Started struct {
		Name string        `json:"name"`
		Text string        `json:"text"` // the cut list as she wrote it
		List *cutlist.List `json:"list"`
		Plan Planned       `json:"plan"`
		Mat  string        `json:"mat"` // the mat it begins on
	}
	// StepDone says that Step of Load is done; the next step follows. Peel is
	// never in a StepDone: it ends by a Peeled.
	StepDone struct {
		Load int  `json:"load"`
		Step Step `json:"step"`
	}
	// Peeled ends a load. Weight is what the load counts for in wear, in
	// thousandths of a plain load, and CutLength what the blade went.
	Peeled struct {
		Load      int        `json:"load"`
		Mat       string     `json:"mat"`
		Spoiled   []int      `json:"spoiled,omitempty"` // indexes into the load's Pieces
		Lifted    bool       `json:"lifted,omitempty"`  // fabric came off the mat while it was cut
		Ragged    bool       `json:"ragged,omitempty"`  // an edge was ragged
		Weight    int        `json:"weight"`
		CutLength length.Len `json:"cut_nm"`
		Recut     *Recut     `json:"recut,omitempty"`
	}
	// Recut is how spoiled pieces come back: loads for the end of the queue.
	// Those that take in loads planned before stand where the first of them did.
	Recut struct {
		Drop  []int   `json:"drop,omitempty"` // loads to come that these take in: recuts that wait, or others with room
		Plan  Planned `json:"plan"`
		Short []Copy  `json:"short,omitempty"` // pieces for which no fabric is left
	}
	// Joined plans the waiting recut loads together.
	Joined struct {
		Recut Recut `json:"recut"`
	}
	// Moved takes a load that is not yet begun to another place: To counts
	// from 0 among the loads to come.
	Moved struct {
		Load int  `json:"load"`
		To   int  `json:"to"`
		Skip bool `json:"skip,omitempty"` // put off: the fabric isn't ready
	}
	// Replanned is a cut list edited halfway. Done counts, for each line of
	// the new list, the pieces already cut; Extra those no longer asked for. A
	// load in hand stays as it is.
	Replanned struct {
		Text  string        `json:"text"`
		List  *cutlist.List `json:"list"`
		Done  []int         `json:"done"`
		Extra int           `json:"extra,omitempty"`
		As    []Copy        `json:"as,omitempty"`   // what the pieces of the load in hand count as; Line -1: as extra
		Keep  *KeptLoad     `json:"keep,omitempty"` // the same as As was written until November 2026
		Plan  Planned       `json:"plan"`
	}
	// KeptLoad is the load in hand, with its ID, its pieces numbered anew.
	KeptLoad struct {
		Load queue.Load
	}
	// MatUsed says which mat the quilt goes on with.
	MatUsed struct {
		Mat string `json:"mat"`
	}
)

// Undone takes an event back. It follows only when Target is the last live
// event of its quilt (or mat) that can be taken back.
type Undone struct {
	Target uint64 `json:"target"`
}

// The kinds that belong to the shelf; the opposite takes them back.
type (
	// Opened says that she sits down to the quilt: time counts from here.
	Opened struct{}
	// Left says that she leaves it: time stops.
	Left struct{}
	// Paused and Resumed stand round a rest.
	Paused  struct{}
	Resumed struct{}
	// Renamed gives a quilt another name.
	Renamed struct {
		Name string `json:"name"`
	}
	// SetAside takes a quilt off the list of those under way.
	SetAside struct{}
	// TakenUp puts it back, finished ones too.
	TakenUp struct{}
	// Finished ends a quilt, also before its last load.
	Finished struct{}
	// Removed hides a quilt for good; its loads still count for the mats.
	Removed struct{}
)

// The kinds of the mats and the blade.
type (
	// MatAdded brings a mat, new or used: Loads since its wash as she knows.
	MatAdded struct {
		Mat   string     `json:"mat"`
		Width length.Len `json:"width,omitempty"`
		High  length.Len `json:"height,omitempty"`
		Loads int        `json:"loads,omitempty"`
	}
	// MatWashed is a wash; the mat is dry after Dry minutes.
	MatWashed struct {
		Mat string `json:"mat"`
		Dry int    `json:"dry"`
	}
	// MatRefreshed is temporary adhesive on an old mat.
	MatRefreshed struct {
		Mat string `json:"mat"`
	}
	// MatDue sets her own number of loads; 0 goes back to the advice.
	MatDue struct {
		Mat   string `json:"mat"`
		Loads int    `json:"loads"`
	}
	// MatRenamed gives a mat another name.
	MatRenamed struct {
		Mat string `json:"mat"`
		To  string `json:"to"`
	}
	// MatRetired is thrown away; its history stays.
	MatRetired struct {
		Mat string `json:"mat"`
	}
	// BladeChanged puts a new blade in.
	BladeChanged struct{}
	// HabitsSet changes her minutes.
	HabitsSet struct {
		Habits Habits `json:"habits"`
	}
)

// Lost stands in the place of an event that was damaged in both files, so
// that the numbers keep no gap.
type Lost struct{}

// Habits are minutes she may set; 0 means the usual guess.
type Habits struct {
	Dry        int `json:"dry,omitempty"`         // a washed mat, until it can be loaded
	Wash       int `json:"wash,omitempty"`        // her own time for washing a mat
	PauseAfter int `json:"pause_after,omitempty"` // handling before a pause is due; -1 never
	Pause      int `json:"pause,omitempty"`       // how long it lasts
}

func (Started) kind() kind      { return "started" }
func (StepDone) kind() kind     { return "step" }
func (Peeled) kind() kind       { return "peeled" }
func (Joined) kind() kind       { return "joined" }
func (Moved) kind() kind        { return "moved" }
func (Replanned) kind() kind    { return "replanned" }
func (MatUsed) kind() kind      { return "mat used" }
func (Undone) kind() kind       { return "undone" }
func (Opened) kind() kind       { return "opened" }
func (Left) kind() kind         { return "left" }
func (Paused) kind() kind       { return "paused" }
func (Resumed) kind() kind      { return "resumed" }
func (Renamed) kind() kind      { return "renamed" }
func (SetAside) kind() kind     { return "set aside" }
func (TakenUp) kind() kind      { return "taken up" }
func (Finished) kind() kind     { return "finished" }
func (Removed) kind() kind      { return "removed" }
func (MatAdded) kind() kind     { return "mat added" }
func (MatWashed) kind() kind    { return "mat washed" }
func (MatRefreshed) kind() kind { return "mat refreshed" }
func (MatDue) kind() kind       { return "mat due" }
func (MatRenamed) kind() kind   { return "mat renamed" }
func (MatRetired) kind() kind   { return "mat retired" }
func (BladeChanged) kind() kind { return "blade changed" }
func (HabitsSet) kind() kind    { return "habits" }
func (Lost) kind() kind         { return "lost" }

// read decodes the content of each kind.
var read = map[kind]func([]byte) (Content, error){
	"started":       readAs[Started],
	"step":          readAs[StepDone],
	"peeled":        readAs[Peeled],
	"joined":        readAs[Joined],
	"moved":         readAs[Moved],
	"replanned":     readAs[Replanned],
	"mat used":      readAs[MatUsed],
	"undone":        readAs[Undone],
	"opened":        readAs[Opened],
	"left":          readAs[Left],
	"paused":        readAs[Paused],
	"resumed":       readAs[Resumed],
	"renamed":       readAs[Renamed],
	"set aside":     readAs[SetAside],
	"taken up":      readAs[TakenUp],
	"finished":      readAs[Finished],
	"removed":       readAs[Removed],
	"mat added":     readAs[MatAdded],
	"mat washed":    readAs[MatWashed],
	"mat refreshed": readAs[MatRefreshed],
	"mat due":       readAs[MatDue],
	"mat renamed":   readAs[MatRenamed],
	"mat retired":   readAs[MatRetired],
	"blade changed": readAs[BladeChanged],
	"habits":        readAs[HabitsSet],
	"lost":          readAs[Lost],
}

func readAs[T Content](b []byte) (Content, error) {
	var c T
	err := json.Unmarshal(b, &c)
	return c, err
}

// wire is an event as it stands in the log.
type wire struct {
	Seq     uint64          `json:"seq"`
	At      string          `json:"at"`
	Quilt   QuiltID         `json:"quilt,omitempty"`
	Kind    kind            `json:"kind"`
	Version int             `json:"v"`
	Content json.RawMessage `json:"c"`
}

const stamp = "2006-01-02T15:04:05.000Z07:00"

// contentVersion is the form this program writes. A content with a higher
// number is refused: it may mean what we can't know.
const contentVersion = 1

// Encode writes the event as one line of JSON without its newline.
func (e Event) Encode() ([]byte, error) {
	c, err := json.Marshal(e.Content)
	if err != nil {
		return nil, err
	}
	return json.Marshal(wire{e.Seq, e.At.Format(stamp), e.Quilt, e.Content.kind(), contentVersion, c})
}

// Decode reads what Encode wrote. A kind or version that this program doesn't
// know is ErrNewer.
func Decode(b []byte) (Event, error) {
	if e, ok := quick(b); ok {
		return e, nil
	}
	return decode(b)
}

// decode reads any event by encoding/json.
func decode(b []byte) (Event, error) {
	var w wire
	if err := json.Unmarshal(b, &w); err != nil {
		return Event{}, fmt.Errorf("event: %w", err)
	}
	at, err := time.Parse(stamp, w.At)
	if err != nil {
		return Event{}, fmt.Errorf("event %d: %w", w.Seq, err)
	}
	as, ok := read[w.Kind]
	if !ok || w.Version > contentVersion {
		return Event{}, fmt.Errorf("event %d, %s, version %d: %w", w.Seq, w.Kind, w.Version, ErrNewer)
	}
	c, err := as(w.Content)
	if err != nil {
		return Event{}, fmt.Errorf("event %d, %s: %w", w.Seq, w.Kind, err)
	}
	return Event{Seq: w.Seq, At: at, Quilt: w.Quilt, Version: w.Version, Content: c}, nil
}
