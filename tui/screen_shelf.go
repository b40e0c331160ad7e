package tui

import (
	"slices"
	"strconv"

	"example.org/matside/session"
	"example.org/matside/tui/canvas"
	"example.org/matside/tui/guide"
	"example.org/matside/tui/look"
)

// shelf lists the quilts: under way, set aside, done. at is the quilt at the
// cursor.
type shelf struct{ at session.QuiltID }

func (shelf) title(v view) string    { return v.words.TheShelf() }
func (shelf) caution(view) string    { return "" }
func (s shelf) stay(view) screen     { return s }
func (v view) cards() []session.Card { return v.state.Shelf(v.now) }

// index is the card at the cursor, that of the quilt in hand to begin with.
func (s shelf) index(v view, cards []session.Card) int {
	at := s.at
	if at == 0 && v.quilt != nil {
		at = v.quilt.ID
	}
	return max(slices.IndexFunc(cards, func(c session.Card) bool { return c.ID == at }), 0)
}

func (s shelf) bindings(v view) []binding {
	cards := v.cards()
	all := []binding{v.backTo(v.afterShelf())}
	if len(cards) > 0 {
		i := s.index(v, cards)
		goTo := func(to int) func() action {
			return func() action { return show{shelf{cards[min(max(to, 0), len(cards)-1)].ID}} }
		}
		all = append(s.onCard(v, cards[i]), all...)
		all = append(all,
			binding{name: "up", keys: []string{"up", "k"}, key: "Up", says: v.words.KeyUp(), kind: moving, do: goTo(i - 1)},
			binding{name: "down", keys: []string{"down", "j"}, key: "Down", says: v.words.KeyDown(), kind: moving, do: goTo(i + 1)})
	}
	return append(all, v.matsKey(), v.daysKey(), v.helpKey(s), v.leaveKey(), v.lookKey(), v.sleepKey())
}

// afterShelf is the screen to go back to: not the shelf again.
func (v view) afterShelf() screen {
	if s := v.home(); s != (shelf{at: v.id()}) {
		return s
	}
	return first{}
}

func (v view) id() session.QuiltID {
	if v.quilt == nil {
		return 0
	}
	return v.quilt.ID
}

// onCard is what can be done with the quilt at the cursor.
func (s shelf) onCard(v view, card session.Card) []binding {
	over := card.Standing == session.Done
	when := func(yes bool, reason string) string {
		if yes {
			return reason
		}
		return ""
	}
	do := func(a session.Action) func() action { return func() action { return saveFor{card.ID, a} } }
	ask := func(says, more string, a session.Action) func() action {
		return func() action { return show{sure{says: says, more: more, yes: saveFor{card.ID, a}, under: s}} }
	}
	aside := binding{name: "aside", keys: []string{"a"}, key: "a", says: v.words.KeyAside(), refused: when(over, v.words.IsAllCut(card.Name)), do: do(session.PutAside{})}
	if card.Standing == session.Aside {
		aside.says, aside.do = v.words.KeyTakeUp(), do(session.TakeUp{})
	}
	return []binding{
		{name: "on", keys: onKeys, key: "Enter", says: v.words.KeyCutQuilt(), refused: when(over, v.words.IsAllCut(card.Name)), do: func() action { return take{quilt: card.ID} }},
		aside,
		{name: "rename", keys: []string{"r"}, key: "r", says: v.words.KeyRename(), do: func() action {
			return show{naming{about: v.words.NewNameOf(card.Name), under: s, do: func(name string) action { return saveFor{card.ID, session.Rename{Name: name}} }}}
		}},
		{name: "finish", keys: []string{"f"}, key: "f", says: v.words.KeyFinish(), refused: when(over, v.words.IsAllCut(card.Name)), do: ask(v.words.SureFinish(card.Name), v.words.FinishMeans(), session.Finish{})},
		{name: "remove", keys: []string{"x"}, key: "x", says: v.words.KeyRemove(), do: ask(v.words.SureRemove(card.Name), v.words.RemoveMeans(), session.Remove{})},
	}
}

func (s shelf) body(v view, c *canvas.Canvas) {
	cards := v.cards()
	if len(cards) == 0 {
		v.middle(c, nil, []line{{v.words.ShelfEmpty(), strong}})
		return
	}
	at := s.index(v, cards)
	const high = 3
	rows := max(c.H/high, 1)
	from := max(0, min(at-rows/2, len(cards)-rows))
	for i, card := range cards[from:min(from+rows, len(cards))] {
		y, style, more := i*high, text, quiet
		if from+i == at {
			style, more = picked, picked
			c.Fill(0, y, c.W, 2, ' ', picked)
		}
		c.Zone(0, y, c.W, high, cardZone(from+i))
		standing := v.words.Standing(int(card.Standing))
		c.Text(1, y, canvas.Fit(card.Name, c.W-4-canvas.Width(standing)), style)
		c.Right(c.W-1, y, standing, style)
		c.Text(3, y+1, canvas.Fit(guide.Card(v.words, card, c.W < 70), c.W-4), more)
	}
	more(c, 0, (rows-1)*high, from > 0, from+rows < len(cards))
}

// picked is how the line at the cursor looks.
var picked = canvas.Style{Ink: look.Strong, Bold: true, Reverse: true}

func cardZone(i int) string { return "card " + strconv.Itoa(i) }

// pointed is a card that was clicked: the cursor goes there.
func (s shelf) pointed(v view, name string) (binding, bool) {
	for i, card := range v.cards() {
		if cardZone(i) == name {
			return binding{name: name, kind: moving, do: func() action { return show{shelf{card.ID}} }}, true
		}
	}
	return binding{}, false
}
