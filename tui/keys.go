package tui

import "example.org/matside/session"

// everywhere are the keys that lead from one screen to the others.
func (v view) everywhere(s screen) []binding {
	var all []binding
	if v.quilt != nil {
		all = append(all, v.overviewKey())
	}
	return append(all, v.matsKey(), v.daysKey(), v.shelfKey(), v.settingsKey(s), v.helpKey(s), v.leaveKey(), v.lookKey(), v.sleepKey())
}

// homeKey goes back to the step, or where there is none to the first page.
func (v view) homeKey() binding {
	b := binding{name: "on", keys: onKeys, key: "Enter", says: v.words.KeyBackToStep(), do: func() action { return show{v.home()} }}
	if v.quilt == nil {
		b.says = v.words.KeyBack()
	}
	return b
}

func (v view) leaveKey() binding {
	return binding{name: "leave", keys: []string{"q", "ctrl+c"}, key: "q", says: v.words.KeyLeave(), do: func() action { return leave{} }}
}

func (v view) overviewKey() binding {
	return binding{name: "loads", keys: []string{"o"}, key: "o", says: v.words.KeyLoads(), do: func() action { return show{overview{at: v.quilt.Current}} }}
}

func (v view) matsKey() binding {
	return binding{name: "mats", keys: []string{"m"}, key: "m", says: v.words.KeyMats(), do: func() action { return show{mats{}} }}
}

func (v view) sleepKey() binding {
	return binding{name: "sleep", keys: []string{"ctrl+z"}, key: "ctrl+z", says: v.words.KeySleep(), do: func() action { return sleep{} }}
}

func (v view) lookKey() binding {
	return binding{name: "look", keys: []string{"l"}, key: "l", says: v.words.KeyLook(v.look), do: func() action { return turn{} }}
}

func (v view) helpKey(under screen) binding {
	return binding{name: "help", keys: []string{"?", "h"}, key: "?", says: v.words.KeyHelp(), do: func() action { return show{help{under: under}} }}
}

func (v view) backTo(s screen) binding {
	return binding{name: "back", keys: []string{"backspace", "esc"}, key: "Backspace", says: v.words.KeyBack(), do: func() action { return show{s} }}
}

func (v view) daysKey() binding {
	return binding{name: "days", keys: []string{"d"}, key: "d", says: v.words.KeyDays(), do: func() action { return show{days{}} }}
}

func (v view) shelfKey() binding {
	return binding{name: "shelf", keys: []string{"s"}, key: "s", says: v.words.KeyShelf(), do: func() action { return show{shelf{}} }}
}

func (v view) pauseKey() binding {
	return binding{name: "pause", keys: []string{"p"}, key: "p", says: v.words.KeyPause(), do: func() action { return save{session.Pause{}} }}
}

// washKeys record a wash and take it back.
func (v view) washKeys() []binding {
	mats := v.state.MatsThere()
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
