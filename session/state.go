package session

import (
	"slices"
	"time"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/length"
	"example.org/matside/plan/queue"
)

// State is everything that the log says, folded. The zero State is an empty
// log. A State from a Ledger may be kept and read for ever; don't write to it.
type State struct {
	Seq    uint64    // of the last event folded
	At     time.Time // of the last event folded
	Quilts []*Quilt  // in the order they were started, removed ones too
	Mats   []Mat     // in the order they came, retired ones too
	Blade  Blade
	Habits Habits
	Days   []Day      // the days behind, in order
	Recent []LoadTime // the last loads peeled, oldest first, from which times are learned
	Where  Where      // where on the mat pieces came out good or spoiled
	Lost   []uint64   // numbers of events that are lost
	Left   []uint64   // events that could not follow, because of those

	learned *learned // by advice.go, once asked for; nil: worked out each time
}

// Where counts pieces by thirds of the mat's usable part: rows from the top,
// columns from the left.
type Where struct{ Pieces, Spoiled [3][3]int }

// Day sums up what was peeled on one day of hers.
type Day struct {
	Date    string // 2026-03-07
	Loads   int
	Pieces  int // good ones
	Spoiled int
	Lifted  int
	Work    [Steps]time.Duration // of the loads peeled that day
}

// LoadTime is how long one load took.
type LoadTime struct {
	At        time.Time
	Pieces    int
	CutLength length.Len
	Work      [Steps]time.Duration
	Broken    [Steps]bool
}

// Standing says where on the shelf a quilt stands.
type Standing uint8

// Under way until she says otherwise.
const (
	UnderWay Standing = iota
	Aside
	Done // every load peeled, or finished by her
	Gone // removed
)

// String is the words for it.
func (s Standing) String() string {
	return [...]string{"under way", "set aside", "done", "removed"}[s]
}

// Quilt is one quilt's session.
type Quilt struct {
	ID       QuiltID
	Name     string
	Standing Standing
	Editions []Edition // the cut lists; the last one counts
	Loads    []Load    // in the order of cutting, done ones first
	Stock    []queue.PanelUse
	Buy      []queue.Buy
	Short    []queue.Short
	Fewest   queue.Fewest

	Current int  // ID of the load in hand; 0 when none is left
	Step    Step // the step to do now
	Mat     string

	Pieces   Pieces
	LineDone []int  // good pieces for each line of the list
	NoFabric []Copy // spoiled pieces for which no fabric is left
	Again    Again  // what became of the pieces spoiled in the last event, or taken together in it
	Last     Last   // what Back would take back
	Started  time.Time
	Touched  time.Time // the last event
	Paused   bool
	NextLoad int           // the ID the next new load gets
	Drawings int           // the highest number of a drawing there has been
	Clock    time.Time     // work counts from here; zero while she is away
	Handled  time.Duration // handling since the last rest, up to Clock
	// Brief says that Loads and Stock are left out: a quilt that was done
	// before this program started. Ledger.Whole has it all. What it leaves of
	// its fabric is kept in Leaves.
	Brief  bool
	Leaves []Leftover
	Unit   length.Unit // of its list
	Listed string      // the name its list bears, whatever she calls it now
	Count  Loads       // of loads, for a brief quilt too
}

// Loads counts loads.
type Loads struct{ Done, All int }

// Edition is a cut list as it was read at some time.
type Edition struct {
	Text string
	List *cutlist.List
}

// Pieces counts. Asked = Done + Left + Waiting + Short, always.
type Pieces struct {
	Asked   int // pieces the cut list asks for, cut on the mat
	Done    int // peeled and good
	Left    int // on loads to come, recuts not counted
	Waiting int // spoiled, to be cut again
	Short   int // no fabric for them in the plan
	Spoiled int // spoiled ever, cut again or not
	Extra   int // good, but no longer asked for
}

// Load is a matful and what became of it.
type Load struct {
	queue.Load
	ID      int // in its quilt, from 1, never changes; also its Number
	Edition int // index into Quilt.Editions: the list its lines count in
	Recut   bool
	// Anew are indexes of the pieces that are cut again on a load that brings
	// others too; on a recut they all are, and Anew is nil.
	Anew []int
	// As says what each piece counts as in a list edited since; Line -1 is one
	// that is no longer asked for. Nil: as it says itself.
	As      []Copy
	Skipped bool // put off to the end by her
	Done    bool
	Mat     string // the mat it was done on
	Spoiled []int  // indexes into Pieces
	Lifted  bool
	Ragged  bool
	At      time.Time // when it was peeled
	// Work is the time each step took, breaks left out. Broken says that the
	// time isn't known for certain, so that nothing may be learned from it.
	Work   [Steps]time.Duration
	Broken [Steps]bool
}

// CutAgain says that a piece comes in the place of a spoiled one.
func (l *Load) CutAgain(piece int) bool { return l.Recut || slices.Contains(l.Anew, piece) }

// counts is the copy that a piece counts as, and false for one that is no
// longer asked for.
func (l *Load) counts(piece int) (Copy, bool) {
	if l.As != nil {
		return l.As[piece], l.As[piece].Line >= 0
	}
	p := &l.Pieces[piece]
	return Copy{p.Line, p.Copy}, true
}

// asked counts the pieces that are asked for, first those cut for the first
// time, then those cut again.
func (l *Load) asked() (first, again int) {
	for i := range l.Pieces {
		if _, ok := l.counts(i); !ok {
			continue
		}
		if l.CutAgain(i) {
			again++
		} else {
			first++
		}
	}
	return first, again
}

// Again says how spoiled pieces come back.
type Again struct {
	Pieces int         `json:",omitempty"` // to be cut again
	Loads  []int       `json:",omitempty"` // the loads that bring them
	Extra  int         `json:",omitempty"` // how many more loads there are than there would be
	From   []Source    `json:",omitempty"` // where their fabric comes from
	Short  []Copy      `json:",omitempty"` // those no fabric is left for
	Buy    []queue.Buy `json:",omitempty"` // what more of a fabric without stock it takes
}

// Source is a panel of a fabric.
type Source struct {
	Fabric int // index into List.Fabrics
	Panel  int // from 1
}

// Last names the event that Back would take back.
type Last struct {
	Seq  uint64
	What string // "step", "peeled", "joined", "moved", "replanned", "mat used", or "" for nothing
	Load int
	Step Step
}

// Mat is one sticky sheet.
type Mat struct {
	Name          string
	Width, Height length.Len // 0: 12 x 12 in
	Retired       bool
	Due           int // her own number of loads; 0: as advised
	Since         int // loads since its wash, or since it came
	Weighed       int // the same, in thousandths, heavy loads counted for more
	Washes        int
	Refreshes     int
	Loads         int // ever
	Came, Washed  time.Time
	DryAt         time.Time // zero, or when the last wash has dried
	Runs          []Run     // one for each wash and the time before the first
	Last          uint64    // the last event of the mat's own, for TakeBackMat
}

// Run is what a mat did between two washes.
type Run struct {
	From      time.Time
	Refreshed bool
	Before    int // loads it had done since its wash when it came to us
	Loads     []MatLoad
}

// MatLoad is one load on a mat.
type MatLoad struct {
	Weight int // thousandths
	Lifted bool
}

// Blade is the rotary blade in the cutter.
type Blade struct {
	Changed time.Time // zero: before the log began
	Changes int
	Runs    [][]BladeLoad // one for each blade
}

// BladeLoad is one load the blade cut.
type BladeLoad struct {
	Length length.Len
	Ragged bool
}

// Length is what the present blade has cut.
func (b Blade) Length() length.Len {
	var sum length.Len
	if n := len(b.Runs); n > 0 {
		for _, l := range b.Runs[n-1] {
			sum += l.Length
		}
	}
	return sum
}

// edition is the last one; a brief quilt has none.
func (q *Quilt) edition() Edition {
	if len(q.Editions) == 0 {
		return Edition{}
	}
	return q.Editions[len(q.Editions)-1]
}

// List is the cut list that counts now; nil for a brief quilt.
func (q *Quilt) List() *cutlist.List { return q.edition().List }

// ListName is the name that the cut list bears.
func (q *Quilt) ListName() string {
	if list := q.List(); list != nil {
		return list.Quilt
	}
	return q.Listed
}

// Text is the cut list as she wrote it last.
func (q *Quilt) Text() string { return q.edition().Text }

// ListOf is the list in which a load's lines count.
func (q *Quilt) ListOf(l *Load) *cutlist.List { return q.Editions[l.Edition].List }

// Load finds a load by its ID, or returns nil.
func (q *Quilt) Load(id int) *Load {
	for i := range q.Loads {
		if q.Loads[i].ID == id {
			return &q.Loads[i]
		}
	}
	return nil
}

// InHand is the load she is at, or nil when all are done.
func (q *Quilt) InHand() *Load { return q.Load(q.Current) }

// Place is where the load in hand stands: load Place of Count.All. When none
// is left it is Count.All.
func (q *Quilt) Place() int { return min(q.Count.Done+1, q.Count.All) }

// PlaceOf is a load's place among all, as Place counts; 0 once it is peeled.
func (q *Quilt) PlaceOf(id int) int {
	for i, l := range q.ToCome() {
		if l.ID == id {
			return q.Count.Done + i + 1
		}
	}
	return 0
}

// LoadsDone counts.
func (q *Quilt) LoadsDone() int { return q.Count.Done }

// LoadsLeft counts.
func (q *Quilt) LoadsLeft() int { return q.Count.All - q.Count.Done }

// Finished says that every load is peeled, or that she said so.
func (q *Quilt) Finished() bool { return q.Standing == Done }

// ToCome are the loads not done, the one in hand first.
func (q *Quilt) ToCome() []Load {
	if q.Brief {
		return nil
	}
	return q.Loads[q.Count.Done:]
}

// Quilt finds a quilt that isn't removed, or returns nil.
func (s *State) Quilt(id QuiltID) *Quilt {
	for _, q := range s.Quilts {
		if q.ID == id && q.Standing != Gone {
			return q
		}
	}
	return nil
}

// Mat finds a mat by name, or returns nil.
func (s *State) Mat(name string) *Mat {
	for i := range s.Mats {
		if s.Mats[i].Name == name {
			return &s.Mats[i]
		}
	}
	return nil
}

// MatsThere are the mats that aren't thrown away, in the order they came.
func (s *State) MatsThere() (all []Mat) {
	for _, m := range s.Mats {
		if !m.Retired {
			all = append(all, m)
		}
	}
	return all
}

// Latest is the quilt under way that was touched last, or nil.
func (s *State) Latest() *Quilt {
	var latest *Quilt
	for _, q := range s.Quilts {
		if q.Standing == UnderWay && (latest == nil || !q.Touched.Before(latest.Touched)) {
			latest = q
		}
	}
	return latest
}
