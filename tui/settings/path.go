package settings

import (
	"path/filepath"
	"strings"

	"example.org/matside/plan/say"
)

// Path says where the settings are kept, "" where no folder is known. It is
// pure; getenv is os.Getenv.
//
// That is $XDG_CONFIG_HOME/matside/settings, where that is an absolute path
// (the XDG Base Directory Specification tells us to ignore others), else
// .config under HOME; on Windows AppData; on a Mac Library/Application
// Support under HOME.
func Path(goos string, getenv func(string) string) string {
	if p := getenv("XDG_CONFIG_HOME"); filepath.IsAbs(p) {
		return filepath.Join(p, "matside", "settings")
	}
	if goos == "windows" {
		if p := getenv("AppData"); p != "" {
			return filepath.Join(p, "matside", "settings")
		}
		return ""
	}
	home := getenv("HOME")
	switch {
	case home == "":
		return ""
	case goos == "darwin":
		return filepath.Join(home, "Library", "Application Support", "matside", "settings")
	}
	return filepath.Join(home, ".config", "matside", "settings")
}

// FromEnvironment is s with what the environment says for now: NO_COLOR (set
// and not empty, as no-color.org has it), MATSIDE_LOOK, MATSIDE_STILL,
// MATSIDE_UNITS, MATSIDE_LANGUAGE; and where nobody chose a language, that of
// the messages (LC_ALL, LC_MESSAGES, LANG) if we speak it.
func FromEnvironment(s Settings, getenv func(string) string) Settings {
	if getenv("NO_COLOR") != "" {
		s.Look = "no color"
	}
	for name, variable := range map[string]string{"look": "MATSIDE_LOOK", "units": "MATSIDE_UNITS", "language": "MATSIDE_LANGUAGE", "still": "MATSIDE_STILL"} {
		if value := getenv(variable); value != "" {
			s, _ = With(s, name, value)
		}
	}
	if s.Language == "" {
		s.Language = spoken(getenv)
	}
	return s
}

// spoken is the language of the environment, "" for English and for those we
// don't speak.
func spoken(getenv func(string) string) string {
	for _, name := range []string{"LC_ALL", "LC_MESSAGES", "LANG"} {
		value := getenv(name)
		if value == "" {
			continue
		}
		if value == "de" || strings.HasPrefix(value, "de_") || strings.HasPrefix(value, "de.") {
			return "de"
		}
		return ""
	}
	return ""
}

// With is s with one setting as it is said by name; how says what may stand
// there, where it can't be that.
func With(s Settings, name, value string) (_ Settings, how say.Sentence) {
	f, ok := find(name)
	if !ok {
		return s, NoSetting.Say()
	}
	value = strings.ToLower(value)
	if f.how.Kind == OnOrOff { // as variables are set
		switch value {
		case "1", "true", "yes":
			value = "on"
		case "0", "false", "no":
			value = "off"
		}
	}
	now := s
	if !f.read(&now, value) {
		return s, f.how
	}
	return now, say.Nothing
}
