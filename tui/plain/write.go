package plain

import (
	"context"
	"errors"
	"slices"
	"strings"

	"example.org/matside/plan/cutlist"
	"example.org/matside/session"
	"example.org/matside/tui/files"
	"example.org/matside/tui/form"
	"example.org/matside/tui/guide"
	"example.org/matside/tui/words"
)

// Lists is the way to cut lists, for when no quilt is under way.
type Lists struct {
	Read     func(path string) (text string, open func(string) ([]byte, error), err error)
	Write    func(path, text string, was *string) error
	FreeName func(quilt string) string
	// Take takes up the quilt of a cut list, or starts it.
	Take func(ctx context.Context, path string) (session.QuiltID, error)
}

// first asks what to do when no quilt is under way: a cut list by its name,
// or one written here.
func (t *talk) first(ctx context.Context) error {
	for _, l := range t.words.WaysOn() {
		if l != "" {
			t.say(l)
		}
	}
	if t.Lists == nil {
		return errLeft
	}
	for t.id == 0 && t.fail == nil {
		err := t.pick("first", []option{
			{t.words.WayOpen(), func() error { return t.byName(ctx, func(path string) error { return t.take(ctx, path) }) }},
			{t.words.WayWrite(), func() error { return t.write(ctx, form.New()) }},
			{t.words.KeyWriteIn(), func() error { return t.byName(ctx, func(path string) error { return t.edit(ctx, path) }) }},
			{t.words.KeyLeave(), func() error { return errLeft }},
		})
		if err != nil {
			return err
		}
	}
	return t.fail
}

// byName asks for the name of a cut list.
func (t *talk) byName(_ context.Context, do func(path string) error) error {
	t.say(t.words.PlainFileName())
	path, err := t.from.text(t)
	if err != nil || path == "" {
		return err
	}
	return do(path)
}

// take goes on with the quilt of a cut list.
func (t *talk) take(ctx context.Context, path string) error {
	t.say(t.words.Planning())
	id, err := t.Lists.Take(ctx, path)
	if err != nil {
		t.trouble(err)
		return nil
	}
	t.id = id
	return t.do(session.SitDown{})
}

// trouble tells an error, line by line.
func (t *talk) trouble(err error) {
	t.say(t.words.WentWrong())
	for line := range strings.Lines(t.words.Error(err)) {
		t.say(strings.TrimRight(line, "\n"))
	}
}

func (t *talk) edit(ctx context.Context, path string) error {
	text, open, err := t.Lists.Read(path)
	if err != nil {
		t.trouble(err)
		return nil
	}
	return t.write(ctx, form.Of(path, text, open))
}

// write goes through the form until the list is saved, or she goes back.
func (t *talk) write(ctx context.Context, f form.Form) error {
	for t.fail == nil {
		var err error
		if f.Ask != nil {
			f, err = t.ask(f)
		} else {
			var done bool
			if f, done, err = t.sheet(ctx, f); done {
				return err
			}
		}
		if err != nil {
			return err
		}
	}
	return t.fail
}

// ask asks one question of the form.
func (t *talk) ask(f form.Form) (form.Form, error) {
	q := f.Ask.Question()
	t.say(t.words.FormAsk(q.Name, f.About()))
	if hint := t.words.FormHint(q.Name, f.About()); hint != "" {
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
	if err != nil {
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
	line, err := t.from.text(t)
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
	n, err := t.from.choose(t, question{"form", says})
	if err != nil {
		return f, err
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
		n, err := t.from.choose(t, question{"form", says})
		if err != nil || n == 0 {
			return f, err
		}
		f = f.Choose(n - 1 - f.Ask.At).Toggle()
	}
}

// sheet tells the list and asks what to change; done is true when the form is
// over: saved, or left.
func (t *talk) sheet(ctx context.Context, f form.Form) (_ form.Form, done bool, err error) {
	rows := f.Rows()
	says := []string{t.words.KeySeePlan()}
	for _, r := range rows {
		if r.Kind != form.Finish {
			says = append(says, guide.Row(t.words, r))
		}
	}
	says = append(says, t.words.KeyUndo(), t.words.KeyBack())
	n, err := t.from.choose(t, question{"sheet", says})
	switch {
	case err != nil:
		return f, true, err
	case n == 0:
		done, err = t.save(ctx, &f)
		return f, done, err
	case n == len(says)-1:
		return f, true, nil
	case n == len(says)-2:
		f, _ = f.Undo()
		return f, false, nil
	}
	return f.Move(n - 1 - f.At).Enter(), false, nil
}

// save writes the list and takes it up; what is wrong with it is told, and
// the form goes on.
func (t *talk) save(ctx context.Context, f *form.Form) (done bool, err error) {
	if m := f.Mistakes(); len(m) > 0 {
		t.say(t.words.FirstMistake(t.words.Say(m[0].What)))
		return false, nil
	}
	path := f.Path
	if path == "" {
		path = t.Lists.FreeName(f.Quilt())
	}
	text := f.Text()
	switch err := t.Lists.Write(path, text, f.Was); {
	case errors.Is(err, files.ErrChanged):
		t.say(t.words.FileChanged(path))
		path = t.Lists.FreeName(f.Quilt())
		if err := t.Lists.Write(path, text, nil); err != nil {
			t.say(t.words.ListNotSaved(t.words.Error(err)))
			return false, nil
		}
	case err != nil:
		t.say(t.words.ListNotSaved(t.words.Error(err)))
		return false, nil
	}
	f.Path, f.Was = path, &text
	t.say(t.words.SavedAs(path))
	return true, t.take(ctx, path)
}
