package form

import (
	"encoding/json"
	"fmt"

	"example.org/matside/plan/cutlist/edit"
)

// kept is an unfinished form as it is kept.
type kept struct {
	Format int
	Path   string
	Was    *string
	Text   string
	At     int
	Ask    *Asking
	Park   []Asking
}

const format = 1

// Keep is the form as bytes, for a file of its own: Restore makes the same
// form of them, but for what can be undone.
func (f Form) Keep() ([]byte, error) {
	return json.MarshalIndent(kept{format, f.Path, f.Was, f.Text(), f.At, f.Ask, f.Park}, "", " ")
}

// Unsaved is Keep for what is not saved, nil where all is.
func (f Form) Unsaved() ([]byte, error) {
	if f.Saved() {
		return nil, nil
	}
	return f.Keep()
}

// Restore is the form that was kept. What does not fit together any more is
// left out, the text of the list never.
func Restore(data []byte) (Form, error) {
	var k kept
	if err := json.Unmarshal(data, &k); err != nil {
		return Form{}, fmt.Errorf("the unfinished form can't be read: %w", err)
	}
	if k.Format != format {
		return Form{}, fmt.Errorf("the unfinished form was kept by another matside")
	}
	f := Form{Path: k.Path, Was: k.Was, Doc: edit.Of(k.Text), At: k.At}
	for _, a := range k.Park {
		if f.fits(a) {
			f.Park = append(f.Park, a)
		}
	}
	if k.Ask != nil && f.fits(*k.Ask) {
		f.Ask = k.Ask
	}
	return f.Move(0), nil
}

// fits reports that what is half answered can go on over the text.
func (f *Form) fits(a Asking) bool {
	if a.Line != Fresh && (a.Line < 0 || a.Line >= f.Doc.Len()) || a.Step < 0 || a.Step >= len(a.Questions()) {
		return false
	}
	n := len(a.Question().Options)
	return a.At >= 0 && a.At < max(n, 1)
}
