package tui

import (
	"strconv"

	"example.org/matside/tui/guide"
)

// peelKeys tell what was spoiled, by count or on the picture, and what mat
// and blade did. The arrows step the count until there is a cursor.
func (s walk) peelKeys(v view) []binding {
	all := s.digits(v)
	switch {
	case s.asked != nil:
		return append(all, s.stepKeys(v)...)
	case s.at == 0:
		all = append(all, s.cursorKeys(v, "left", "right", "", "")...)
		all = append(all, s.stepKeys(v)...)
	default:
		all = append(all, s.cursorKeys(v, "left", "right", "up", "down")...)
	}
	cross := binding{name: "cross", keys: []string{"x"}, key: "x", do: func() action { return show{s.crossing(s.at - 1)} }}
	cross.says = v.words.KeyCross(s.crossed(s.at - 1))
	if s.at == 0 {
		cross.refused = v.words.NoPiece()
	}
	return append(append(all, cross), s.noteKeys(v)...)
}

func (s walk) crossed(piece int) bool {
	for _, p := range s.picked {
		if p == piece {
			return true
		}
	}
	return false
}

// typing is the step with another count typed, or another question asked.
func (s walk) typing(entry string, asked *guide.Asked) walk {
	s.entry, s.asked = entry, asked
	s.picked, s.at = nil, 0
	return s
}

// number is the count typed.
func (s walk) number() int {
	n, _ := strconv.Atoi(s.entry)
	return n
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

// noteKeys note what the mat and the blade did: both are learned from.
func (s walk) noteKeys(v view) []binding {
	lifted, ragged := s, s
	lifted.lifted, ragged.ragged = !s.lifted, !s.ragged
	return []binding{
		{name: "lifted", keys: []string{"f"}, key: "f", says: v.words.KeyLifted(s.lifted), do: func() action { return show{lifted} }},
		{name: "ragged", keys: []string{"r"}, key: "r", says: v.words.KeyRagged(s.ragged), do: func() action { return show{ragged} }},
	}
}

// digits are the keys that type the count.
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
	return all
}

// stepKeys step the count.
func (s walk) stepKeys(v view) []binding {
	step := func(by int) func() action {
		return func() action { return show{s.typing(trim(strconv.Itoa(max(s.number()+by, 0))), s.asked)} }
	}
	return []binding{
		{name: "more", keys: []string{"up", "+"}, key: "Up", says: v.words.KeyMore(), kind: moving, do: step(1), refused: s.full(v)},
		{name: "fewer", keys: []string{"down", "-"}, key: "Down", says: v.words.KeyFewer(), kind: moving, do: step(-1)},
	}
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
