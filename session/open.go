package session

import (
	"fmt"

	"example.org/matside/session/store"
)

// The sentinels of the data file; what wraps them is a *Trouble, whose text
// says what happened, what is safe and what to do.
var (
	ErrBusy    = store.ErrBusy
	ErrNotOurs = store.ErrNotOurs
	ErrDamaged = store.ErrDamaged
	ErrNoRoom  = store.ErrNoRoom
	ErrSwapped = store.ErrSwapped
	ErrAccess  = store.ErrNoAccess
)

// Trouble is what goes wrong with the data file, in her words.
type Trouble = store.Trouble

// Open opens the data file at path for writing, makes it where there is none,
// and folds its log. It waits at most a second for another process: ErrBusy.
func Open(path string, opt OpenOptions) (*Ledger, error) {
	opt.setUp()
	l := New(opt)
	s, err := store.Open(path, opt.Store)
	if err != nil {
		return nil, err
	}
	l.store = s
	defer func() { l.state.learned = &learned{} }()
	if l.fromCache() != nil {
		if err := l.fromStart(); err != nil {
			s.Close()
			return nil, newer(fmt.Errorf("reading %s: %w", path, err))
		}
	}
	return l, nil
}

// fromCache folds the events since the cached base. Any error means that the
// cache is of no use.
func (l *Ledger) fromCache() error {
	seq, b := l.store.Cached()
	if seq == 0 || seq > l.store.Last() {
		return errTooOld
	}
	base, err := decodeState(b)
	if err != nil {
		return err
	}
	if base.Seq != seq {
		return errTooOld
	}
	tail, err := l.since(seq + 1)
	if err != nil {
		return err
	}
	state, err := foldFrom(&base, tail)
	if err != nil {
		return err
	}
	l.base, l.tail, l.state, l.cached = base, tail, state, seq
	return nil
}

// fromStart folds the whole log.
func (l *Ledger) fromStart() error {
	events, err := l.since(1)
	if err != nil {
		return err
	}
	l.base, l.tail = newState(), events
	if l.state, err = Fold(events); err != nil {
		return err
	}
	l.shorten()
	return nil
}

// since are the events on disk from number from on.
func (l *Ledger) since(from uint64) ([]Event, error) {
	var events []Event
	if last := l.store.Last(); last >= from {
		events = make([]Event, 0, last-from+1)
	}
	err := l.store.Each(from, func(_ uint64, line []byte) error {
		e, err := Decode(line)
		events = append(events, e)
		return err
	})
	return events, err
}

// cache keeps the base on disk, when that will save the next opening time.
func (l *Ledger) cache() error {
	if l.base.Seq < l.cached+keepTail {
		return nil
	}
	b, err := l.base.encode()
	if err != nil {
		return err
	}
	return l.store.SetCached(l.base.Seq, b)
}

// Notes say in her words what Open put right, such as a data file made anew
// from its journal. Mostly there are none.
func (l *Ledger) Notes() []string {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.store == nil {
		return nil
	}
	return l.store.Notes()
}

// Peek is the state of the data file at path without opening it for writing,
// also while another process has it open. A missing file is an empty State.
func Peek(path string) (State, error) {
	events, err := readLog(path)
	if err != nil {
		return State{}, err
	}
	return Fold(events)
}
