package session

import (
	"fmt"
	"slices"
	"sync"
	"time"

	"example.org/matside/session/store"
)

// Ledger is the log and the state folded from it. Its methods may be called
// from several goroutines; Do and its kin wait for the disk.
type Ledger struct {
	mu     sync.Mutex
	store  *store.Store // nil: kept nowhere
	base   State        // folded from the events before tail
	tail   []Event      // the last events, so that taking back is quick
	state  State        // folded from base and tail
	cached uint64       // the number up to which a base is cached on disk
	now    func() time.Time
	plan   Planner
}

// New is a ledger that is kept nowhere, for trying things out and for tests.
func New(opt OpenOptions) *Ledger {
	opt.setUp()
	return &Ledger{base: newState(), state: newState(), now: opt.Now, plan: opt.Planner}
}

// OpenOptions of a ledger; the zero value is the usual.
type OpenOptions struct {
	Now     func() time.Time // nil: time.Now
	Planner Planner          // for recuts and edited lists; nil: plan.Make
	// Probe tries the file before it is opened, in another process: see
	// ProbeBy. Nil: only our own reader looks at it first.
	Probe func(path string) error
	Store store.Options // how the file is opened; its Now, Format and Probe are set here
}

// setUp fills in what was left out.
func (o *OpenOptions) setUp() {
	if o.Now == nil {
		o.Now = time.Now
	}
	if o.Planner == nil {
		o.Planner = usualPlanner
	}
	o.Store.Now, o.Store.Probe, o.Store.Format = o.Now, o.Probe, logFormat
}

// logFormat is the number of the log's form. It goes up when old lines must be
// rewritten; a content's own version does for smaller changes.
const logFormat = 1

// State is the state as of the last event. It may be kept and read for ever.
func (l *Ledger) State() State {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.state
}

// Start opens a quilt and gives its ID.
func (l *Ledger) Start(a Start) (QuiltID, State, error) {
	s, err := l.Do(0, a)
	return QuiltID(s.Seq), s, err
}

// Do does an action on a quilt (0 where none is meant) and returns when its
// event is on disk. An action that changes nothing makes no event. After an
// error nothing has happened, or, when the disk left it in doubt, the same
// action may be tried again without harm. Before a quilt is removed a backup
// of everything is made beside the data file; Notes names it.
func (l *Ledger) Do(id QuiltID, a Action) (State, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	now := l.now().Round(0).Truncate(time.Millisecond)
	s, err := l.knowing(id, a)
	if err != nil {
		return l.state, err
	}
	c, err := Decide(s, id, a, now, l.plan)
	if err != nil || c == nil {
		return l.state, err
	}
	e := Event{Seq: l.state.Seq + 1, At: now, Quilt: belongs(c, id, a, l.state.Seq+1), Version: contentVersion, Content: c}
	next, err := l.after(&e)
	if err != nil {
		return l.state, err
	}
	if _, ok := c.(Removed); ok && l.store != nil {
		if err := l.store.BackupBeside("before-remove"); err != nil {
			return l.state, err
		}
	}
	if err := l.keep(&e); err != nil {
		return l.state, err
	}
	next.learned = &learned{}
	l.tail, l.state = append(l.tail, e), next
	l.shorten()
	return l.state, nil
}

// knowing is the state that an action is decided on: for an edited list of a
// quilt known in brief, one that has all of it.
func (l *Ledger) knowing(id QuiltID, a Action) (*State, error) {
	_, edited := a.(Replan)
	if q := l.state.Quilt(id); !edited || q == nil || !q.Brief {
		return &l.state, nil
	}
	events, err := l.all()
	if err != nil {
		return nil, err
	}
	s, err := Fold(events)
	return &s, err
}

// keep puts an event on disk.
func (l *Ledger) keep(e *Event) error {
	if l.store == nil {
		return nil
	}
	line, err := e.Encode()
	if err != nil {
		return err
	}
	if err := l.store.Append(e.Seq, line); err != nil {
		return fmt.Errorf("not saved: %w", err)
	}
	return nil
}

// belongs says to which quilt an event belongs.
func belongs(c Content, id QuiltID, a Action, seq uint64) QuiltID {
	switch c.(type) {
	case Started:
		return QuiltID(seq)
	case MatAdded, MatWashed, MatRefreshed, MatDue, MatRenamed, MatRetired, BladeChanged, HabitsSet:
		return 0
	}
	if _, ok := a.(TakeBackMat); ok {
		return 0
	}
	return id
}

// after is the state that an event leads to.
func (l *Ledger) after(e *Event) (State, error) {
	if _, ok := e.Content.(Undone); !ok {
		next := l.state.fork(e)
		err := next.apply(e, nil)
		if err != errBrief {
			return next, err
		}
	}
	s, err := foldFrom(&l.base, append(slices.Clip(l.tail), *e))
	if err != errBrief && err != errTooOld {
		return s, err
	}
	events, err := l.all()
	if err != nil {
		return State{}, err
	}
	return Fold(append(events, *e))
}

// all are the events on disk.
func (l *Ledger) all() ([]Event, error) {
	if l.store == nil {
		return slices.Clone(l.tail), nil
	}
	return l.since(1)
}

// Whole is a quilt with all its loads, also one that State has only in brief.
func (l *Ledger) Whole(id QuiltID) (*Quilt, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	if q := l.state.Quilt(id); q == nil || !q.Brief {
		return q, nil
	}
	events, err := l.all()
	if err != nil {
		return nil, err
	}
	s, err := Fold(events)
	return s.Quilt(id), err
}

// Close ends it; the lock on the file is given back.
func (l *Ledger) Close() error {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.store == nil {
		return nil
	}
	_ = l.cache() // it only saves time
	err := l.store.Close()
	l.store = nil
	return err
}
