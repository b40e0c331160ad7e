package session

import (
	"testing"
	"time"

	"pgregory.net/rapid"
)

// TestGentle: while it is a guess, what is due moves by a third at most from
// wash to wash, whatever the loads weigh and however quick she is.
func TestGentle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := newState()
		m := &s.Mats[0]
		at := time.Date(2026, 3, 7, 19, 0, 0, 0, time.UTC)
		was := s.Due(FirstMat).After
		if was != usualDue {
			t.Fatalf("at first %d", was)
		}
		heavy := rapid.IntRange(500, 1500).Draw(t, "weight")
		minutes := rapid.IntRange(0, 10).Draw(t, "minutes a step")
		for wash := range rapid.IntRange(1, 20).Draw(t, "washes") {
			for range rapid.IntRange(0, 20).Draw(t, "loads") {
				weight := min(1500, max(500, heavy+rapid.IntRange(-100, 100).Draw(t, "more")))
				m.carry(MatLoad{weight, rapid.IntRange(0, 40).Draw(t, "lifts") == 0})
				work := [Steps]time.Duration{}
				for i := range work {
					work[i] = time.Duration(minutes) * time.Minute
				}
				s.Recent = append(s.Recent, LoadTime{At: at, Pieces: 4, CutLength: 1, Work: work})
			}
			at = at.Add(24 * time.Hour)
			m.wash(&Event{At: at}, 60)
			due := s.Due(FirstMat)
			if !due.Guess {
				return
			}
			if third := max(was/3, 1); due.After < was-third || due.After > was+third {
				t.Fatalf("wash %d: due after %d, and after %d before", wash+1, due.After, was)
			}
			was = due.After
		}
	})
}

// TestLightMat: one early wash of a mat that carried light loads moves it
// hardly at all.
func TestLightMat(t *testing.T) {
	l, id := begin(t, 40, 0)
	for range Steps {
		do(t, l, id, GoOn{})
	}
	do(t, l, id, Wash{})
	s := l.State()
	if due := s.Due(FirstMat); due.After < 8 || due.After > 9 || !due.Guess {
		t.Errorf("%+v", due)
	}
}
