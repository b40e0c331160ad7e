package tui

import (
	"fmt"
	"slices"
	"strings"

	"example.org/matside/session"
	"example.org/matside/tui/canvas"
	"example.org/matside/tui/guide"
	"example.org/matside/tui/matpic"
)

// overview lists all loads of the quilt, the one at the cursor drawn beside.
type overview struct{ at int } // the ID of the load at the cursor

func (overview) title(v view) string   { return v.words.AllLoads() }
func (overview) caution(v view) string { return "" }
func (s overview) stay(v view) screen  { return s }
func (s overview) index(v view) int {
	return max(slices.IndexFunc(v.quilt.Loads, func(l session.Load) bool { return l.ID == s.at }), 0)
}

func (s overview) bindings(v view) []binding {
	loads, i := v.quilt.Loads, s.index(v)
	l := &loads[i]
	done := v.quilt.LoadsDone()
	move := func(name, key, says string, to int) binding {
		return binding{name: name, keys: []string{key}, key: key, says: says, refused: s.fixed(v, l),
			do: func() action { return save{session.Move{Load: l.ID, To: to}} }}
	}
	goTo := func(to int) func() action {
		return func() action { return show{overview{loads[max(0, min(to, len(loads)-1))].ID}} }
	}
	all := []binding{
		v.homeKey(),
		v.backTo(v.home()),
		{name: "up", keys: []string{"up", "k"}, key: "Up", says: v.words.KeyUp(), kind: moving, do: goTo(i - 1)},
		{name: "down", keys: []string{"down", "j"}, key: "Down", says: v.words.KeyDown(), kind: moving, do: goTo(i + 1)},
		{name: "page up", keys: []string{"pgup"}, kind: moving, do: goTo(i - 10)},
		{name: "page down", keys: []string{"pgdown"}, kind: moving, do: goTo(i + 10)},
		{name: "first", keys: []string{"home"}, kind: moving, do: goTo(0)},
		{name: "last", keys: []string{"end"}, kind: moving, do: goTo(len(loads))},
		move("next", "n", v.words.KeyNext(), 0),
		move("earlier", "e", v.words.KeyEarlier(), i-done-1),
		move("later", "t", v.words.KeyLater(), i-done+1),
	}
	skip := binding{name: "skip", keys: []string{"p"}, key: "p", says: v.words.KeyPutOff(), refused: s.fixed(v, l),
		do: func() action { return save{session.Skip{Load: l.ID}} }}
	join := binding{name: "join", keys: []string{"c"}, key: "c", says: v.words.KeyJoin(), do: func() action { return save{session.JoinRecuts{}} }}
	return append(all, skip, join, v.helpKey(s), v.leaveKey(), v.lookKey(), v.sleepKey())
}

// fixed says why a load can't be put elsewhere, or "".
func (overview) fixed(v view, l *session.Load) string {
	switch {
	case l.Done:
		return v.words.LoadIsDone()
	case l.ID == v.quilt.Current && v.quilt.Step > session.Fabric:
		return v.words.LoadIsBegun()
	}
	return ""
}

func (s overview) body(v view, c *canvas.Canvas) {
	list := c
	l := &v.quilt.Loads[s.index(v)]
	f := guide.Facts{List: v.quilt.ListOf(l), Load: &l.Load}
	if cols, rows := matpic.Size(f.List.Mat, c.W*2/5, c.H-1); c.W-cols >= 56 {
		list = canvas.New(c.W-cols-2, c.H, text)
		m := v.matPicture(f)
		m.Spoiled, m.Say = pieceSet(l.Spoiled), nil
		c.Draw(c.W-cols, 0, m.Draw(cols, rows))
		c.Text(c.W-cols, rows, canvas.Fit(legend(v, f), cols), quiet)
	}
	s.list(v, list)
	c.Draw(0, 0, list)
}

// pointed is a load that was clicked: the cursor goes there.
func (s overview) pointed(v view, name string) (binding, bool) {
	for i, l := range v.quilt.Loads {
		if name == cardZone(i) {
			return binding{name: name, kind: moving, do: func() action { return show{overview{l.ID}} }}, true
		}
	}
	return binding{}, false
}

// list draws as many loads as there is room for, the cursor among them.
func (s overview) list(v view, c *canvas.Canvas) {
	loads, at, p := v.quilt.Loads, s.index(v), v.state.Pace()
	from := max(0, min(at-c.H/2, len(loads)-c.H))
	defer more(c, 0, c.H-1, from > 0, from+c.H < len(loads))
	digits := len(fmt.Sprint(len(loads)))
	for y := range min(c.H, len(loads)-from) {
		l := &loads[from+y]
		style := text
		marker := "  "
		if from+y == at {
			marker, style = "> ", picked
			c.Fill(0, y, c.W, 1, ' ', style)
		}
		c.Zone(0, y, c.W, 1, cardZone(from+y))
		state := guide.State(v.words, v.quilt, l)
		right := padded(v.words.PiecesShort(len(l.Pieces)), -10) + padded(v.words.MinutesShort(guide.Minutes(p, l)), -8) + "  " + padded(state, 9)
		left := fmt.Sprintf("%s%*d  %s", marker, digits, from+y+1, v.words.And(guide.Fabrics(v.quilt, l)))
		c.Text(0, y, canvas.Fit(left, c.W-canvas.Width(right)-2), style)
		c.Right(c.W, y, right, style)
	}
}

// padded fills text with blanks to w columns, from the left where w is below
// zero.
func padded(text string, w int) string {
	blanks := strings.Repeat(" ", max(max(w, -w)-canvas.Width(text), 0))
	if w < 0 {
		return blanks + text
	}
	return text + blanks
}
