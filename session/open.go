package session

import (
	"bytes"
	"errors"
	"fmt"
	"slices"

	"example.org/matside/plan/say"
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
	if l.stream() == nil {
		return nil
	}
	events, err := l.since(1) // this way an error is told as Fold tells it
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

// window is how many events stream keeps at hand at most: far more than she
// ever takes back.
const window = 16 * keepTail

// errStream says that stream has come upon something that only Fold can judge.
var errStream = errors.New("session: not to be folded as it is read")

// stream folds the log as it is read, so that a long one takes little memory:
// first it looks which events are taken back, then it folds all the others. A
// quilt that is done is kept in brief, as a snapshot keeps it.
func (l *Ledger) stream() error {
	dead, by, err := l.takenBack()
	if err != nil {
		return err
	}
	base, tail := newState(), make([]Event, 0, window)
	fold := func(n int) error {
		if err := base.applyAll(tail[:n], dead); err != nil {
			return err
		}
		for i, q := range base.Quilts {
			if q.Standing == Done || q.Standing == Gone {
				base.Quilts[i] = q.brief()
			}
		}
		tail = append(tail[:0], tail[n:]...)
		return nil
	}
	err = l.store.Each(1, func(seq uint64, line []byte) error {
		e, err := Decode(line)
		if err != nil {
			return err
		}
		if quilt, is := by[seq]; is && (!canTakeBack(e.Content) || e.Quilt != quilt) {
			return errStream
		}
		if tail = append(tail, e); len(tail) < window {
			return nil
		}
		return fold(window / 2)
	})
	if err != nil {
		return err
	}
	if n := cutAt(tail); n > 0 {
		if err := fold(n); err != nil {
			return err
		}
	}
	state, err := foldFrom(&base, tail)
	if err != nil {
		return err
	}
	l.base, l.tail, l.state = base, slices.Clone(tail), state
	return nil
}

// takenBack finds the events that a later one takes back, and of which quilt
// it is.
func (l *Ledger) takenBack() (dead map[uint64]bool, by map[uint64]QuiltID, err error) {
	dead, by = map[uint64]bool{}, map[uint64]QuiltID{}
	undone := []byte(`"kind":"undone"`)
	err = l.store.Each(1, func(seq uint64, line []byte) error {
		if !bytes.Contains(line, undone) {
			return nil
		}
		e, err := Decode(line)
		if err != nil {
			return err
		}
		u, ok := e.Content.(Undone)
		if !ok {
			return nil // a name she gave to something
		}
		if u.Target >= seq || dead[u.Target] {
			return errStream
		}
		dead[u.Target], by[u.Target] = true, e.Quilt
		return nil
	})
	return dead, by, err
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
func (l *Ledger) Notes() []say.Sentence {
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
	if s, err := peekCached(path); err == nil {
		return s, nil
	}
	events, err := readLog(path)
	if err != nil {
		return State{}, err
	}
	return Fold(events)
}

// peekCached folds the events since the cached base. Any error means that it
// is of no use.
func peekCached(path string) (State, error) {
	seq, b, lines, ok := store.ReadSince(path)
	if !ok {
		return State{}, errTooOld
	}
	base, err := decodeState(b)
	if err != nil {
		return State{}, err
	}
	if base.Seq != seq {
		return State{}, errTooOld
	}
	events := make([]Event, len(lines))
	for i, line := range lines {
		if events[i], err = Decode(line); err != nil {
			return State{}, err
		}
	}
	return foldFrom(&base, events)
}
