package tui

import (
	"time"

	"example.org/matside/session"
	"example.org/matside/tui/canvas"
	"example.org/matside/tui/chart"
	"example.org/matside/tui/words"
)

// mats shows every mat and what can be done with the one at the cursor.
type mats struct{ at int }

func (mats) title(v view) string   { return v.words.AllMats() }
func (mats) caution(v view) string { return v.words.AdhesiveCare() }
func (s mats) stay(v view) screen  { return s }

// chosen is the mat at the cursor.
func (s mats) chosen(v view) session.Mat {
	all := v.state.MatsThere()
	return all[s.index(v)]
}

func (s mats) bindings(v view) []binding {
	m, n := s.chosen(v), len(v.state.MatsThere())
	do := func(name, key, says, refused string, a session.Action) binding {
		return binding{name: name, keys: []string{key}, key: key, says: says, refused: refused, do: func() action { return save{a} }}
	}
	step := func(by int) func() action { return func() action { return show{mats{(s.index(v) + by + n) % n}} } }
	due := v.state.Due(m.Name).After
	all := []binding{
		v.homeKey(),
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
	all = append(all, do("add", "n", v.words.KeyAddMat(), "", session.AddMat{Mat: v.words.MatNumber(len(v.state.Mats) + 1)}))
	all = append(all, s.rareKeys(v, m)...)
	return append(all, v.helpKey(s), v.leaveKey(), v.lookKey(), v.sleepKey())
}

// rareKeys name a mat, throw it away, and note a new blade. What can't be
// taken back is asked first.
func (s mats) rareKeys(v view, m session.Mat) []binding {
	name := func() action {
		return show{naming{about: v.words.NewNameOf(v.words.Mat(m.Name)), under: s, do: func(name string) action { return save{session.RenameMat{Mat: m.Name, To: name}} }}}
	}
	ask := func(says, more string, a session.Action) func() action {
		return func() action { return show{sure{says: says, more: more, yes: save{a}, under: s}} }
	}
	return []binding{
		{name: "rename", keys: []string{"r"}, key: "r", says: v.words.KeyRename(), do: name},
		{name: "retire", keys: []string{"x"}, key: "x", says: v.words.KeyRetire(), do: ask(v.words.SureRetire(m.Name), v.words.RetireMeans(), session.RetireMat{Mat: m.Name})},
		{name: "blade", keys: []string{"b"}, key: "b", says: v.words.KeyBlade(), do: ask(v.words.SureBlade(), v.words.ChangeBladeCare(), session.ChangeBlade{})},
	}
}

// index is the mat at the cursor.
func (s mats) index(v view) int { return max(0, min(s.at, len(v.state.MatsThere())-1)) }

// pointed is a mat that was clicked: the cursor goes there.
func (s mats) pointed(v view, name string) (binding, bool) {
	for i := range v.state.MatsThere() {
		if name == cardZone(i) {
			return binding{name: name, kind: moving, do: func() action { return show{mats{i}} }}, true
		}
	}
	return binding{}, false
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
	const wide, gap = 100, 4
	if c.W >= wide {
		w := (c.W - gap) / 2
		left, right := canvas.New(w, c.H, text), canvas.New(w, c.H, text)
		y := s.list(v, left, (c.H-6)/2)
		v.bladeLines(left, y+1)
		s.about(v, right, 0)
		c.Draw(0, 0, left)
		c.Draw(w+gap, 0, right)
		return
	}
	y := s.list(v, c, max(c.H-10, 1))
	y = s.about(v, c, y+1)
	v.bladeLines(c, y+1)
}

// list draws the mats, a line each, as many as rows hold, and returns the row
// after them.
func (s mats) list(v view, c *canvas.Canvas, rows int) int {
	all, at := v.state.MatsThere(), s.index(v)
	from := max(0, min(at-rows/2, len(all)-rows))
	shown := all[from:min(from+rows, len(all))]
	for y, m := range shown {
		style := text
		if from+y == at {
			style = picked
			c.Fill(0, y, c.W, 1, ' ', style)
		}
		c.Zone(0, y, c.W, 1, cardZone(from+y))
		name := v.words.Mat(m.Name)
		if v.quilt != nil && v.quilt.Mat == m.Name {
			name += ", " + v.words.InUse()
		}
		right := v.words.SinceWash(m.Since)
		c.Text(1, y, canvas.Fit(name, c.W-3-canvas.Width(right)), style)
		c.Right(c.W-1, y, right, style)
	}
	return len(shown)
}

// about is all that is known of the mat at the cursor: in words, and how its
// chance to lift grows as a curve.
func (s mats) about(v view, c *canvas.Canvas, y int) int {
	m := s.chosen(v)
	for _, l := range append(v.matLines(m), v.turnsLine()...) {
		for _, part := range canvas.Wrap(l.text, c.W) {
			c.Text(0, y, part, l.style)
			y++
		}
	}
	a := v.state.Advise(m.Name)
	curve := chart.Curve{Chances: a.Curve, Here: m.Since, Due: a.After}
	const most, under = 12, 5 // rows of the curve; those kept for the blade
	plot := canvas.New(min(c.W, 70), min(c.H-y-2-under, most), text)
	if curve.Draw(plot, charts) {
		c.Text(0, y+1, canvas.Fit(v.words.CurveTitle(), c.W), strong)
		c.Draw(0, y+2, plot)
		y += 2 + plot.H
	}
	return y
}

// turnsLine says what a second mat saves, or would save.
func (v view) turnsLine() []line {
	if v.quilt == nil || v.quilt.InHand() == nil {
		return nil
	}
	t := v.state.WorkTogether(v.quilt.ID, v.now)
	if t.Second < time.Minute {
		return nil
	}
	return []line{{v.words.SecondMat(t.Second, len(v.state.MatsThere()) > 1), text}}
}

// bladeLines say how the blade stands.
func (v view) bladeLines(c *canvas.Canvas, y int) {
	a := v.state.AdviseBlade()
	lines := []line{{v.words.BladeCut(v.words.Long(a.Length, v.unit())), strong}}
	if a.Change {
		lines = append(lines, line{v.words.ChangeBladeTime(), warn})
	}
	lines = append(lines, line{v.words.MayFray(a.Next.Low, a.Next.Mid, a.Next.High), text})
	for _, l := range wrapped(lines, c.W) {
		c.Text(0, y, l.text, l.style)
		y++
	}
}

// matLines say how a mat stands.
func (v view) matLines(m session.Mat) []line {
	due := v.state.Due(m.Name)
	lines := []line{{v.words.SinceWash(m.Since) + ", " + v.words.WashesAndLoads(m.Washes, m.Loads), text}}
	switch {
	case v.now.Before(m.DryAt):
		lines = append(lines, line{words.Capital(v.words.Drying(v.words.Clock(m.DryAt))) + ".", warn})
	case due.Left <= 0:
		lines = append(lines, line{v.words.WashDue(), alarm})
	}
	a := v.state.Advise(m.Name)
	if a.Lifted {
		lines = append(lines, line{v.words.LiftedSince(), warn})
	} else {
		lines = append(lines, line{v.words.DueAfter(due.After, due.Own, due.Guess), text})
	}
	if a.NewMat {
		lines = append(lines, line{v.words.NewMatTime(), warn})
	}
	return append(lines, line{v.words.MayLift(a.Next.Low, a.Next.Mid, a.Next.High), text})
}
