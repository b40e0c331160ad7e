package plain

import (
	"errors"
	"path/filepath"
	"slices"

	"example.org/matside/plan/cutlist"
	"example.org/matside/tui/files"
	"example.org/matside/tui/form"
	"example.org/matside/tui/guide"
	"example.org/matside/tui/words"
)

// write goes through the form until she cuts the list, or goes back. What is
// half written is kept at once, should the power fail.
func (t *talk) write(f form.Form) error {
	for t.fail == nil {
		t.form = &f
		before, saved := f.Text(), f.Saved()
		var err error
		done := false
		if f.Ask != nil {
			f, err = t.ask(f)
		} else {
			f, done, err = t.sheet(f)
		}
		if err == nil && (done || f.Text() != before || f.Saved() != saved) {
			err = t.keepForm()
		}
		if done {
			t.form = nil
		}
		if done || err != nil {
			return err
		}
	}
	return t.fail
}

// keepForm keeps the form being written, and forgets one that is saved.
func (t *talk) keepForm() error {
	if t.form == nil || t.Desk == nil {
		return nil
	}
	data, err := t.form.Unsaved()
	if err != nil {
		return err
	}
	return t.Desk.Keep(data)
}

// errBack means that she goes back to the question before.
var errBack = errors.New("back")

// ask asks one question of the form.
func (t *talk) ask(f form.Form) (form.Form, error) {
	q := f.Ask.Question()
	t.say(t.words.FormAsk(q.Name, f.About()))
	hint := t.words.FormHint(q.Name, f.About())
	if q.Kind != form.Mark && q.Name != "count" && hint != "" { // those speak of keys
		t.say(hint)
	}
	var err error
	switch q.Kind {
	case form.Type:
		f, err = t.typed(f)
	case form.Choose:
		f, err = t.chosen(f, q)
	case form.Mark:
		f, err = t.marked(f, q)
	}
	switch {
	case errors.Is(err, errBack):
		return f.Previous(), nil
	case err != nil:
		return f, err
	}
	f = f.Answer()
	if m, wrong := f.Wrong(); wrong && f.Ask.Tried {
		t.mistake(m)
	}
	return f, nil
}

func (t *talk) mistake(m cutlist.Mistake) {
	t.say(words.Full(t.words.Say(m.What)))
	if !m.Hint.Silent() {
		t.say(words.Full(t.words.Say(m.Hint)))
	}
}

// typed takes a line; Enter alone keeps what stands there.
func (t *talk) typed(f form.Form) (form.Form, error) {
	if now := f.Ask.Field.Text(); now != "" {
		t.say(t.words.PlainNow(now))
	}
	t.say(t.words.PlainZero())
	line, err := t.from.text(t)
	if err == nil && line == "0" {
		return f, errBack
	}
	if err == nil && line != "" {
		f = f.Edit(func(form.Field) form.Field { return form.Field{}.Type(line) })
	}
	return f, err
}

// chosen takes one of the choices, the usual one first.
func (t *talk) chosen(f form.Form, q form.Question) (form.Form, error) {
	order := []int{f.Ask.At}
	for i := range q.Options {
		if i != f.Ask.At {
			order = append(order, i)
		}
	}
	var says []string
	for _, i := range order {
		says = append(says, t.words.FormOption(q.Options[i]))
	}
	n, err := t.from.choose(t, question{"form", append(says, t.words.KeyBack())})
	switch {
	case err != nil:
		return f, err
	case n == len(order):
		return f, errBack
	}
	f = f.Choose(order[n] - f.Ask.At)
	if p, ok := f.Preview(); ok && p.Finished != "" && q.Name == "finished" {
		t.say(t.words.Odd(p.Finished, t.words.SizeText(p.Line.Size), t.words.SizeText(p.Book), p.Ruler))
	}
	return f, nil
}

// marked takes any number of the choices, one after the other.
func (t *talk) marked(f form.Form, q form.Question) (form.Form, error) {
	for {
		says := []string{t.words.KeyNextQuestion()}
		for _, o := range q.Options {
			word := t.words.FormOption(o)
			if slices.Contains(f.Ask.Marks, o) {
				word += " (" + t.words.OnOff(true) + ")"
			}
			says = append(says, word)
		}
		n, err := t.from.choose(t, question{"form", append(says, t.words.KeyBack())})
		switch {
		case err != nil || n == 0:
			return f, err
		case n == len(says):
			return f, errBack
		}
		f = f.Choose(n - 1 - f.Ask.At).Toggle()
	}
}

// sheet tells the list and asks what to change; done is true when the form is
// over: saved, or left.
func (t *talk) sheet(f form.Form) (_ form.Form, done bool, err error) {
	rows := f.Rows()
	says := []string{t.words.KeySeePlan()}
	for _, r := range rows {
		if r.Kind != form.Finish {
			row := guide.Row(t.words, r)
			if f.Parked(r) {
				row += " (" + t.words.RowUnfinished() + ")"
			}
			says = append(says, row)
		}
	}
	says = append(says, t.words.KeyUndo(), t.words.KeyTakeOff(), t.words.KeyBack())
	n, err := t.from.choose(t, question{"sheet", says})
	switch {
	case err != nil:
		return f, true, err
	case n == 0:
		return t.save(f)
	case n == len(says)-1:
		return f, true, nil
	case n == len(says)-2:
		f, err = t.takeOff(f)
		return f, false, err
	case n == len(says)-3:
		undone, ok := f.Undo()
		if !ok {
			t.say(t.words.NothingToUndo())
		}
		return undone, false, nil
	}
	return f.Move(n - 1 - f.At).Enter(), false, nil
}

// takeOff asks which row to take off the list.
func (t *talk) takeOff(f form.Form) (form.Form, error) {
	says := []string{t.words.KeyBack()}
	var at []int
	for i, r := range f.Rows() {
		if r.Kind == form.Statement || f.Parked(r) {
			says, at = append(says, guide.Row(t.words, r)), append(at, i)
		}
	}
	n, err := t.from.choose(t, question{"off", says})
	if err != nil || n == 0 {
		return f, err
	}
	f = f.Move(at[n-1] - f.At)
	if refused := guide.NotOff(t.words, f, f.Row()); refused != "" {
		t.say(refused)
		return f, nil
	}
	if f.Parked(f.Row()) {
		return f.Drop(), nil
	}
	return f.Remove(), nil
}

// save writes the list, tells what it comes to, and takes it up; what is
// wrong with it is told, and the form goes on.
func (t *talk) save(f form.Form) (_ form.Form, done bool, err error) {
	if len(f.Park) > 0 {
		t.say(t.words.UnfinishedFirst())
		return f, false, nil
	}
	if m := f.Mistakes(); len(m) > 0 {
		t.say(t.words.FirstMistake(t.words.Say(m[0].What)))
		return f, false, nil
	}
	path, was := f.Path, f.Was
	if path == "" {
		if path, err = t.newName(f); err != nil {
			return f, false, err
		}
	}
	if was == nil || *was != f.Text() {
		f, err = t.writeTo(f, path, was)
	}
	if err != nil || !f.Saved() {
		return f, false, err
	}
	return t.planned(f)
}

// newName asks where a new list is to be saved.
func (t *talk) newName(f form.Form) (string, error) {
	free := t.Desk.FreeName(f.Quilt())
	t.say(t.words.SaveAs())
	t.say(t.words.PlainNow(free))
	name, err := t.from.text(t)
	switch {
	case err != nil || name == "":
		return free, err
	case filepath.Ext(name) == "":
		name += files.Ext
	}
	return name, nil
}

// writeTo writes the list; where the file is not what she opened, she says
// what is to become of hers.
func (t *talk) writeTo(f form.Form, path string, was *string) (form.Form, error) {
	text := f.Text()
	err := t.Desk.Write(path, text, was)
	switch {
	case errors.Is(err, files.ErrChanged):
		t.say(t.words.FileChanged(path))
	case errors.Is(err, files.ErrThere):
		t.say(t.words.FileThere(path))
	case err != nil:
		t.say(t.words.ListNotSaved(t.words.Error(err)))
		return f, nil
	default:
		f.Path, f.Was = path, &text
		t.say(t.words.SavedAs(path))
		return f, nil
	}
	t.say(t.words.WhatToDo())
	options := []string{t.words.KeySaveOther(), t.words.KeyBackToForm()}
	if errors.Is(err, files.ErrChanged) {
		options = append(options, t.words.KeySaveOver(), t.words.KeyTakeTheirs())
	}
	n, err := t.from.choose(t, question{"clash", options})
	switch {
	case err != nil || n == 1:
		return f, err
	case n == 0:
		if path, err = t.newName(f); err != nil {
			return f, err
		}
		return t.writeTo(f, path, nil)
	}
	theirs, open, err := t.Desk.Read(path)
	if err != nil {
		t.trouble(err)
		return f, nil
	}
	if n == 3 {
		return form.Of(path, theirs, open), nil
	}
	return t.writeTo(f, path, &theirs)
}

// planned tells what a saved list comes to, and starts it or goes back.
func (t *talk) planned(f form.Form) (_ form.Form, done bool, err error) {
	t.say(t.words.Planning())
	q, err := t.Desk.Plan(t.ctx, f.Path, f.Text(), t.telling())
	if err != nil {
		t.trouble(err)
		return f, false, nil
	}
	loads, fabrics := guide.Plan(t.words, q)
	for _, told := range append(loads, fabrics...) {
		t.say(told.Says)
	}
	options := []string{t.words.KeyStartCutting(), t.words.KeyBackToForm()}
	if len(q.Loads) == 0 {
		options = options[1:]
	}
	n, err := t.from.choose(t, question{"planned", options})
	if err != nil || n == len(options)-1 {
		return f, false, err
	}
	before := t.id
	err = t.take(f.Path)
	return f, t.id != before, err
}
