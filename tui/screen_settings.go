package tui

import (
	"slices"
	"strconv"
	"time"

	"example.org/matside/tui/canvas"
	"example.org/matside/tui/look"
	"example.org/matside/tui/settings"
)

// choosing is the screen of the settings: each is changed where it stands,
// and in use at once.
type choosing struct {
	at    int
	under screen
}

// choice is a setting with the values it steps through.
type choice struct {
	says, value string
	step        func(by int) settings.Settings
}

// The values that the numbers step through.
var (
	pauses = []int{0, 20, 30, 45, 60, 90, -1}
	gaps   = []time.Duration{settings.ShortestKeyGap, settings.UsualKeyGap, 400 * time.Millisecond, 700 * time.Millisecond, settings.LongestKeyGap}
)

func choices(v view) []choice {
	s, w := v.settings, v.words
	pick := func(says, now string, all []string, name func(string) string, take func(*settings.Settings, string)) choice {
		return choice{says, name(now), func(by int) settings.Settings {
			next := s
			take(&next, stepped(append([]string{""}, all...), now, by))
			return next
		}}
	}
	toggle := func(says string, now bool, flip func(*settings.Settings)) choice {
		return choice{says, w.OnOff(now), func(int) settings.Settings {
			next := s
			flip(&next)
			return next
		}}
	}
	return []choice{
		pick(w.SettingUnits(), s.Units, settings.Units, w.UnitsName, func(s *settings.Settings, v string) { s.Units = v }),
		pick(w.SettingLetters(), s.Letters, settings.Letters, w.LettersName, func(s *settings.Settings, v string) { s.Letters = v }),
		pick(w.SettingLook(), s.Look, settings.Looks, w.LookName, func(s *settings.Settings, v string) { s.Look = v }),
		toggle(w.SettingSound(), s.Sound, func(s *settings.Settings) { s.Sound = !s.Sound }),
		toggle(w.SettingNotify(), s.Notify, func(s *settings.Settings) { s.Notify = !s.Notify }),
		{w.SettingPause(), w.PauseName(s.Pause), func(by int) settings.Settings {
			next := s
			next.Pause = stepped(pauses, s.Pause, by)
			return next
		}},
		{w.SettingKeys(), w.KeysName(s.Gap()), func(by int) settings.Settings {
			next := s
			if next.KeyGap = stepped(gaps, s.Gap(), by); next.KeyGap == settings.UsualKeyGap {
				next.KeyGap = 0
			}
			return next
		}},
		toggle(w.SettingStill(), s.Still, func(s *settings.Settings) { s.Still = !s.Still }),
		pick(w.SettingLanguage(), s.Language, settings.Languages, w.LanguageName, func(s *settings.Settings, v string) { s.Language = v }),
	}
}

// stepped is the value by steps behind now, round and round; from a value
// that is none of them it goes to the first.
func stepped[T comparable](all []T, now T, by int) T {
	at := slices.Index(all, now)
	if at < 0 {
		return all[0]
	}
	return all[((at+by)%len(all)+len(all))%len(all)]
}

func (v view) settingsKey(under screen) binding {
	return binding{name: "settings", keys: []string{"g"}, key: "g", says: v.words.KeySettings(), do: func() action { return show{choosing{under: under}} }}
}

func (s choosing) bindings(v view) []binding {
	all := choices(v)
	n := len(all)
	move := func(by int) func() action {
		return func() action { return show{choosing{(s.at + by + n) % n, s.under}} }
	}
	change := func(by int) func() action { return func() action { return set{all[s.at].step(by)} } }
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
	all := choices(v)
	high := 1
	if c.H >= 2*len(all)+2 {
		high = 2
	}
	wide := 0
	for _, ch := range all {
		wide = max(wide, canvas.Width(ch.says))
	}
	wide = min(wide, c.W/2)
	for i, ch := range all {
		y, style := i*high, text
		if i == s.at {
			style = canvas.Style{Ink: look.Strong, Bold: true, Reverse: true}
			c.Fill(0, y, c.W, 1, ' ', style)
			c.Text(0, y, ">", style)
		}
		c.Text(2, y, canvas.Fit(strconv.Itoa(i+1)+"  "+ch.says, wide+3), style)
		c.Text(wide+7, y, canvas.Fit(ch.value, c.W-wide-8), style)
		c.Zone(0, y, c.W, high, rowName(i))
	}
	if y := len(all)*high + 1; y < c.H {
		c.Text(2, y, canvas.Fit(v.words.SettingsHow(), c.W-3), quiet)
	}
}
