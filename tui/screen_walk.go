package tui

import (
	"strconv"

	"example.org/matside/session"
	"example.org/matside/tui/guide"
)

// walk is the step she is at.
type walk struct {
	entry string       // digits of the count of spoiled pieces
	asked *guide.Asked // which of them, where several lines are on the mat
	page  int          // of words that are too many for the window
	rough int          // which rough cut is looked at, at the fabric step
	// What else is noted at the peel step.
	lifted, ragged bool
}

func (v view) facts() guide.Facts {
	load := v.quilt.InHand()
	panels := make(map[int]int)
	list := v.quilt.ListOf(load)
	for i, f := range list.Fabrics {
		panels[i] = len(f.Stock)
	}
	return guide.Facts{List: list, Load: &load.Load, Step: v.quilt.Step, Mat: v.quilt.Mat,
		Panels: func(fabric int) int { return panels[fabric] }}
}

func (s walk) peeling(v view) bool { return v.quilt.Step == session.Peel }

// typing is the step with another count typed, or another question asked.
func (s walk) typing(entry string, asked *guide.Asked) walk {
	s.entry, s.asked = entry, asked
	return s
}

// number is the count typed.
func (s walk) number() int {
	n, _ := strconv.Atoi(s.entry)
	return n
}

func (s walk) bindings(v view) []binding {
	all := []binding{s.onKey(v), s.backKey(v)}
	if s.peeling(v) {
		all = append(all, s.digits(v)...)
		all = append(all, s.noteKeys(v)...)
	}
	all = append(all, s.lookKeys(v)...)
	all = append(all, s.washKeys(v)...)
	return append(all, v.overviewKey(), v.matsKey(), v.helpKey(s), v.leaveKey(), v.lookKey(), v.sleepKey())
}

func (s walk) onKey(v view) binding {
	b := binding{name: "on", keys: []string{"enter", "space", "ctrl+j"}, key: "Enter", says: v.words.Done(int(v.quilt.Step)), do: s.goOn(v)}
	if s.peeling(v) && (s.asked != nil || s.number() > 0) {
		b.says = v.words.TakeCount(s.number())
		b.refused = s.wrong(v)
	}
	return b
}

// wrong says why the count typed can't be right.
func (s walk) wrong(v view) string {
	if s.asked == nil {
		if n := len(v.quilt.InHand().Pieces); s.number() > n {
			return v.words.OnlySoMany(n)
		}
		return ""
	}
	switch least, most := s.asked.Bounds(); {
	case s.number() > most:
		return v.words.OnlyOfThem(most)
	case s.number() < least:
		return v.words.AtLeast(least)
	}
	return ""
}

// goOn ends the step, or asks further which pieces were spoiled.
func (s walk) goOn(v view) func() action {
	return func() action {
		if !s.peeling(v) {
			return save{session.GoOn{}}
		}
		asked := guide.Ask(&v.quilt.InHand().Load, s.number())
		if s.asked != nil {
			asked = s.asked.Tell(s.number())
		}
		if asked.Told() {
			return save{session.GoOn{Spoiled: asked.Pieces, Lifted: s.lifted, Ragged: s.ragged}}
		}
		return show{s.typing("", &asked)}
	}
}

func (s walk) backKey(v view) binding {
	b := binding{name: "back", keys: []string{"backspace", "delete"}, key: "Backspace", says: v.words.KeyBack()}
	switch {
	case s.entry != "":
		b.says = v.words.KeyErase()
		b.do = func() action { return show{s.typing(s.entry[:len(s.entry)-1], s.asked)} }
	case s.asked != nil:
		b.do = func() action { return show{s.typing("", nil)} }
	case v.quilt.Last.Seq == 0:
		b.refused = v.words.NothingBack()
	default:
		b.do = func() action { return save{session.Back{}} }
	}
	return b
}

// noteKeys note what the mat and the blade did: both are learned from.
func (s walk) noteKeys(v view) []binding {
	lifted, ragged := s, s
	lifted.lifted, ragged.ragged = !s.lifted, !s.ragged
	return []binding{
		{name: "lifted", keys: []string{"f"}, key: "f", says: v.words.KeyLifted(s.lifted), do: func() action { return show{lifted} }},
		{name: "ragged", keys: []string{"r"}, key: "r", says: v.words.KeyRagged(s.ragged), do: func() action { return show{ragged} }},
	}
}

// lookKeys look at the other rough cuts, and at the next page of words.
func (s walk) lookKeys(v view) []binding {
	turned := s
	turned.page++
	all := []binding{{name: "page", keys: []string{"n", "pgdown"}, kind: moving, do: func() action { return show{turned} }}}
	n := len(v.quilt.InHand().RoughCuts)
	if v.quilt.Step != session.Fabric || n < 2 {
		return all
	}
	look := func(by int) func() action {
		return func() action {
			looking := s
			looking.rough = (s.rough + by + n) % n
			return show{looking}
		}
	}
	return append(all,
		binding{name: "next rough", keys: []string{"right", "down", "tab"}, key: "Right", says: v.words.KeyNextRough(), kind: moving, do: look(1)},
		binding{name: "last rough", keys: []string{"left", "up", "shift+tab"}, key: "Left", says: v.words.KeyLastRough(), kind: moving, do: look(-1)})
}

// digits are the keys of the count: typed, or stepped with the arrows.
func (s walk) digits(v view) []binding {
	const most = 3
	all := []binding{}
	for d := range 10 {
		digit := strconv.Itoa(d)
		b := binding{name: "digit " + digit, keys: []string{digit}, kind: typed,
			do: func() action { return show{s.typing(trim(s.entry+digit), s.asked)} }}
		if d == 0 {
			b.key, b.says = "0 to 9", v.words.KeyCount()
		}
		if len(s.entry) >= most {
			b.refused = v.words.LongNumber()
		}
		all = append(all, b)
	}
	step := func(by int) func() action {
		return func() action { return show{s.typing(trim(strconv.Itoa(max(s.number()+by, 0))), s.asked)} }
	}
	return append(all,
		binding{name: "more", keys: []string{"up", "right", "+"}, key: "Up", says: v.words.KeyMore(), kind: moving, do: step(1), refused: s.full(v)},
		binding{name: "fewer", keys: []string{"down", "left", "-"}, key: "Down", says: v.words.KeyFewer(), kind: moving, do: step(-1)})
}

// full says why the count can't be stepped up any more.
func (s walk) full(v view) string {
	return s.typing(strconv.Itoa(s.number()+1), s.asked).wrongAbove(v)
}

func (s walk) wrongAbove(v view) string {
	if s.asked != nil {
		if _, most := s.asked.Bounds(); s.number() > most {
			return v.words.OnlyOfThem(most)
		}
		return ""
	}
	return s.wrong(v)
}

// trim drops leading zeros but the last.
func trim(digits string) string {
	for len(digits) > 1 && digits[0] == '0' {
		digits = digits[1:]
	}
	return digits
}

// washKeys record a wash and take it back.
func (s walk) washKeys(v view) []binding {
	mats := v.mats()
	b := binding{name: "wash", keys: []string{"w"}, key: "w", says: v.words.KeyWash()}
	if len(mats) == 1 {
		b.refused = v.unwashable(mats[0].Name)
		b.do = func() action { return save{session.Wash{Mat: mats[0].Name}} }
	} else {
		b.do = func() action { return show{whichMat{}} }
	}
	all := []binding{b}
	if m := v.mat(); m != nil && m.Since == 0 && m.Last != 0 && m.Washes > 0 {
		all = append(all, binding{name: "unwash", keys: []string{"u"}, key: "u", says: v.words.KeyUnwash(m.Name),
			do: func() action { return save{session.TakeBackMat{Mat: m.Name}} }})
	}
	return all
}

// unwashable says why a mat can't have been washed just now, or "".
func (v view) unwashable(mat string) string {
	if v.quilt != nil && v.quilt.Mat == mat && v.quilt.Step > session.Lay && v.quilt.InHand() != nil {
		return v.words.FabricOnIt(mat)
	}
	return ""
}
