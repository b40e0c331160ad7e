package tui

import (
	"context"
	"errors"
	"path/filepath"
	"strconv"
	"strings"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/say"
	"example.org/matside/session"
	"example.org/matside/tui/canvas"
	"example.org/matside/tui/files"
	"example.org/matside/tui/form"
	"example.org/matside/tui/look"
)

// picker is a folder to take a cut list from. Ours and not the picker of
// bubbles: that one reads folders without one answer for each ask, shows its
// cursor by colour alone, mixes files and folders, and has no large targets.
type picker struct {
	folder files.Folder
	all    bool // files that are no cut lists too
	at     int  // 0 is the folder above, where there is one
	failed string
	under  screen
}

// pick asks for a folder and shows it.
func (v view) pick(path string, all bool, under screen) action {
	s := picking{picker{all: all, under: under}, path}
	return both{show{s}, ask{func() any {
		folder, err := v.desk.Folder(path, all)
		return listed{folder, err}
	}}}
}

// picking is a picker that waits for its folder.
type picking struct {
	picker
	path string
}

// listed is what a folder holds, or why it can't be read.
type listed struct {
	folder files.Folder
	err    error
}

func (s picking) bindings(v view) []binding {
	return []binding{v.backTo(s.under), v.helpKey(s), v.leaveKey(), v.lookKey(), v.sleepKey()}
}

func (s picking) body(v view, c *canvas.Canvas) {
	c.Text(1, 0, canvas.Fit(v.words.PickFolder(s.path), c.W-2), strong)
}

func (s picking) told(v view, answer any) action {
	p := s.picker
	switch a := answer.(type) {
	case listed:
		if p.folder = a.folder; a.err != nil {
			p.folder.Path, p.failed = s.path, plainError(v.words, a.err)
			p.folder.Above = filepath.Dir(s.path)
		}
	case error:
		p.failed = plainError(v.words, a)
	}
	p.at = p.best()
	return show{p}
}

// best is where the cursor starts: on the first cut list, else on the first
// entry, else on the way up.
func (s picker) best() int {
	above := s.above()
	for i, e := range s.folder.Entries {
		if !e.Dir {
			return i + above
		}
	}
	if len(s.folder.Entries) > 0 {
		return above
	}
	return 0
}

// above is 1 where the list starts with the folder above.
func (s picker) above() int {
	if s.folder.Above != "" {
		return 1
	}
	return 0
}

// entry is the one at the cursor; false on the way up and where there is
// nothing.
func (s picker) entry() (files.Entry, bool) {
	i := s.at - s.above()
	if i < 0 || i >= len(s.folder.Entries) {
		return files.Entry{}, false
	}
	return s.folder.Entries[i], true
}

func (s picker) bindings(v view) []binding {
	n := len(s.folder.Entries) + s.above()
	to := func(at int) func() action {
		return func() action {
			moved := s
			moved.at = max(0, min(at, n-1))
			return show{moved}
		}
	}
	up := binding{name: "above", keys: []string{"left"}, key: "Left", says: v.words.KeyAbove(), do: func() action { return v.pick(s.folder.Above, s.all, s.under) }}
	if s.folder.Above == "" {
		up.refused = v.words.NoFolderAbove()
	}
	other := binding{name: "all", keys: []string{"a"}, key: "a", says: v.words.KeyAllFiles(), do: func() action { return v.pick(s.folder.Path, !s.all, s.under) }}
	if s.all {
		other.says = v.words.KeyOnlyLists()
	}
	edit := binding{name: "form", keys: []string{"c"}, key: "c", says: v.words.KeyWriteIn(), refused: v.words.NoFileHere()}
	if e, ok := s.entry(); ok && !e.Dir {
		edit.refused, edit.do = "", func() action { return v.openForm(e.Path, s) }
	}
	all := []binding{
		s.onKey(v), v.backTo(s.under),
		{name: "up", keys: []string{"up", "k"}, key: "Up", says: v.words.KeyUp(), kind: moving, do: to(s.at - 1)},
		{name: "down", keys: []string{"down", "j", "tab"}, key: "Down", says: v.words.KeyDown(), kind: moving, do: to(s.at + 1)},
		{name: "page up", keys: []string{"pgup"}, kind: moving, do: to(s.at - 10)},
		{name: "page down", keys: []string{"pgdown"}, kind: moving, do: to(s.at + 10)},
		{name: "first", keys: []string{"home"}, kind: moving, do: to(0)},
		{name: "last", keys: []string{"end"}, kind: moving, do: to(n - 1)},
		edit, up, other, v.helpKey(s), v.leaveKey(), v.lookKey(), v.sleepKey(),
	}
	const near = 60 // more rows than are ever shown around the cursor
	for i := max(0, s.at-near); i < min(n, s.at+near); i++ {
		row := binding{name: rowName(i), do: to(i)}
		if i == s.at { // a second click opens it
			row.do = s.onKey(v).do
		}
		all = append(all, row)
	}
	return all
}

// onKey opens what is at the cursor.
func (s picker) onKey(v view) binding {
	b := binding{name: "on", keys: []string{"enter", "space", "right", "ctrl+j"}, key: "Enter"}
	switch e, ok := s.entry(); {
	case ok && e.Dir:
		b.says, b.do = v.words.KeyOpenFolder(), func() action { return v.pick(e.Path, s.all, s.under) }
	case ok:
		b.says, b.do = v.words.KeyCutThis(), func() action { return v.cut(e.Path, s) }
	case s.folder.Above != "":
		b.says, b.do = v.words.KeyAbove(), func() action { return v.pick(s.folder.Above, s.all, s.under) }
	default:
		b.says, b.refused = v.words.KeyOpenFolder(), v.words.NoCutLists()
	}
	return b
}

// cut takes up the quilt of a cut list, or starts it.
func (v view) cut(path string, under screen) action {
	return begin{job{name: v.words.Planning(),
		do: func(ctx context.Context, tell func(say.Sentence)) any {
			id, err := v.desk.Take(ctx, v.book, path, tell)
			if err != nil {
				return err
			}
			return id
		},
		then: func(v view, answer any) action {
			var mistakes cutlist.Mistakes
			switch a := answer.(type) {
			case session.QuiltID:
				return both{forget{}, take{quilt: a}}
			case error:
				if errors.As(a, &mistakes) {
					lines := append([]string{v.words.MistakesIn(filepath.Base(path))}, strings.Split(v.words.Error(mistakes), "\n")...)
					return show{trouble{lines: lines, edit: path, under: under}}
				}
				return show{trouble{lines: append([]string{v.words.WentWrong()}, strings.Split(v.words.Error(a), "\n")...), under: under}}
			}
			return nil
		}}}
}

// openForm reads a cut list into the form.
func (v view) openForm(path string, under screen) action {
	return begin{job{name: v.words.ReadingFile(),
		do: func(context.Context, func(say.Sentence)) any {
			text, open, err := v.desk.Read(path)
			if err != nil {
				return err
			}
			return form.Of(path, text, open)
		},
		then: func(v view, answer any) action {
			switch a := answer.(type) {
			case form.Form:
				return show{sheet{form: a, under: under}}
			case error:
				return show{trouble{lines: []string{v.words.WentWrong(), plainError(v.words, a)}, under: under}}
			}
			return nil
		}}}
}

func (picker) title(v view) string   { return v.words.PickTitle() }
func (picker) caution(v view) string { return "" }

// body lists the folder, a row of its own for each entry, and two where there
// is room, so that they are easy to hit.
func (s picker) body(v view, c *canvas.Canvas) {
	c.Text(1, 0, canvas.Fit(v.words.PickFolder(s.folder.Path), c.W-2), strong)
	foot := ""
	switch {
	case s.failed != "":
		foot = v.words.FolderFailed(s.failed)
	case len(s.folder.Entries) == 0 && s.folder.Hidden == 0:
		foot = v.words.NoCutLists()
	case s.folder.Hidden > 0:
		foot = v.words.OthersHidden(s.folder.Hidden)
	}
	c.Text(1, c.H-1, canvas.Fit(foot, c.W-2), quiet)
	var names []string
	if s.folder.Above != "" {
		names = append(names, v.words.FolderName("..")+"  "+v.words.FolderAbove())
	}
	for _, e := range s.folder.Entries {
		if e.Dir {
			names = append(names, v.words.FolderName(e.Name))
		} else {
			names = append(names, "  "+e.Name)
		}
	}
	room := c.H - 4
	high := 1
	if room >= 2*min(len(names), 8) {
		high = 2
	}
	shown := max(room/high, 1)
	from := max(0, min(s.at-shown/2, len(names)-shown))
	for i, name := range names[from:min(from+shown, len(names))] {
		y := 2 + i*high
		style := text
		if from+i == s.at {
			style = canvas.Style{Ink: look.Strong, Bold: true, Reverse: true}
			c.Fill(0, y, c.W, 1, ' ', style)
			name = "> " + name
		} else {
			name = "  " + name
		}
		c.Text(1, y, canvas.Fit(name, c.W-2), style)
		c.Zone(0, y, c.W, high, rowName(from+i))
	}
	more(c, 2, 2+(shown-1)*high, from > 0, from+shown < len(names))
}

// rowName is the name of the binding that goes to row n of a list.
func rowName(n int) string { return "row " + strconv.Itoa(n) }
