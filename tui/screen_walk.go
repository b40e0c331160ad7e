package tui

import (
	"slices"
	"strconv"

	"example.org/matside/plan/length"
	"example.org/matside/session"
	"example.org/matside/tui/guide"
	"example.org/matside/tui/matpic"
)

// walk is the step she is at.
type walk struct {
	entry  string       // digits of the count of spoiled pieces
	asked  *guide.Asked // which of them, where several lines are on the mat
	picked []int        // pieces crossed out on the picture instead
	at     int          // one more than the piece at the cursor; 0: there is no cursor
	page   int          // of words that are too many for the window
	rough  int          // which rough cut is looked at, at the fabric step
	// What else is noted at the peel step.
	lifted, ragged bool
}

func (v view) facts() guide.Facts { return guide.Of(v.state, v.quilt, v.unit()) }

// unit is the one she has lengths in.
func (v view) unit() length.Unit { return guide.Unit(v.settings.Units, v.quilt) }

func (s walk) peeling(v view) bool { return v.quilt.Step == session.Peel }

func (s walk) bindings(v view) []binding {
	all := []binding{s.onKey(v), s.backKey(v)}
	switch v.quilt.Step {
	case session.Fabric:
		all = append(all, s.roughKeys(v)...)
	case session.Lay, session.Cut:
		all = append(all, s.cursorKeys(v, "left", "right", "up", "down")...)
	case session.Peel:
		all = append(all, s.peelKeys(v)...)
	}
	turned := s
	turned.page++
	all = append(all, binding{name: "page", keys: []string{"n", "pgdown"}, kind: moving, do: func() action { return show{turned} }}, v.pauseKey())
	all = append(all, v.washKeys()...)
	return append(all, v.everywhere(s)...)
}

func (s walk) onKey(v view) binding {
	b := binding{name: "on", keys: onKeys, key: "Enter", says: v.words.Done(int(v.quilt.Step)), do: s.goOn(v)}
	switch {
	case !s.peeling(v):
	case len(s.picked) > 0:
		b.says = v.words.TakeCount(len(s.picked))
	case s.asked != nil || s.number() > 0:
		b.says = v.words.TakeCount(s.number())
		b.refused = s.wrong(v)
	}
	return b
}

// onKeys are the keys that go on.
var onKeys = []string{"enter", "space", "ctrl+j"}

// goOn ends the step, or asks further which pieces were spoiled.
func (s walk) goOn(v view) func() action {
	return func() action {
		if !s.peeling(v) {
			return save{session.GoOn{}}
		}
		done := session.GoOn{Spoiled: s.picked, Lifted: s.lifted, Ragged: s.ragged}
		if len(s.picked) > 0 {
			return save{done}
		}
		asked := guide.Ask(&v.quilt.InHand().Load, s.number())
		if s.asked != nil {
			asked = s.asked.Tell(s.number())
		}
		if !asked.Told() {
			return show{s.typing("", &asked)}
		}
		done.Spoiled = asked.Pieces
		return save{done}
	}
}

func (s walk) backKey(v view) binding {
	b := binding{name: "back", keys: []string{"backspace", "delete"}, key: "Backspace", says: v.words.KeyBack()}
	unpicked := s
	unpicked.picked, unpicked.at = nil, 0
	switch {
	case s.entry != "":
		b.says = v.words.KeyErase()
		b.do = func() action { return show{s.typing(s.entry[:len(s.entry)-1], s.asked)} }
	case s.asked != nil:
		b.do = func() action { return show{s.typing("", nil)} }
	case len(s.picked) > 0:
		b.says = v.words.KeyPickNone()
		b.do = func() action { return show{unpicked} }
	case v.quilt.Last.Seq == 0:
		b.refused = v.words.NothingBack()
	default:
		b.do = func() action { return save{session.Back{}} }
	}
	return b
}

// roughKeys look at the other rough cuts.
func (s walk) roughKeys(v view) []binding {
	n := len(v.quilt.InHand().RoughCuts)
	if n < 2 {
		return nil
	}
	look := func(by int) func() action {
		return func() action {
			looking := s
			looking.rough = (s.rough + by + n) % n
			return show{looking}
		}
	}
	return []binding{
		{name: "down", keys: []string{"right", "down", "tab"}, key: "Right", says: v.words.KeyNextRough(), kind: moving, do: look(1)},
		{name: "up", keys: []string{"left", "up", "shift+tab"}, key: "Left", says: v.words.KeyLastRough(), kind: moving, do: look(-1)},
	}
}

// cursorKeys move the cursor over the pieces of the picture.
func (s walk) cursorKeys(v view, left, right, up, down string) []binding {
	go1 := func(dx, dy int) func() action {
		return func() action {
			moved := s
			moved.at = matpic.Move(&v.quilt.InHand().Load, s.at-1, dx, dy) + 1
			return show{moved}
		}
	}
	all := []binding{
		{name: "right", keys: []string{right, "tab"}, key: "Right", says: v.words.KeyPick(), kind: moving, do: go1(1, 0)},
		{name: "left", keys: []string{left, "shift+tab"}, key: "Left", says: v.words.KeyPickBack(), kind: moving, do: go1(-1, 0)},
	}
	if up == "" {
		return all
	}
	return append(all,
		binding{name: "row up", keys: []string{up}, key: "Up", says: v.words.KeyPickUp(), kind: moving, do: go1(0, -1)},
		binding{name: "row down", keys: []string{down}, key: "Down", says: v.words.KeyPickDown(), kind: moving, do: go1(0, 1)})
}

// pointed is the binding of a piece that was clicked: at the peel step it is
// crossed out or not, elsewhere the cursor goes there.
func (s walk) pointed(v view, name string) (binding, bool) {
	i, ok := pieceNamed(name)
	if !ok || i >= len(v.quilt.InHand().Pieces) {
		return binding{}, false
	}
	s.at = i + 1
	if s.peeling(v) && s.asked == nil {
		s = s.crossing(i)
	}
	return binding{name: name, kind: moving, do: func() action { return show{s} }}, true
}

const pieceZone = "piece "

func pieceNamed(name string) (int, bool) {
	if len(name) <= len(pieceZone) || name[:len(pieceZone)] != pieceZone {
		return 0, false
	}
	i, err := strconv.Atoi(name[len(pieceZone):])
	return i, err == nil && i >= 0
}

// crossing crosses a piece out, or takes the cross off. A count typed before
// gives way to it.
func (s walk) crossing(piece int) walk {
	s.entry = ""
	picked := slices.Clone(s.picked)
	if i := slices.Index(picked, piece); i >= 0 {
		s.picked = slices.Delete(picked, i, i+1)
		return s
	}
	s.picked = append(picked, piece)
	slices.Sort(s.picked)
	return s
}
