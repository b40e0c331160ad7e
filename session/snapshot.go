package session

import (
	"encoding/json"
	"fmt"
)

// A snapshot is a state as the store caches it. It may be thrown away at any
// time: the log makes it anew.

// snapshotVersion goes up whenever State, or what Fold makes of an event,
// changes; a snapshot of another version is not read.
const snapshotVersion = 1

type snapshot struct {
	Version int
	State   *State
}

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
