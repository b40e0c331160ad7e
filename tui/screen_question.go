package tui

import (
	"slices"
	"strconv"
	"strings"

	"example.org/matside/tui/canvas"
	"example.org/matside/tui/form"
	"example.org/matside/tui/glyph"
	"example.org/matside/tui/look"
	"example.org/matside/tui/words"
)

// typing: while a question is answered by typing, letters are letters.
func (s sheet) typing(v view) bool {
	return s.form.Ask != nil && s.form.Ask.Question().Kind == form.Type
}

func (s sheet) typed(v view, text string) action {
	return s.with(s.form.Edit(func(f form.Field) form.Field { return f.Type(text) }))
}

// questionKeys are those of a question.
func (s sheet) questionKeys(v view) []binding {
	f, q := s.form, s.form.Ask.Question()
	on := binding{name: "on", keys: []string{"enter", "ctrl+j", "tab"}, key: "Enter", says: v.words.KeyNextQuestion(), do: func() action { return s.answer(v) }}
	back := binding{name: "back", keys: []string{"esc", "shift+tab"}, key: "Esc", says: v.words.KeyBack(), do: func() action { return s.with(f.Previous()) }}
	leave := v.leaveKey()
	leave.key = "ctrl+c"
	all := []binding{on, back}
	choose := func(by int) func() action { return func() action { return s.with(f.Choose(by)) } }
	switch q.Kind {
	case form.Type:
		return append(append(all, s.fieldKeys(v)...), leave, v.sleepKey())
	case form.Choose:
		all[0].keys = append(all[0].keys, "space")
		for i := range min(len(q.Options), 9) {
			all = append(all, binding{name: "choice " + strconv.Itoa(i), keys: []string{strconv.Itoa(i + 1)}, do: func() action {
				s.form = f.Choose(i - f.Ask.At)
				return s.answer(v)
			}})
		}
	case form.Mark:
		all = append(all, binding{name: "mark", keys: []string{"space", "x"}, key: "Space", says: v.words.KeyMark(), do: func() action { return s.with(f.Toggle()) }})
		for i := range min(len(q.Options), 9) {
			all = append(all, binding{name: "choice " + strconv.Itoa(i), keys: []string{strconv.Itoa(i + 1)}, do: func() action { return s.with(f.Choose(i - f.Ask.At).Toggle()) }})
		}
	}
	all[1].keys = append(all[1].keys, "backspace", "left")
	for i := 9; i < len(q.Options); i++ { // by pointing only
		all = append(all, binding{name: "choice " + strconv.Itoa(i), do: func() action {
			s.form = f.Choose(i - f.Ask.At)
			return s.answer(v)
		}})
	}
	return append(all,
		binding{name: "up", keys: []string{"up", "k"}, key: "Up", says: v.words.KeyUp(), kind: moving, do: choose(-1)},
		binding{name: "down", keys: []string{"down", "j"}, key: "Down", says: v.words.KeyDown(), kind: moving, do: choose(1)},
		v.helpKey(s), v.leaveKey(), v.lookKey(), v.sleepKey())
}

// answer takes the answer; a statement that has come onto the list is kept
// at once, should the power fail.
func (s sheet) answer(v view) action {
	before := s.form.Text()
	next := s.form.Answer()
	if next.Text() != before {
		return both{s.with(next), v.keepForm(next)}
	}
	return s.with(next)
}

// fieldKeys move and erase in the field, and step a number.
func (s sheet) fieldKeys(v view) []binding {
	f := s.form
	edit := func(name, key string, change func(form.Field) form.Field) binding {
		return binding{name: name, keys: []string{key}, kind: moving, do: func() action { return s.with(f.Edit(change)) }}
	}
	erase := edit("erase", "backspace", form.Field.Erase)
	erase.key, erase.says = "Backspace", v.words.KeyErase()
	if f.Ask.Field.Text() == "" { // nothing to erase: back, but not by a held key
		erase = binding{name: "back", keys: []string{"backspace"}, do: func() action { return s.with(f.Previous()) }}
	}
	all := []binding{erase, edit("delete", "delete", form.Field.Delete), edit("left", "left", form.Field.Left), edit("right", "right", form.Field.Right),
		edit("home", "home", form.Field.Home), edit("end", "end", form.Field.End)}
	if f.Ask.Question().Name == "count" {
		step := func(by int) func(form.Field) form.Field {
			return func(f form.Field) form.Field {
				n, _ := strconv.Atoi(f.Value())
				return form.Filled(strconv.Itoa(max(n+by, 1)))
			}
		}
		all = append(all, edit("up", "up", step(1)), edit("down", "down", step(-1)))
	}
	return all
}

// question draws one question: what is asked, the answer so far in large
// letters, what is wrong with it, how to answer; and the piece as it will be.
func (s sheet) question(v view, c *canvas.Canvas) {
	left := c
	narrow := c.W < 76 && s.form.Ask.Question().Kind == form.Mark // long choices come before the picture
	if p, ok := s.form.Preview(); ok && !narrow {
		if side := c.W * 2 / 5; side >= 22 {
			left = canvas.New(c.W-side-2, c.H, text)
			s.piece(v, c, c.W-side, 0, side, c.H, p)
		}
	}
	q := s.form.Ask.Question()
	y := 0
	for _, l := range canvas.Wrap(v.words.FormAsk(q.Name, s.form.About()), left.W-2) {
		left.Text(1, y, l, strong)
		y++
	}
	for _, l := range canvas.Wrap(v.words.FormHint(q.Name, s.form.About()), left.W-2) {
		left.Text(1, y, l, quiet)
		y++
	}
	y++
	foot := s.foot(v, left.W-2)
	room := left.H - y - len(foot) - 1
	if q.Kind == form.Type {
		s.field(left, y, room)
	} else {
		s.choices(v, left, y, room)
	}
	for i, l := range foot {
		left.Text(1, left.H-len(foot)+i, l.text, l.style)
	}
	c.Draw(0, 0, left)
}

// foot is what is wrong with the answer, what was decided for her, and the
// statement as it will stand in the list.
func (s sheet) foot(v view, w int) []line {
	a := s.form.Ask
	var lines []line
	if m, wrong := s.form.Wrong(); wrong && a.Tried {
		lines = append(lines, line{words.Full(v.words.Say(m.What)), warn})
		unanswered := a.Question().Kind == form.Type && a.Field.Text() == "" // how to answer stands above
		if !m.Hint.Silent() && !unanswered {
			lines = append(lines, line{words.Full(v.words.Say(m.Hint)), warn})
		}
	} else if slices.Contains(a.Marks, "by hand") && a.Question().Name != "about piece" {
		lines = append(lines, line{v.words.CutByHandNote(), warn})
	}
	if says := a.Says(); a.Question().Name != "line" {
		lines = append(lines, line{says, accent})
	}
	out := wrapped(lines, w)
	const most = 6
	return out[:min(len(out), most)]
}

// field draws the line being typed, large where there is room, and the line
// itself with its cursor.
func (s sheet) field(c *canvas.Canvas, y, room int) {
	f := s.form.Ask.Field
	if shown := strings.TrimSpace(f.Text()); shown != "" && room >= 6 {
		if l, ok := glyph.Fit(c.W-2, min(room-3, max(c.H/3, 4)), shown); ok {
			large(c, 1, y, l, strong)
			y += l.H + 1
		}
	}
	drawField(c, y, f)
}

// drawField draws a line being typed, its cursor reversed and in sight.
func drawField(c *canvas.Canvas, y int, f form.Field) {
	style := canvas.Style{Ink: look.Strong, Paper: look.Band, Bold: true}
	before := f.Before
	for canvas.Width(before) > c.W-6 {
		before = form.Field{After: before}.Delete().Text()
	}
	c.Fill(1, y, c.W-2, 1, ' ', style)
	x := c.Text(2, y, before, style)
	under := form.Field{After: f.After}.Right()
	at := under.Before
	if at == "" {
		at = " "
	}
	cursor := style
	cursor.Reverse = true
	x = c.Text(x, y, at, cursor)
	c.Text(x, y, canvas.Fit(under.After, c.W-1-x), style)
	c.Text(1, y+1, strings.Repeat("─", c.W-2), mark)
}

// choices draws the choices, the one at the cursor reversed, two rows for
// each where there is room.
func (s sheet) choices(v view, c *canvas.Canvas, y, room int) {
	a := s.form.Ask
	q := a.Question()
	high := 1
	if 2*len(q.Options) <= room {
		high = 2
	}
	shown := max(room/high, 1)
	from := max(0, min(a.At-shown/2, len(q.Options)-shown))
	for i := from; i < min(from+shown, len(q.Options)); i++ {
		row := y + (i-from)*high
		style, key := text, "  "
		if i < 9 {
			key = strconv.Itoa(i+1) + " "
		}
		says := v.words.FormOption(q.Options[i])
		if q.Kind == form.Mark {
			box := "[ ] "
			if slices.Contains(a.Marks, q.Options[i]) {
				box = "[x] "
			}
			says = box + says
		}
		if i == a.At {
			style = canvas.Style{Ink: look.Strong, Bold: true, Reverse: true}
			c.Fill(0, row, c.W, 1, ' ', style)
		}
		c.Text(1, row, canvas.Fit(key+" "+says, c.W-2), style)
		c.Zone(0, row, c.W, high, "choice "+strconv.Itoa(i))
	}
	more(c, y, y+(shown-1)*high, from > 0, from+shown < len(q.Options))
}
