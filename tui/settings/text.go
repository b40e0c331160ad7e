package settings

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"example.org/matside/plan/say"
)

// field is a setting as it stands in the file.
type field struct {
	name string
	read func(*Settings, string) bool // false: no such value
	say  func(Settings) string        // "" for the usual, which needs no line
	how  say.Sentence                 // what may stand behind the name
}

// fields are all there are, in the order they are written.
var fields = []field{
	word("look", func(s *Settings) *string { return &s.Look }, Looks),
	word("letters", func(s *Settings) *string { return &s.Letters }, Letters),
	word("units", func(s *Settings) *string { return &s.Units }, Units),
	word("language", func(s *Settings) *string { return &s.Language }, Languages),
	onOff("sound", func(s *Settings) *bool { return &s.Sound }),
	onOff("notification", func(s *Settings) *bool { return &s.Notify }),
	{"pause", readPause, sayPause, MinutesOrNever.Say()},
	{"keys", readKeys, sayKeys, Milliseconds.Say()},
	onOff("still", func(s *Settings) *bool { return &s.Still }),
}

// The values of the settings that are words.
var (
	Looks     = []string{"dark", "light", "high contrast", "no color"}
	Letters   = []string{"large", "small"}
	Units     = []string{"in", "cm"}
	Languages = []string{"en", "de"}
)

func word(name string, of func(*Settings) *string, all []string) field {
	return field{name,
		func(s *Settings, value string) bool {
			value = strings.ReplaceAll(strings.ReplaceAll(value, "colour", "color"), "-", " ")
			if value != "" && !slices.Contains(all, value) {
				return false
			}
			*of(s) = value
			return true
		},
		func(s Settings) string { return *of(&s) },
		OneOf.Say(strings.Join(all, ", ")),
	}
}

func onOff(name string, of func(*Settings) *bool) field {
	return field{name,
		func(s *Settings, value string) bool {
			*of(s) = value == "on"
			return value == "on" || value == "off"
		},
		func(s Settings) string {
			if *of(&s) {
				return "on"
			}
			return ""
		},
		OnOrOff.Say(),
	}
}

// longestPause is in minutes.
const longestPause = 240

func readPause(s *Settings, value string) bool {
	if value == "never" {
		s.Pause = -1
		return true
	}
	n, err := strconv.Atoi(strings.TrimSpace(strings.TrimSuffix(value, "min")))
	if err != nil || n < 1 || n > longestPause {
		return false
	}
	s.Pause = n
	return true
}

func sayPause(s Settings) string {
	switch {
	case s.Pause < 0:
		return "never"
	case s.Pause > 0:
		return fmt.Sprintf("%d min", s.Pause)
	}
	return ""
}

func readKeys(s *Settings, value string) bool {
	n, err := strconv.Atoi(strings.TrimSpace(strings.TrimSuffix(value, "ms")))
	d := time.Duration(n) * time.Millisecond
	if err != nil || d < ShortestKeyGap || d > LongestKeyGap {
		return false
	}
	s.KeyGap = d
	return true
}

func sayKeys(s Settings) string {
	if s.KeyGap == 0 {
		return ""
	}
	return fmt.Sprintf("%d ms", s.KeyGap.Milliseconds())
}

// Mistake is a line of the file that says nothing that is understood.
type Mistake struct {
	Line int          // from 1
	Text string       // the line, made safe to print
	Hint say.Sentence // what may stand there
}

// String is the mistake as it is told.
func (m Mistake) String() string { return m.Say().String() }

// Say is the mistake as a sentence.
func (m Mistake) Say() say.Sentence { return InLine.Say(m.Line, strconv.Quote(m.Text), m.Hint) }

// MaxBytes is how long the file may be; what is behind is not read.
const MaxBytes = 1 << 16

// Read reads the file's text. Whatever it says, there are settings: a line
// that is not understood leaves its setting as it usually is, and of a setting
// said twice the later line counts.
func Read(text string) (Settings, []Mistake) {
	var s Settings
	var wrong []Mistake
	for i, line := range lines(text) {
		name, value, comment := split(line)
		if name == "" && comment {
			continue
		}
		f, ok := find(name)
		hint := SettingsAre.Say(strings.Join(names(), ", "))
		if ok {
			before := s
			if f.read(&s, value) && value != "" {
				continue
			}
			s = before
			hint = MayBe.Say(f.name, f.how)
		}
		const most = 20
		if len(wrong) < most {
			wrong = append(wrong, Mistake{i + 1, safe(line), hint})
		}
	}
	return s, wrong
}

func lines(text string) []string {
	text = strings.TrimPrefix(text[:min(len(text), MaxBytes)], "\ufeff")
	return strings.Split(text, "\n")
}

// split takes a line apart; comment says that there is nothing else on it.
func split(line string) (name, value string, comment bool) {
	said, _, _ := strings.Cut(line, "#")
	words := strings.Fields(strings.ToLower(said))
	if len(words) == 0 {
		return "", "", true
	}
	return words[0], strings.Join(words[1:], " "), false
}

func find(name string) (field, bool) {
	i := slices.IndexFunc(fields, func(f field) bool { return f.name == name })
	if i < 0 {
		return field{}, false
	}
	return fields[i], true
}

func names() []string {
	var all []string
	for _, f := range fields {
		all = append(all, f.name)
	}
	return all
}

// safe is a line as it can be shown.
func safe(line string) string {
	const most = 60
	line = strings.TrimSpace(line)
	if utf8.RuneCountInString(line) > most {
		line = string([]rune(line)[:most]) + "…"
	}
	return line
}

// header stands on top of a new file.
const header = "# What you chose about matside's screen. A line each; # starts a comment.\n"

// Write is the text with these settings in it.
//
// (1) Read of it gives s. (2) Every line that has not to change stays as it
// is, with its comment. (3) Written again it is the same.
func Write(text string, s Settings) string {
	if strings.TrimSpace(text) == "" {
		text = header
	}
	all := strings.SplitAfter(text, "\n")
	for _, f := range fields {
		all = f.put(all, f.say(s))
	}
	return strings.Join(all, "")
}

// put writes one setting: into its last line where it has one, else into a
// new one at the end; "" takes its lines away, but those that say nothing.
func (f field) put(all []string, value string) []string {
	at := -1
	for i, line := range all {
		if name, _, _ := split(strings.TrimPrefix(line, "\ufeff")); name == f.name {
			at = i
		}
	}
	switch {
	case at < 0 && value == "":
		return all
	case at < 0:
		if n := len(all) - 1; n >= 0 && all[n] == "" {
			all = all[:n]
		} else if n >= 0 && !strings.HasSuffix(all[n], "\n") {
			all[n] += "\n"
		}
		return append(all, f.name+" "+value+"\n")
	case value == "":
		return slices.DeleteFunc(all, func(line string) bool {
			name, said, _ := split(strings.TrimPrefix(line, "\ufeff"))
			return name == f.name && said != "" && f.read(&Settings{}, said)
		})
	}
	var now Settings
	_, said, _ := split(all[at])
	if f.read(&now, said) && f.say(now) == value {
		return all
	}
	words, comment, has := strings.Cut(strings.TrimRight(all[at], "\r\n"), "#")
	end := all[at][len(strings.TrimRight(all[at], "\r\n")):]
	mark := ""
	if strings.HasPrefix(words, "\ufeff") {
		mark = "\ufeff"
	}
	line := mark + f.name + " " + value
	if has {
		space := words[len(strings.TrimRight(words, " \t")):]
		line += max(space, " ") + "#" + comment
	}
	all[at] = line + end
	return all
}

// Changed is base with what differs between from and to: a setting that an
// option or the environment set just now is not kept for ever.
func Changed(base, from, to Settings) Settings {
	for _, f := range fields {
		if f.say(from) != f.say(to) {
			f.set(&base, to)
		}
	}
	return base
}

// set takes one setting over.
func (f field) set(s *Settings, from Settings) {
	if value := f.say(from); value != "" {
		f.read(s, value)
		return
	}
	f.clear(s)
}

// clear brings one setting back to the usual.
func (f field) clear(s *Settings) {
	var kept Settings
	for _, other := range fields {
		if v := other.say(*s); other.name != f.name && v != "" {
			other.read(&kept, v)
		}
	}
	*s = kept
}
