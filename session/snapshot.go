package session

import (
	"encoding/json"
	"fmt"
	"time"

	"example.org/matside/plan/length"
)

// A snapshot is a state as the store caches it. It may be thrown away at any
// time: the log makes it anew. A quilt that is done is kept in brief.

// snapshotVersion goes up whenever State, or what Fold makes of an event,
// changes; a snapshot of another version is not read.
const snapshotVersion = 3

type snapshot struct {
	Version int
	State   *State
}

// encode is deterministic: two states are equal when their bytes are, but for
// what a brief quilt leaves out.
func (s *State) encode() ([]byte, error) { return json.Marshal(snapshot{snapshotVersion, s}) }

func decodeState(b []byte) (State, error) {
	var s State
	snap := snapshot{State: &s}
	if err := json.Unmarshal(b, &snap); err != nil {
		return State{}, err
	}
	if snap.Version != snapshotVersion {
		return State{}, fmt.Errorf("session: a snapshot of version %d", snap.Version)
	}
	return s, nil
}

// bareQuilt is a Quilt without its methods.
type bareQuilt Quilt

type quiltWire struct {
	bareQuilt
	Loads []loadState `json:",omitempty"` // these two stand before the fields of the same name
	Stock []panelWire `json:",omitempty"`
}

type loadState struct {
	Plan    loadWire
	Edition int                  `json:",omitempty"`
	Recut   bool                 `json:",omitempty"`
	Anew    []int                `json:",omitempty"`
	As      []Copy               `json:",omitempty"`
	Skipped bool                 `json:",omitempty"`
	Done    bool                 `json:",omitempty"`
	Mat     string               `json:",omitempty"`
	Spoiled []int                `json:",omitempty"`
	Lifted  bool                 `json:",omitempty"`
	Ragged  bool                 `json:",omitempty"`
	At      time.Time            `json:",omitzero"`
	Work    [Steps]time.Duration `json:",omitzero"`
	Broken  [Steps]bool          `json:",omitzero"`
}

// MarshalJSON writes a quilt as the snapshot keeps it.
func (q *Quilt) MarshalJSON() ([]byte, error) {
	if q.Standing == Done || q.Standing == Gone {
		q = q.brief()
	}
	w := quiltWire{bareQuilt: bareQuilt(*q)}
	for i := range q.Loads {
		l := &q.Loads[i]
		w.Loads = append(w.Loads, loadState{loadToWire(&l.Load), l.Edition, l.Recut, l.Anew, l.As, l.Skipped, l.Done, l.Mat,
			l.Spoiled, l.Lifted, l.Ragged, l.At, l.Work, l.Broken})
	}
	for i := range q.Stock {
		w.Stock = append(w.Stock, panelToWire(&q.Stock[i]))
	}
	return json.Marshal(w)
}

// brief is a quilt that is done without its lists, loads and fabric.
func (q *Quilt) brief() *Quilt {
	if q.Brief {
		return q
	}
	b := *q
	b.Brief, b.Leaves, b.Unit, b.Listed = true, q.Leftovers(), q.List().Unit, q.List().Quilt
	b.Loads, b.Stock, b.Editions, b.LineDone = nil, nil, nil, nil
	b.Buy, b.Short, b.NoFabric, b.Again = nil, nil, nil, Again{}
	return &b
}

// UnmarshalJSON reads it back.
func (q *Quilt) UnmarshalJSON(b []byte) error {
	var w quiltWire
	if err := json.Unmarshal(b, &w); err != nil {
		return err
	}
	*q = Quilt(w.bareQuilt)
	for i := range w.Loads {
		l := &w.Loads[i]
		planned, err := loadFromWire(&l.Plan)
		if err != nil {
			return err
		}
		q.Loads = append(q.Loads, Load{planned, planned.Number, l.Edition, l.Recut, l.Anew, l.As, l.Skipped, l.Done, l.Mat,
			l.Spoiled, l.Lifted, l.Ragged, l.At, l.Work, l.Broken})
	}
	for i := range w.Stock {
		q.Stock = append(q.Stock, panelFromWire(&w.Stock[i]))
	}
	return nil
}

// MarshalJSON writes a load on a mat as its weight, below 0 when it lifted.
func (l MatLoad) MarshalJSON() ([]byte, error) { return json.Marshal(signed(l.Weight, l.Lifted)) }

// UnmarshalJSON reads it back.
func (l *MatLoad) UnmarshalJSON(b []byte) error {
	var n int
	err := json.Unmarshal(b, &n)
	l.Weight, l.Lifted = max(n, -n), n < 0
	return err
}

// MarshalJSON writes a load of the blade as its length, below 0 when ragged.
func (l BladeLoad) MarshalJSON() ([]byte, error) { return json.Marshal(signed(l.Length, l.Ragged)) }

// UnmarshalJSON reads it back.
func (l *BladeLoad) UnmarshalJSON(b []byte) error {
	var n length.Len
	err := json.Unmarshal(b, &n)
	l.Length, l.Ragged = max(n, -n), n < 0
	return err
}

func signed[T ~int | ~int64](n T, minus bool) T {
	if minus {
		return -n
	}
	return n
}
