package session

// Status is what `matside status --json` prints.
type Status struct {
	Quilt         string      `json:"quilt"`
	Step          string      `json:"step"` // "fabric" to "peel", "finished", or "" without a quilt
	Load          int         `json:"load"` // the place in the queue, from 1; 0 when finished
	LoadsDone     int         `json:"loads_done"`
	LoadsLeft     int         `json:"loads_left"`
	PiecesAsked   int         `json:"pieces_asked"` // done + left + waiting + short, always
	PiecesDone    int         `json:"pieces_done"`
	PiecesLeft    int         `json:"pieces_left"`    // on loads to come, recuts not counted
	PiecesWaiting int         `json:"pieces_waiting"` // spoiled, to be cut again
	PiecesShort   int         `json:"pieces_short"`   // no fabric for them
	PiecesSpoiled int         `json:"pieces_spoiled"` // spoiled ever, cut again or not
	Mat           string      `json:"mat"`            // the mat in use
	Mats          []MatStatus `json:"mats"`
	Finished      bool        `json:"finished"`
}

// MatStatus is how a mat stands.
type MatStatus struct {
	Name           string `json:"name"`
	LoadsSinceWash int    `json:"loads_since_wash"`
	LoadsUntilDue  int    `json:"loads_until_due"` // below 0: overdue
	DueAfter       int    `json:"due_after"`
	Guess          bool   `json:"due_is_a_guess"` // no data of her own yet
	Washes         int    `json:"washes"`
}

// Status of a quilt, or of the mats alone when there is none.
func (s *State) Status(id QuiltID) Status {
	st := Status{Mats: []MatStatus{}}
	for i := range s.Mats {
		if m := &s.Mats[i]; !m.Retired {
			d := s.Due(m.Name)
			st.Mats = append(st.Mats, MatStatus{m.Name, m.Since, d.Left, d.After, d.Guess, m.Washes})
		}
	}
	q := s.Quilt(id)
	if q == nil {
		return st
	}
	st.Quilt, st.Mat = q.Name, q.Mat
	st.LoadsDone, st.LoadsLeft = q.LoadsDone(), q.LoadsLeft()
	p := q.Pieces
	st.PiecesAsked, st.PiecesDone, st.PiecesLeft = p.Asked, p.Done, p.Left
	st.PiecesWaiting, st.PiecesShort, st.PiecesSpoiled = p.Waiting, p.Short, p.Spoiled
	st.Finished = q.Finished()
	switch {
	case q.Finished():
		st.Step = "finished"
	case q.Current != 0:
		st.Step, st.Load = q.Step.String(), q.Place()
	default:
		st.Step = "short of fabric" // every load is done, but pieces are missing
	}
	return st
}
