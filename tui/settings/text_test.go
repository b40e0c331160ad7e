package settings

import (
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"
)

func TestRead(t *testing.T) {
	s, wrong := Read("# mine\r\nLook high-contrast # for the evening\nletters small\nunits cm\nlanguage de\nsound on\nnotification on\npause 45 min\nkeys 400\nstill on\n")
	want := Settings{"high contrast", "small", "cm", "de", true, true, 45, 400 * time.Millisecond, true}
	if s != want || wrong != nil {
		t.Errorf("%+v, %v", s, wrong)
	}
	if s, wrong = Read("look dark\nlook light\n\n  # x\npause never"); s.Look != "light" || s.Pause != -1 || wrong != nil {
		t.Errorf("%+v, %v", s, wrong)
	}
}

func TestWhatIsNotUnderstoodIsToldAndLeftAsUsual(t *testing.T) {
	s, wrong := Read("look purple\nsound\ncolor red\npause 0\nkeys 5 s\nunits cm\n\x1b[2J\x00\xff\n")
	if s != (Settings{Units: "cm"}) || len(wrong) != 6 {
		t.Errorf("%+v, %v", s, wrong)
	}
	if got := wrong[0].String(); got != `line 1, "look purple": look is one of dark, light, high contrast, no color` {
		t.Error(got)
	}
	for _, m := range wrong {
		if strings.ContainsAny(m.String(), "\x1b\x00") {
			t.Errorf("%q can steer a terminal", m)
		}
	}
}

var anySettings = rapid.Custom(func(t *rapid.T) Settings {
	pick := func(name string, all []string) string {
		return rapid.SampledFrom(append([]string{""}, all...)).Draw(t, name)
	}
	return Settings{pick("look", Looks), pick("letters", Letters), pick("units", Units), pick("language", Languages),
		rapid.Bool().Draw(t, "sound"), rapid.Bool().Draw(t, "notify"), rapid.SampledFrom([]int{-1, 0, 1, 45, longestPause}).Draw(t, "pause"),
		time.Duration(rapid.SampledFrom([]int{0, 120, 250, 1500}).Draw(t, "keys")) * time.Millisecond, rapid.Bool().Draw(t, "still")}
})

// (1) to (3), over any text.
func TestWrite(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOf(rapid.SampledFrom([]string{"", "# a comment", "look dark  # mine", "look purple", "tea with milk", "units cm\r", "pause never", "sound on#x", "\ufeff", "STILL ON", "keys"})).Draw(t, "lines"), "\n")
		s := anySettings.Draw(t, "settings")
		now := Write(text, s)
		got, _ := Read(now)
		if got != s {
			t.Fatalf("(1) %q with %+v\nis %q\nand reads as %+v", text, s, now, got)
		}
		if again := Write(now, s); again != now {
			t.Fatalf("(3) %q written again is %q", now, again)
		}
		for _, line := range strings.Split(text, "\n") {
			name, value, comment := split(strings.TrimPrefix(line, "\ufeff"))
			f, ok := find(name)
			if (comment || !ok) && !strings.Contains(now, line) {
				t.Fatalf("(2) %q is gone from %q", line, now)
			}
			var said Settings
			if ok && strings.Count(strings.ToLower(text), name) == 1 && f.read(&said, value) && f.say(said) == f.say(s) && f.say(s) != "" && !strings.Contains(now, line) {
				t.Fatalf("(2) %q was changed in %q", line, now)
			}
		}
	})
}

func TestChangedKeepsWhatWasSetForNow(t *testing.T) {
	file := Settings{Look: "dark", Sound: true, Pause: 45}
	now := file
	now.Look, now.Still = "no color", true // by the environment and an option
	chosen := now
	chosen.Units, chosen.Sound = "cm", false
	if got := Changed(file, now, chosen); got != (Settings{Look: "dark", Pause: 45, Units: "cm"}) {
		t.Errorf("%+v", got)
	}
	rapid.Check(t, func(t *rapid.T) {
		base, from, to := anySettings.Draw(t, "base"), anySettings.Draw(t, "from"), anySettings.Draw(t, "to")
		got := Changed(base, from, to)
		for _, f := range fields {
			want := f.say(base)
			if f.say(from) != f.say(to) {
				want = f.say(to)
			}
			if f.say(got) != want {
				t.Fatalf("%s is %q, want %q", f.name, f.say(got), want)
			}
		}
	})
}

func TestPath(t *testing.T) {
	for _, c := range []struct{ env, goos, want string }{
		{"XDG_CONFIG_HOME=/x HOME=/h", "linux", "/x/matside/settings"},
		{"XDG_CONFIG_HOME=x HOME=/h", "linux", "/h/.config/matside/settings"},
		{"HOME=/h", "darwin", "/h/Library/Application Support/matside/settings"},
		{"", "linux", ""},
	} {
		env := map[string]string{}
		for pair := range strings.FieldsSeq(c.env) {
			name, value, _ := strings.Cut(pair, "=")
			env[name] = value
		}
		if got := Path(c.goos, func(name string) string { return env[name] }); got != c.want {
			t.Errorf("%s on %s: %q, want %q", c.env, c.goos, got, c.want)
		}
	}
}

func FuzzRead(f *testing.F) {
	f.Add("look dark\nunits cm # x\n")
	f.Fuzz(func(t *testing.T, text string) {
		s, _ := Read(text)
		if len(text) > MaxBytes {
			return
		}
		if got, _ := Read(Write(text, s)); got != s {
			t.Fatalf("%q reads as %+v, and written with that as %+v", text, s, got)
		}
	})
}
