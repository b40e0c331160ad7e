package settings

import "time"

// Settings are what she chose. The zero value is the usual: each field says
// what zero stands for.
type Settings struct {
	Look     string        // "dark", "light", "high contrast", "no color"; "": as the terminal says
	Letters  string        // "large", "small"; "": large where there is room
	Units    string        // "in", "cm"; "": as the cut list says
	Language string        // "en", …; "": English
	Sound    bool          // ring the bell when the cut ought to be over and when a pause is due
	Notify   bool          // send the terminal's notification then
	Pause    int           // minutes of handling before a pause is due, -1 never; 0: by her habits
	KeyGap   time.Duration // a second hit sooner than this belongs to the first; 0: UsualKeyGap
	Still    bool          // nothing moves by itself, the time left neither
}

// UsualKeyGap parts a bounce, or a held key's repeat, from a press.
const UsualKeyGap = 250 * time.Millisecond

// The shortest and the longest gap that can be set: a held key repeats every
// 33 ms or so, and what is longer keeps her waiting.
const ShortestKeyGap, LongestKeyGap = 120 * time.Millisecond, 1500 * time.Millisecond

// Gap is the gap to use: KeyGap brought within its bounds.
func (s Settings) Gap() time.Duration {
	if s.KeyGap == 0 {
		return UsualKeyGap
	}
	return min(max(s.KeyGap, ShortestKeyGap), LongestKeyGap)
}
