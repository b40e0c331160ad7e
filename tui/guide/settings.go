package guide

import (
	"slices"
	"time"

	"example.org/matside/tui/settings"
	"example.org/matside/tui/words"
)

// Choice is a setting with the values it steps through.
type Choice struct {
	Says, Value string
	Step        func(by int) settings.Settings
}

// The values that the numbers step through.
var (
	pauses = []int{0, 20, 30, 45, 60, 90, -1}
	gaps   = []time.Duration{settings.ShortestKeyGap, settings.UsualKeyGap, 400 * time.Millisecond, 700 * time.Millisecond, settings.LongestKeyGap}
)

// Choices are all settings there are.
func Choices(w words.Words, s settings.Settings) []Choice {
	pick := func(says, now string, all []string, name func(string) string, take func(*settings.Settings, string)) Choice {
		return Choice{says, name(now), func(by int) settings.Settings {
			next := s
			take(&next, stepped(append([]string{""}, all...), now, by))
			return next
		}}
	}
	toggle := func(says string, now bool, flip func(*settings.Settings)) Choice {
		return Choice{says, w.OnOff(now), func(int) settings.Settings {
			next := s
			flip(&next)
			return next
		}}
	}
	return []Choice{
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
