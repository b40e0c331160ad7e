package tui

import (
	"example.org/matside/tui/canvas"
	"example.org/matside/tui/form"
	"example.org/matside/tui/guide"
	"example.org/matside/tui/look"
	"example.org/matside/tui/piecepic"
	"example.org/matside/tui/words"
)

// sheet is a cut list being written: all that is on it, and the ways on. A
// question about one statement is drawn by screen_question.go.
type sheet struct {
	form  form.Form
	under screen // where she came from
}

// with is the sheet with another form.
func (s sheet) with(f form.Form) action {
	s.form = f
	return show{s}
}

// kept is the form that must not be lost when the program ends.
func (s sheet) kept() *form.Form { return &s.form }

func (s sheet) bindings(v view) []binding {
	if s.form.Ask != nil {
		return s.questionKeys(v)
	}
	f := s.form
	row := f.Row()
	move := func(by int) func() action { return func() action { return s.with(f.Move(by)) } }
	all := []binding{
		s.onKey(v),
		{name: "back", keys: []string{"backspace", "esc"}, key: "Backspace", says: v.words.KeyBack(), do: func() action { return s.goBack(v) }},
		{name: "up", keys: []string{"up", "k"}, key: "Up", says: v.words.KeyUp(), kind: moving, do: move(-1)},
		{name: "down", keys: []string{"down", "j", "tab"}, key: "Down", says: v.words.KeyDown(), kind: moving, do: move(1)},
		{name: "page up", keys: []string{"pgup"}, kind: moving, do: move(-10)},
		{name: "page down", keys: []string{"pgdown"}, kind: moving, do: move(10)},
		{name: "first", keys: []string{"home"}, kind: moving, do: move(-len(f.Rows()))},
		{name: "last", keys: []string{"end"}, kind: moving, do: move(len(f.Rows()))},
		{name: "plan", keys: []string{"p"}, key: "p", says: v.words.KeySeePlan(), refused: s.notReady(v), do: func() action { return s.save(v) }},
		{name: "remove", keys: []string{"x"}, key: "x", says: v.words.KeyTakeOff(), refused: guide.NotOff(v.words, f, row), do: func() action { return s.takeOff(row) }},
		{name: "undo", keys: []string{"u"}, key: "u", says: v.words.KeyUndo(), refused: s.nothingToUndo(v), do: func() action {
			undone, _ := f.Undo()
			return s.with(undone)
		}},
		v.helpKey(s), v.leaveKey(), v.lookKey(), v.sleepKey(),
	}
	const near = 60
	for i := max(0, f.At-near); i < min(len(f.Rows()), f.At+near); i++ {
		b := binding{name: rowName(i), do: move(i - f.At)}
		if i == f.At {
			b.do, b.refused = s.onKey(v).do, s.onKey(v).refused
		}
		all = append(all, b)
	}
	return all
}

func (s sheet) onKey(v view) binding {
	f := s.form
	row := f.Row()
	b := binding{name: "on", keys: onKeys, key: "Enter", says: v.words.KeyAdd(), do: func() action { return s.with(f.Enter()) }}
	switch {
	case row.Kind == form.Finish:
		b.says, b.refused, b.do = v.words.KeySeePlan(), s.notReady(v), func() action { return s.save(v) }
	case f.Parked(row):
		b.says = v.words.KeyGoOnWith()
	case row.Kind == form.Statement:
		b.says = v.words.KeyChange()
	}
	return b
}

// notReady says why the list can't be planned yet.
func (s sheet) notReady(v view) string {
	if len(s.form.Park) > 0 {
		return v.words.UnfinishedFirst()
	}
	if m := s.form.Mistakes(); len(m) > 0 {
		return v.words.FirstMistake(v.words.Say(m[0].What))
	}
	return ""
}

func (s sheet) takeOff(row form.Row) action {
	if s.form.Parked(row) {
		return s.with(s.form.Drop())
	}
	return s.with(s.form.Remove())
}

func (s sheet) nothingToUndo(v view) string {
	if len(s.form.Back) == 0 {
		return v.words.NothingToUndo()
	}
	return ""
}

// goBack keeps what is not saved and goes where she came from.
func (s sheet) goBack(v view) action { return both{both{v.keepForm(s.form), forget{}}, show{s.under}} }

// keepForm keeps a form that is not saved, and forgets one that is.
func (v view) keepForm(f form.Form) action {
	if v.desk == nil {
		return nil
	}
	desk := v.desk
	return ask{func() any { return keepIn(desk, f) }}
}

// keepIn is keepForm at once.
func keepIn(desk Desk, f form.Form) error {
	data, err := f.Unsaved()
	if err != nil {
		return err
	}
	return desk.Keep(data)
}

func (s sheet) title(v view) string {
	name := s.form.Quilt()
	if name == "" {
		name = v.words.FormTitle()
	}
	if s.form.Ask != nil {
		if of := len(s.form.Ask.Questions()); of > 1 {
			name += ", " + v.words.FormStep(s.form.Ask.Step+1, of)
		}
	}
	return name
}

func (sheet) caution(v view) string { return "" }

func (s sheet) body(v view, c *canvas.Canvas) {
	if s.form.Ask != nil {
		s.question(v, c)
		return
	}
	list := c
	if side := c.W * 2 / 5; side >= 24 {
		if p, ok := s.form.Preview(); ok {
			list = canvas.New(c.W-side-2, c.H, text)
			s.piece(v, c, c.W-side, 0, side, c.H, p)
		}
	}
	s.list(v, list)
	c.Draw(0, 0, list)
}

// list draws the rows, and under them what is wrong with the one at the
// cursor.
func (s sheet) list(v view, c *canvas.Canvas) {
	f := s.form
	var foot []string
	if row := f.Row(); row.Kind == form.Statement {
		if m, ok := f.MistakeAt(row.Line); ok {
			foot = canvas.Wrap(words.Full(v.words.Say(m.What)), c.W-2)
			if !m.Hint.Silent() {
				foot = append(foot, canvas.Wrap(words.Full(v.words.Say(m.Hint)), c.W-2)...)
			}
		}
	}
	foot = foot[:min(len(foot), max(c.H-4, 0))]
	all := f.Rows()
	shown := c.H - len(foot)
	from := max(0, min(f.At-shown/2, len(all)-shown))
	for y := range min(shown, len(all)-from) {
		s.row(v, c, y, all[from+y], from+y == f.At)
		c.Zone(0, y, c.W, 1, rowName(from+y))
	}
	more(c, 0, shown-1, from > 0, from+shown < len(all))
	for i, l := range foot {
		c.Text(1, shown+i, l, warn)
	}
}

func (s sheet) row(v view, c *canvas.Canvas, y int, r form.Row, chosen bool) {
	says, style := guide.Row(v.words, r), text
	if r.Kind != form.Statement {
		style = accent
	}
	indent := 2
	if r.Deep {
		indent = 5
	}
	if r.Kind == form.Statement {
		if _, wrong := s.form.MistakeAt(r.Line); wrong {
			says, style = "! "+says, warn
		}
	}
	if s.form.Parked(r) {
		says += "  (" + v.words.RowUnfinished() + ")"
	}
	if chosen {
		style = canvas.Style{Ink: look.Strong, Bold: true, Reverse: true}
		c.Fill(0, y, c.W, 1, ' ', style)
		c.Text(0, y, ">", style)
	}
	c.Text(indent, y, canvas.Fit(says, c.W-indent-1), style)
}

// piece draws a piece in a box of the canvas, and says of a finished one how
// large it is cut.
func (s sheet) piece(v view, c *canvas.Canvas, x, y, w, h int, p form.Preview) {
	var words []string
	if p.Finished != "" {
		words = canvas.Wrap(v.words.Odd(p.Finished, v.words.SizeText(p.Line.Size), v.words.SizeText(p.Book), p.Ruler), w)
	}
	box := p.Line.Outline.Bounds()
	pic := piecepic.Piece{Outline: p.Line.Outline, Seam: p.Seam,
		Width: v.words.SizeUnit(box.Width(), p.Unit), Height: v.words.SizeUnit(box.Height(), p.Unit)}.Draw(w, min(h-len(words)-1, w/2+1))
	c.Draw(x, y, pic)
	for i, l := range words {
		if pic.H+1+i < h {
			c.Text(x, y+pic.H+1+i, l, strong)
		}
	}
}
