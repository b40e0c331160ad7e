package look

import (
	"strings"

	"github.com/muesli/termenv"
)

// Choose picks the look and the kind of terminal from the environment:
// NO_COLOR (set and not empty) means no colour; COLORFGBG tells light from
// dark; COLORTERM and TERM tell how many colours there are.
func Choose(getenv func(string) string, dark bool) (*Look, termenv.Profile) {
	profile := Profile(getenv)
	switch {
	case getenv("NO_COLOR") != "" || profile == termenv.Ascii:
		return &Plain, profile
	case dark:
		return &Dark, profile
	}
	return &Light, profile
}

// Profile is how many colours the terminal is said to have.
func Profile(getenv func(string) string) termenv.Profile {
	term, colours := getenv("TERM"), getenv("COLORTERM")
	switch {
	case term == "" || term == "dumb" || strings.HasPrefix(term, "vt1") || strings.HasPrefix(term, "vt2"):
		return termenv.Ascii
	case colours == "truecolor" || colours == "24bit":
		if strings.HasPrefix(term, "screen") { // passes 24 bits on to nobody
			return termenv.ANSI256
		}
		return termenv.TrueColor
	case strings.Contains(term, "256color"):
		return termenv.ANSI256
	}
	return termenv.ANSI
}
