package tui

import (
	"context"
	"strconv"
	"strings"

	"example.org/matside/plan/say"
	"example.org/matside/tui/canvas"
	"example.org/matside/tui/form"
	"example.org/matside/tui/glyph"
	"example.org/matside/tui/look"
)

// first is the page when no quilt is in hand: the ways on.
type first struct {
	at  int
	new bool // she asked for a new list although one is unfinished
}

// way is one of the ways on.
type way struct {
	name, says, how string
	do              func() action
}

func (s first) ways(v view) []way {
	all := []way{
		{"demo", v.words.WayDemo(), v.words.WayDemoHow(), func() action { return v.demonstrate() }},
		{"open", v.words.WayOpen(), v.words.WayOpenHow(), func() action { return v.pick("", false, s) }},
		{"write", v.words.WayWrite(), v.words.WayWriteHow(), func() action { return show{sheet{form: form.New(), under: s}} }},
	}
	if f, ok := v.unfinished(); ok && !s.new {
		all[2] = way{"write", v.words.WayResume(), v.words.WayResumeHow(f.Quilt()), func() action { return show{sheet{form: f, under: s}} }}
	}
	return all
}

// unfinished is the form that was left unfinished.
func (v view) unfinished() (form.Form, bool) {
	if v.desk == nil || v.desk.Unfinished() == nil {
		return form.Form{}, false
	}
	f, err := form.Restore(v.desk.Unfinished())
	return f, err == nil
}

// demonstrate opens the demo.
func (v view) demonstrate() action {
	if v.desk == nil {
		return nil
	}
	return begin{job{name: v.words.OpeningDemo(),
		do: func(ctx context.Context, tell func(say.Sentence)) any {
			o, err := v.desk.Demo(ctx, tell)
			if err != nil {
				return err
			}
			return o
		},
		then: func(v view, answer any) action {
			if err, ok := answer.(error); ok {
				return show{trouble{lines: []string{v.words.WentWrong(), plainError(v.words, err)}, under: first{}}}
			}
			return opened{answer}
		}}}
}

func (s first) bindings(v view) []binding {
	ways := s.ways(v)
	at := min(s.at, len(ways)-1)
	step := func(by int) func() action {
		return func() action { return show{first{(at + by + len(ways)) % len(ways), s.new}} }
	}
	all := []binding{
		{name: "on", keys: onKeys, key: "Enter", says: v.words.KeyChoose(), refused: s.refused(v), do: ways[at].do},
		{name: "up", keys: []string{"up", "k"}, key: "Up", says: v.words.KeyUp(), kind: moving, do: step(-1)},
		{name: "down", keys: []string{"down", "j", "tab"}, key: "Down", says: v.words.KeyDown(), kind: moving, do: step(1)},
	}
	for i, w := range ways {
		key := strconv.Itoa(i + 1)
		all = append(all, binding{name: w.name, keys: []string{key}, key: key, says: w.says, refused: s.refused(v), do: w.do})
	}
	if _, ok := v.unfinished(); ok && !s.new {
		all = append(all, binding{name: "new", keys: []string{"n"}, key: "n", says: v.words.KeyStartNew(), do: func() action { return show{first{2, true}} }})
	}
	return append(all, v.settingsKey(s), v.matsKey(), v.shelfKey(), v.daysKey(), v.helpKey(s), v.leaveKey(), v.lookKey(), v.sleepKey())
}

// refused says why nothing can be opened, where there is no desk.
func (first) refused(v view) string {
	if v.desk == nil {
		return v.words.NotHere()
	}
	return ""
}

func (first) title(v view) string   { return v.words.FirstTitle() }
func (first) caution(v view) string { return "" }

// body shows the ways as large targets, each three rows high or more.
func (s first) body(v view, c *canvas.Canvas) {
	ways := s.ways(v)
	at := min(s.at, len(ways)-1)
	const high = 3
	y := 0
	if rows := c.H - len(ways)*(high+1); rows >= 3 {
		y = headline(c, rows, v.words.LargeHello())
	}
	gap := 1
	if y+len(ways)*(high+1) > c.H {
		gap = 0
	}
	for i, w := range ways {
		button(c, y, strconv.Itoa(i+1), w.says, w.how, i == at)
		c.Zone(0, y, c.W, high, w.name)
		y += high + gap
	}
}

// headline draws large text on top and returns the row under it.
func headline(c *canvas.Canvas, rows int, texts ...string) int {
	l, ok := glyph.Fit(c.W-2, min(rows-1, max(c.H/4, 3)), texts...)
	if !ok {
		return 0
	}
	large(c, 1, 0, l, strong)
	return l.H + 1
}

// button draws one way on, three rows high; the chosen one is reversed.
func button(c *canvas.Canvas, y int, key, says, how string, chosen bool) {
	bar, style, under := mark, strong, text
	if chosen {
		style = canvas.Style{Ink: look.Strong, Bold: true, Reverse: true}
		bar = strong
		c.Fill(2, y, c.W-2, 1, ' ', style)
	}
	for i := range 2 {
		c.Rune(0, y+i, '▌', bar)
	}
	c.Text(2, y, canvas.Fit(" "+key+"  "+says, c.W-3), style)
	c.Text(6, y+1, canvas.Fit(how, c.W-7), under)
}

// trouble says what went wrong and goes back.
type trouble struct {
	lines []string
	edit  string // a cut list that can be put right in the form, or ""
	under screen
	page  int
}

func (s trouble) bindings(v view) []binding {
	back := binding{name: "on", keys: []string{"enter", "space", "backspace", "esc", "ctrl+j"}, key: "Enter", says: v.words.KeyBack(), do: func() action { return show{s.under} }}
	turned := s
	turned.page++
	all := []binding{back, {name: "page", keys: []string{"n", "down", "pgdown"}, kind: moving, do: func() action { return show{turned} }}}
	if s.edit != "" {
		all = append(all, binding{name: "form", keys: []string{"f"}, key: "f", says: v.words.KeyOpenInForm(), do: func() action { return v.openForm(s.edit, s.under) }})
	}
	return append(all, v.helpKey(s), v.leaveKey(), v.lookKey(), v.sleepKey())
}

func (trouble) title(v view) string   { return "" }
func (trouble) caution(v view) string { return "" }

// isMark says whether a line is the mark under a line of hers.
func isMark(l string) bool { return strings.Contains(l, "^") && strings.Trim(l, " ^") == "" }

func (s trouble) body(v view, c *canvas.Canvas) {
	var lines []line
	for i, l := range s.lines {
		style := text
		if i == 0 {
			style = warn
		}
		if isMark(l) || i+1 < len(s.lines) && isMark(s.lines[i+1]) { // a line of hers, and the mark under it: not to be broken
			lines = append(lines, line{l, accent})
			continue
		}
		indent := l[:len(l)-len(strings.TrimLeft(l, " "))]
		if indent != "" {
			style = accent
		}
		for _, part := range canvas.Wrap(strings.TrimLeft(l, " "), c.W-2-len(indent)) {
			lines = append(lines, line{indent + part, style})
		}
	}
	for y, l := range onePage(v, lines, s.page, c.H) {
		c.Text(1, y, canvas.Fit(l.text, c.W-2), l.style)
	}
}
