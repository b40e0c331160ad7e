package session

import (
	"time"

	"example.org/matside/plan/length"
)

// carry notes one load peeled off the mat.
func (m *Mat) carry(l MatLoad) {
	m.Since++
	m.Loads++
	m.Weighed += l.Weight
	r := &m.Runs[len(m.Runs)-1]
	r.Loads = append(r.Loads, l)
}

// wash begins a new run.
func (m *Mat) wash(e *Event, dry int) {
	m.Since, m.Weighed = 0, 0
	m.Washes++
	m.Washed = e.At
	m.DryAt = e.At.Add(time.Duration(dry) * time.Minute)
	m.Runs = append(m.Runs, Run{From: e.At})
}

// renameMat renames it wherever it is spoken of.
func (s *State) renameMat(from, to string) {
	for i := range s.Mats {
		if s.Mats[i].Name == from {
			s.Mats[i].Name = to
		}
	}
	for _, q := range s.Quilts {
		if q.Mat == from {
			q.Mat = to
		}
		for i := range q.Loads {
			if q.Loads[i].Mat == from {
				q.Loads[i].Mat = to
			}
		}
	}
}

// cut notes one load cut by the blade.
func (b *Blade) cut(l BladeLoad) {
	if len(b.Runs) == 0 {
		b.Runs = [][]BladeLoad{nil}
	}
	last := &b.Runs[len(b.Runs)-1]
	*last = append(*last, l)
}

// The minutes we start from. Common practice, no source: a rinsed mat stood
// up takes about an hour to dry, washing it a few minutes.
const (
	usualDry  = 60
	usualWash = 8
)

// A pause after 50 minutes of handling, 10 minutes long: "5-10 min after
// 50-60 min" of UK and Northern Ireland advice on work at screens
// (nibusinessinfo.co.uk; hse.gov.uk/contact/faqs/vdubreaks.htm). Office
// figures, not measured on quilters: a default she can change.
const (
	usualPauseAfter = 50
	usualPause      = 10
)

func or(n, usual int) int {
	if n == 0 {
		return usual
	}
	return n
}

func (h Habits) dry() int        { return or(h.Dry, usualDry) }
func (h Habits) wash() int       { return or(h.Wash, usualWash) }
func (h Habits) pause() int      { return or(h.Pause, usualPause) }
func (h Habits) pauseAfter() int { return or(h.PauseAfter, usualPauseAfter) }

// usualSize is a mat's, where she has said nothing else.
const usualSize = 12 * length.Inch

// Size is how wide and high the mat is.
func (m *Mat) Size() (w, h length.Len) {
	if m.Width == 0 || m.Height == 0 {
		return usualSize, usualSize
	}
	return m.Width, m.Height
}
