package tui

import (
	"unicode/utf8"

	"example.org/matside/tui/canvas"
)

// sure asks in words before what can't be taken back. Enter is the safe
// answer.
type sure struct {
	says, more string
	yes        action
	under      screen
}

func (s sure) bindings(v view) []binding {
	return []binding{
		{name: "on", keys: append([]string{"n", "backspace", "esc"}, onKeys...), key: "Enter", says: v.words.No(), do: func() action { return show{s.under} }},
		{name: "yes", keys: []string{"y"}, key: "y", says: v.words.Yes(), do: func() action { return s.yes }},
		v.leaveKey(), v.lookKey(), v.sleepKey(),
	}
}

// stay goes back to the screen that asked.
func (s sure) stay(v view) screen { return s.under }

func (sure) title(view) string   { return "" }
func (sure) caution(view) string { return "" }
func (s sure) body(v view, c *canvas.Canvas) {
	v.middle(c, []string{v.words.LargeSure()}, []line{{s.says, strong}, {}, {s.more, text}, {v.words.YesOrNo(), text}})
}

// naming takes a name.
type naming struct {
	about string
	name  string
	under screen
	do    func(name string) action
}

func (s naming) typing(view) bool { return true }

// longestName is as long as the session takes.
const longestName = 60

func (s naming) typed(v view, text string) action {
	if s.name += text; utf8.RuneCountInString(s.name) > longestName {
		s.name = string([]rune(s.name)[:longestName])
	}
	return show{s}
}

func (s naming) bindings(v view) []binding {
	on := binding{name: "on", keys: []string{"enter", "ctrl+j"}, key: "Enter", says: v.words.KeyTakeName(), do: func() action { return s.do(s.name) }}
	if s.name == "" {
		on.refused = v.words.NameNeeded()
	}
	erase := binding{name: "erase", keys: []string{"backspace"}, key: "Backspace", says: v.words.KeyErase(), kind: moving, do: func() action {
		_, n := utf8.DecodeLastRuneInString(s.name)
		s.name = s.name[:len(s.name)-n]
		return show{s}
	}}
	back := binding{name: "back", keys: []string{"esc"}, key: "Esc", says: v.words.KeyBack(), do: func() action { return show{s.under} }}
	leave := v.leaveKey()
	leave.keys, leave.key = []string{"ctrl+c"}, "ctrl+c"
	return []binding{on, erase, back, leave, v.sleepKey()}
}

func (s naming) stay(v view) screen { return s.under }

func (naming) title(view) string   { return "" }
func (naming) caution(view) string { return "" }
func (s naming) body(v view, c *canvas.Canvas) {
	lines := []line{{s.about, strong}, {}, {s.name + "▏", accent}, {}, {v.words.NameHow(), text}}
	v.middle(c, nil, lines)
}
