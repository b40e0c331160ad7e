package session

import (
	"math"
	"time"

	"example.org/matside/session/pace"
	"example.org/matside/session/wear"
)

// Status is what `matside status --json` prints. Fields are only ever added.
type Status struct {
	Quilt         string      `json:"quilt"`        // its name; "" without a quilt
	Number        QuiltID     `json:"quilt_number"` // as `matside shelf` lists it
	Step          string      `json:"step"`         // "fabric" to "peel", "finished", "short of fabric", or "" without a quilt
	Load          int         `json:"load"`         // the place in the queue, from 1; 0 when finished
	LoadsDone     int         `json:"loads_done"`
	LoadsLeft     int         `json:"loads_left"`
	PiecesAsked   int         `json:"pieces_asked"` // done + left + waiting + short, always
	PiecesDone    int         `json:"pieces_done"`
	PiecesLeft    int         `json:"pieces_left"`    // on loads to come, recuts not counted
	PiecesWaiting int         `json:"pieces_waiting"` // spoiled, to be cut again
	PiecesShort   int         `json:"pieces_short"`   // no fabric for them
	PiecesSpoiled int         `json:"pieces_spoiled"` // spoiled ever, cut again or not
	TimeLeft      Minutes     `json:"minutes_left"`   // breaks left out
	Mat           string      `json:"mat"`            // the mat in use
	Mats          []MatStatus `json:"mats"`
	Blade         BladeStatus `json:"blade"`
	Finished      bool        `json:"finished"`
}

// Minutes is a range of time: eight evenings in ten fall into it.
type Minutes struct {
	Low    int  `json:"low"`
	Likely int  `json:"likely"`
	High   int  `json:"high"`
	Guess  bool `json:"is_a_guess"` // hardly any times of her own yet
}

// Chance is a range too, from 0 to 1: four times in five it holds.
type Chance struct {
	Low    float64 `json:"low"`
	Likely float64 `json:"likely"`
	High   float64 `json:"high"`
}

// MatStatus is how a mat stands.
type MatStatus struct {
	Name           string  `json:"name"`
	LoadsSinceWash int     `json:"loads_since_wash"` // plainly counted
	WearSinceWash  float64 `json:"wear_since_wash"`  // in plain loads, heavy ones counted for more, anew after adhesive
	LoadsUntilDue  int     `json:"loads_until_due"`  // below 0: overdue
	DueAfter       int     `json:"due_after"`
	Own            bool    `json:"due_is_her_own"` // set by her
	Guess          bool    `json:"due_is_a_guess"` // not enough lifts of her own yet
	NextLift       Chance  `json:"next_load_lifts"`
	Lifted         bool    `json:"lifted_since_wash"`
	NewMat         bool    `json:"time_for_a_new_mat"`
	Washes         int     `json:"washes"`
	Refreshes      int     `json:"refreshes"` // with temporary adhesive
	LoadsEver      int     `json:"loads_ever"`
	AgeDays        int     `json:"age_days"`  // -1: it was there before the log began
	DryAt          string  `json:"dry_at"`    // RFC 3339; "" when it is dry
	Width          string  `json:"width_mm"`  // exact, in millimetres
	Height         string  `json:"height_mm"` // the same
}

// BladeStatus is how the blade stands.
type BladeStatus struct {
	Metres     float64 `json:"metres"` // cut since it was changed
	Changes    int     `json:"changes"`
	NextRagged Chance  `json:"next_load_ragged"`
	Ragged     bool    `json:"ragged_since_change"`
	Change     bool    `json:"change_it"`
}

// Status of a quilt as of the last event, or of the mats alone when there is
// none.
func (s *State) Status(id QuiltID) Status { return s.StatusAt(id, s.At) }

// StatusAt is Status at a later time.
func (s *State) StatusAt(id QuiltID, now time.Time) Status {
	st := Status{Mats: []MatStatus{}, Blade: s.bladeStatus()}
	for _, m := range s.MatsThere() {
		st.Mats = append(st.Mats, s.matStatus(&m, now))
	}
	q := s.Quilt(id)
	if q == nil {
		return st
	}
	st.Quilt, st.Number, st.Mat = q.Name, q.ID, q.Mat
	st.LoadsDone, st.LoadsLeft = q.LoadsDone(), q.LoadsLeft()
	p := q.Pieces
	st.PiecesAsked, st.PiecesDone, st.PiecesLeft = p.Asked, p.Done, p.Left
	st.PiecesWaiting, st.PiecesShort, st.PiecesSpoiled = p.Waiting, p.Short, p.Spoiled
	st.TimeLeft = minutesOf(s.TimeLeft(id, now))
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

func (s *State) matStatus(m *Mat, now time.Time) MatStatus {
	a := s.Advise(m.Name)
	st := MatStatus{Name: m.Name, LoadsSinceWash: m.Since, WearSinceWash: rounded(a.Age), LoadsUntilDue: a.Left, DueAfter: a.After,
		Own: a.Own, Guess: a.Guess, NextLift: chanceOf(a.Next), Lifted: a.Lifted, NewMat: a.NewMat, Washes: m.Washes,
		Refreshes: m.Refreshes, LoadsEver: m.Loads, AgeDays: -1}
	if !m.Came.IsZero() {
		st.AgeDays = int(now.Sub(m.Came) / (24 * time.Hour))
	}
	if now.Before(m.DryAt) {
		st.DryAt = m.DryAt.Format(time.RFC3339)
	}
	w, h := m.Size()
	st.Width, st.Height = w.MM(), h.MM()
	return st
}

func (s *State) bladeStatus() BladeStatus {
	a := s.AdviseBlade()
	return BladeStatus{Metres: rounded(metres(a.Length)), Changes: s.Blade.Changes, NextRagged: chanceOf(a.Next), Ragged: a.Ragged, Change: a.Change}
}

func minutesOf(r pace.Range) Minutes {
	whole := func(d time.Duration) int { return int(d.Round(time.Minute) / time.Minute) }
	return Minutes{whole(r.Low), whole(r.Mid), whole(r.High), r.Guess}
}

func chanceOf(r wear.Range) Chance { return Chance{rounded(r.Low), rounded(r.Mid), rounded(r.High)} }

// rounded keeps three places: more would be a promise.
func rounded(x float64) float64 { return math.Round(x*1000) / 1000 }
