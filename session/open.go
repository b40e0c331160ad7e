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
	l := New(opt)
	opt.Store.Now = l.now
	s, err := store.Open(path, opt.Store)
	if err != nil {
		return nil, err
	}
	err = s.Each(1, func(_ uint64, line []byte) error {
		e, err := Decode(line)
		l.events = append(l.events, e)
		return err
	})
	if err == nil {
		l.state, err = Fold(l.events)
	}
	if err != nil {
		s.Close()
		return nil, fmt.Errorf("reading %s: %w", path, err)
	}
	l.store = s
	return l, nil
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
	lines, err := store.Read(path)
	if err != nil {
		return State{}, err
	}
	events := make([]Event, len(lines))
	for i, line := range lines {
		if events[i], err = Decode(line); err != nil {
			return State{}, fmt.Errorf("reading %s: %w", path, err)
		}
	}
	return Fold(events)
}
