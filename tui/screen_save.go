package tui

import (
	"context"
	"errors"
	"path/filepath"

	"example.org/matside/plan/queue"
	"example.org/matside/plan/say"
	"example.org/matside/tui/canvas"
	"example.org/matside/tui/files"
	"example.org/matside/tui/form"
	"example.org/matside/tui/guide"
)

// save saves a list: a new one is asked a name for first.
func (s sheet) save(v view) action {
	if s.form.Path == "" {
		return show{saveAs{s, form.Filled(v.desk.FreeName(s.form.Quilt()))}}
	}
	return s.write(v, s.form.Path, s.form.Was)
}

// written is what became of a list: the sheet as it is saved now, or why not.
type written struct {
	sheet sheet
	path  string
	err   error
}

// write writes the list and then plans it.
func (s sheet) write(v view, path string, was *string) action {
	if was != nil && *was == s.form.Text() && path == s.form.Path {
		return s.planIt(v)
	}
	if filepath.Ext(path) == "" {
		path += files.Ext
	}
	next := s
	text := s.form.Text()
	next.form.Path, next.form.Was = path, &text
	desk := v.desk
	return both{show{writing{s}}, ask{func() any {
		if err := desk.Write(path, text, was); err != nil {
			return written{s, path, err}
		}
		return written{next, path, keepIn(desk, next.form)}
	}}}
}

// writing is the sheet while it is being written.
type writing struct{ sheet }

func (s writing) typing(view) bool          { return false }
func (s writing) bindings(v view) []binding { return []binding{v.leaveKey(), v.sleepKey()} }
func (s writing) told(v view, answer any) action {
	w, ok := answer.(written)
	if !ok {
		return show{s.sheet}
	}
	switch {
	case errors.Is(w.err, files.ErrChanged), errors.Is(w.err, files.ErrThere):
		return show{clash{s.sheet, w.path, errors.Is(w.err, files.ErrThere)}}
	case w.err != nil:
		return show{trouble{lines: []string{v.words.ListNotSaved(plainError(v.words, w.err))}, under: s.sheet}}
	}
	return w.sheet.planIt(v)
}

// saveAs asks where a new list is to be saved.
type saveAs struct {
	sheet sheet
	field form.Field
}

func (s saveAs) kept() *form.Form { return &s.sheet.form }
func (saveAs) typing(view) bool   { return true }
func (s saveAs) typed(_ view, text string) action {
	s.field = s.field.Type(text)
	return show{s}
}

func (s saveAs) bindings(v view) []binding {
	edit := func(name, key string, change func(form.Field) form.Field) binding {
		return binding{name: name, keys: []string{key}, kind: moving, do: func() action {
			s.field = change(s.field)
			return show{s}
		}}
	}
	on := binding{name: "on", keys: []string{"enter", "ctrl+j"}, key: "Enter", says: v.words.KeySave(), do: func() action { return s.sheet.write(v, s.field.Text(), nil) }}
	if s.field.Value() == "" {
		on.refused = v.words.SaveAs()
	}
	back := v.backTo(s.sheet)
	back.keys, back.key = []string{"esc"}, "Esc"
	erase := edit("erase", "backspace", form.Field.Erase)
	erase.key, erase.says = "Backspace", v.words.KeyErase()
	leave := v.leaveKey()
	leave.key = "ctrl+c"
	return []binding{on, back, erase, edit("delete", "delete", form.Field.Delete), edit("left", "left", form.Field.Left),
		edit("right", "right", form.Field.Right), edit("home", "home", form.Field.Home), edit("end", "end", form.Field.End), leave, v.sleepKey()}
}

func (saveAs) title(v view) string   { return v.words.SaveTitle() }
func (saveAs) caution(v view) string { return "" }
func (s saveAs) body(v view, c *canvas.Canvas) {
	c.Text(1, 0, v.words.SaveAs(), strong)
	c.Text(1, 1, canvas.Fit(v.words.SaveHint(), c.W-2), quiet)
	drawField(c, 3, s.field)
}

// clash is when the file is not what she opened, or another is in the way.
type clash struct {
	sheet sheet
	path  string
	there bool // a file nobody read
}

func (s clash) kept() *form.Form { return &s.sheet.form }
func (s clash) bindings(v view) []binding {
	other := binding{name: "on", keys: []string{"enter", "space", "1", "ctrl+j"}, key: "Enter", says: v.words.KeySaveOther(),
		do: func() action { return show{saveAs{s.sheet, form.Filled(v.desk.FreeName(s.sheet.form.Quilt()))}} }}
	all := []binding{other, v.backTo(s.sheet)}
	if !s.there {
		over := binding{name: "over", keys: []string{"o"}, key: "o", says: v.words.KeySaveOver(), do: func() action { return s.over(v) }}
		theirs := binding{name: "theirs", keys: []string{"d"}, key: "d", says: v.words.KeyTakeTheirs(), do: func() action { return v.openForm(s.path, s.sheet.under) }}
		all = append(all, over, theirs)
	}
	return append(all, v.helpKey(s), v.leaveKey(), v.lookKey(), v.sleepKey())
}

// over saves hers over what the file holds now.
func (s clash) over(v view) action {
	desk, path := v.desk, s.path
	next := s.sheet
	text := next.form.Text()
	next.form.Was = &text
	return both{show{writing{s.sheet}}, ask{func() any {
		now, _, err := desk.Read(path)
		if err == nil {
			err = desk.Write(path, text, &now)
		}
		if err != nil {
			return written{s.sheet, path, err}
		}
		return written{next, path, keepIn(desk, next.form)}
	}}}
}

func (clash) title(v view) string   { return v.words.SaveTitle() }
func (clash) caution(v view) string { return "" }
func (s clash) body(v view, c *canvas.Canvas) {
	says := v.words.FileChanged(filepath.Base(s.path))
	if s.there {
		says = v.words.FileThere(filepath.Base(s.path))
	}
	y := 0
	for _, l := range wrapped([]line{{says, warn}, {}, {v.words.WhatToDo(), strong}, {}}, c.W-2) {
		c.Text(1, y, l.text, l.style)
		y++
	}
	const keys = 12
	for _, b := range s.bindings(v) {
		if b.key == "" || b.name == "help" || b.name == "leave" || b.name == "look" || b.name == "sleep" {
			continue
		}
		c.Text(1, y, v.words.Key(b.key), accent)
		c.Text(1+keys, y, canvas.Fit(b.says, c.W-keys-2), text)
		c.Zone(0, y, c.W, 1, b.name)
		y++
	}
}

// planIt plans a saved list and shows what it comes to.
func (s sheet) planIt(v view) action {
	desk, path, text := v.desk, s.form.Path, s.form.Text()
	return begin{job{name: v.words.Planning(),
		do: func(ctx context.Context, tell func(say.Sentence)) any {
			q, err := desk.Plan(ctx, path, text, tell)
			if err != nil {
				return err
			}
			return q
		},
		then: func(v view, answer any) action {
			switch a := answer.(type) {
			case *queue.Queue:
				return show{planned{s, a, 0}}
			case error:
				return show{trouble{lines: []string{v.words.WentWrong(), plainError(v.words, a)}, under: s}}
			}
			return show{s}
		}}}
}

// planned is what a list just written comes to.
type planned struct {
	sheet sheet
	queue *queue.Queue
	page  int
}

func (s planned) kept() *form.Form { return &s.sheet.form }
func (s planned) bindings(v view) []binding {
	on := binding{name: "on", keys: onKeys, key: "Enter", says: v.words.KeyStartCutting(), do: func() action { return v.cut(s.sheet.form.Path, s) }}
	if len(s.queue.Loads) == 0 {
		on.refused = v.words.PlanNothing()
	}
	back := v.backTo(s.sheet)
	back.says = v.words.KeyBackToForm()
	turned := s
	turned.page++
	return []binding{on, back, {name: "page", keys: []string{"n", "down", "pgdown"}, kind: moving, do: func() action { return show{turned} }},
		v.helpKey(s), v.leaveKey(), v.lookKey(), v.sleepKey()}
}

func (s planned) title(v view) string { return v.words.PlanTitle(s.queue.List.Quilt) }
func (planned) caution(v view) string { return "" }
func (s planned) body(v view, c *canvas.Canvas) {
	q := s.queue
	loads, fabrics := guide.Plan(v.words, q)
	lines := append(append(linesOf(loads), line{}), linesOf(fabrics)...)
	lines = append(lines, line{}, line{v.words.SavedAs(s.sheet.form.Path), quiet})
	rows := wrapped(lines, c.W-2)
	y := 0
	if free := c.H - len(rows); free > 3 {
		y = headline(c, free, v.words.LargeLoads(len(q.Loads)))
	}
	for i, l := range onePage(v, rows, s.page, c.H-y) {
		c.Text(1, y+i, l.text, l.style)
	}
	c.Zone(0, 0, c.W, c.H, "on")
}

// tones are how sentences look, by how they are meant.
var tones = map[guide.Tone]canvas.Style{guide.Even: text, guide.Main: strong, guide.Good: good, guide.Bad: warn}

// linesOf are sentences as lines.
func linesOf(all []guide.Told) []line {
	var lines []line
	for _, t := range all {
		lines = append(lines, line{t.Says, tones[t.Tone]})
	}
	return lines
}
