package tui

import (
	"strconv"

	"example.org/matside/tui/canvas"
	"example.org/matside/tui/guide"
	"example.org/matside/tui/look"
)

// choosing is the screen of the settings: each is changed where it stands,
// and in use at once.
type choosing struct {
	at    int
	under screen
}

func (v view) settingsKey(under screen) binding {
	return binding{name: "settings", keys: []string{"g"}, key: "g", says: v.words.KeySettings(), do: func() action { return show{choosing{under: under}} }}
}

func (s choosing) bindings(v view) []binding {
	all := guide.Choices(v.words, v.settings)
	n := len(all)
	move := func(by int) func() action {
		return func() action { return show{choosing{(s.at + by + n) % n, s.under}} }
	}
	change := func(by int) func() action { return func() action { return set{all[s.at].Step(by)} } }
	out := []binding{
		{name: "on", keys: append([]string{"right"}, onKeys...), key: "Enter", says: v.words.KeyNextValue(), do: change(1)},
		{name: "last value", keys: []string{"left"}, key: "Left", says: v.words.KeyLastValue(), do: change(-1)},
		v.backTo(s.under),
		{name: "up", keys: []string{"up", "k"}, key: "Up", says: v.words.KeyUp(), kind: moving, do: move(-1)},
		{name: "down", keys: []string{"down", "j", "tab"}, key: "Down", says: v.words.KeyDown(), kind: moving, do: move(1)},
	}
	for i := range all {
		row := binding{name: rowName(i), keys: []string{strconv.Itoa(i + 1)}, do: func() action { return show{choosing{i, s.under}} }}
		if i == s.at {
			row.do = change(1)
		}
		out = append(out, row)
	}
	return append(out, v.helpKey(s), v.leaveKey(), v.lookKey(), v.sleepKey())
}

// stay keeps the screen when settings have been taken into use.
func (s choosing) stay(view) screen { return s }

func (choosing) title(v view) string   { return v.words.SettingsTitle() }
func (choosing) caution(v view) string { return "" }
func (s choosing) body(v view, c *canvas.Canvas) {
	all := guide.Choices(v.words, v.settings)
	high := 1
	if c.H >= 2*len(all)+2 {
		high = 2
	}
	wide := 0
	for _, ch := range all {
		wide = max(wide, canvas.Width(ch.Says))
	}
	wide = min(wide, c.W/2)
	for i, ch := range all {
		y, style := i*high, text
		if i == s.at {
			style = canvas.Style{Ink: look.Strong, Bold: true, Reverse: true}
			c.Fill(0, y, c.W, 1, ' ', style)
			c.Text(0, y, ">", style)
		}
		c.Text(2, y, canvas.Fit(strconv.Itoa(i+1)+"  "+ch.Says, wide+3), style)
		c.Text(wide+7, y, canvas.Fit(ch.Value, c.W-wide-8), style)
		c.Zone(0, y, c.W, high, rowName(i))
	}
	if y := len(all)*high + 1; y < c.H {
		c.Text(2, y, canvas.Fit(v.words.SettingsHow(), c.W-3), quiet)
	}
}
