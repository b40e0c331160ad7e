package tui

import (
	"example.org/matside/session"
	"example.org/matside/tui/canvas"
	"example.org/matside/tui/look"
)

// mats shows every mat and what can be done with the one at the cursor.
type mats struct{ at int }

func (mats) title(v view) string   { return v.words.AllMats() }
func (mats) caution(v view) string { return v.words.AdhesiveCare() }
func (s mats) stay(v view) screen  { return s }

// chosen is the mat at the cursor.
func (s mats) chosen(v view) session.Mat {
	all := v.mats()
	return all[max(0, min(s.at, len(all)-1))]
}

func (s mats) bindings(v view) []binding {
	m := s.chosen(v)
	n := len(v.mats())
	do := func(name, key, says, refused string, a session.Action) binding {
		return binding{name: name, keys: []string{key}, key: key, says: says, refused: refused, do: func() action { return save{a} }}
	}
	step := func(by int) func() action { return func() action { return show{mats{(s.at + by + n) % n}} } }
	due := v.state.Due(m.Name).After
	all := []binding{
		{name: "on", keys: []string{"enter", "space", "ctrl+j"}, key: "Enter", says: v.words.KeyBackToStep(), do: func() action { return show{v.home()} }},
		v.backTo(v.home()),
		{name: "up", keys: []string{"up", "k"}, key: "Up", says: v.words.KeyUp(), kind: moving, do: step(-1)},
		{name: "down", keys: []string{"down", "j"}, key: "Down", says: v.words.KeyDown(), kind: moving, do: step(1)},
		do("wash", "w", v.words.KeyWash(), v.unwashable(m.Name), session.Wash{Mat: m.Name}),
		do("refresh", "a", v.words.KeyRefresh(), v.unwashable(m.Name), session.Refresh{Mat: m.Name}),
		do("unwash", "u", v.words.KeyTakeBackMat(), s.nothingBack(v, m), session.TakeBackMat{Mat: m.Name}),
		do("more", "+", v.words.KeyDueLater(), "", session.SetDue{Mat: m.Name, Loads: due + 1}),
		do("fewer", "-", v.words.KeyDueSooner(), s.least(v, due), session.SetDue{Mat: m.Name, Loads: due - 1}),
		do("advised", "d", v.words.KeyDueAdvised(), "", session.SetDue{Mat: m.Name}),
	}
	if v.quilt != nil {
		all = append(all, do("use", "m", v.words.KeyUseMat(), s.inUse(v, m), session.UseMat{Mat: m.Name}))
	}
	add := do("add", "n", v.words.KeyAddMat(), "", session.AddMat{Mat: v.words.MatNumber(len(v.state.Mats) + 1)})
	return append(all, add, v.helpKey(s), v.leaveKey(), v.lookKey(), v.sleepKey())
}

func (mats) nothingBack(v view, m session.Mat) string {
	if m.Last == 0 {
		return v.words.NothingBackMat(m.Name)
	}
	return ""
}

func (mats) least(v view, due int) string {
	if due <= 1 {
		return v.words.DueAtLeastOne()
	}
	return ""
}

func (mats) inUse(v view, m session.Mat) string {
	if v.quilt.Mat == m.Name {
		return v.words.MatInUse(m.Name)
	}
	return ""
}

func (s mats) body(v view, c *canvas.Canvas) {
	chosen := s.chosen(v)
	y := 0
	for _, m := range v.mats() {
		style := text
		if m.Name == chosen.Name {
			style = canvas.Style{Ink: look.Strong, Bold: true, Reverse: true}
			c.Fill(0, y, c.W, 1, ' ', style)
		}
		name := v.words.Mat(m.Name)
		if v.quilt != nil && v.quilt.Mat == m.Name {
			name += ", " + v.words.InUse()
		}
		c.Text(1, y, canvas.Fit(name, c.W-2), style)
		for _, l := range v.matLines(m) {
			for _, part := range canvas.Wrap(l.text, c.W-4) {
				y++
				c.Text(3, y, part, l.style)
			}
		}
		y += 2
	}
}

// matLines say how a mat stands.
func (v view) matLines(m session.Mat) []line {
	due := v.state.Due(m.Name)
	lines := []line{{v.words.SinceWash(m.Since) + ", " + v.words.WashesAndLoads(m.Washes, m.Loads), text}}
	switch {
	case v.now.Before(m.DryAt):
		lines = append(lines, line{capital(v.words.Drying(v.words.Clock(m.DryAt))) + ".", warn})
	case due.Left <= 0:
		lines = append(lines, line{v.words.WashDue(), alarm})
	}
	return append(lines, line{v.words.DueAfter(due.After, due.Own, due.Guess), text})
}
