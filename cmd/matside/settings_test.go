package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/spf13/cobra"

	"example.org/matside/tui/settings"
)

// chosenIn chooses with a settings file of that text, "" for none, and args.
func chosenIn(t *testing.T, text string, env map[string]string, args ...string) (*chosen, string) {
	t.Helper()
	home := t.TempDir()
	path := filepath.Join(home, "matside", "settings")
	if text != "" {
		if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	getenv := func(name string) string {
		if name == "XDG_CONFIG_HOME" {
			return home
		}
		return env[name]
	}
	c := &cobra.Command{Use: "x"}
	settingsOptions(c)
	if err := c.ParseFlags(args); err != nil {
		t.Fatal(err)
	}
	s, err := choose(world{getenv: getenv}, c)
	if err != nil {
		t.Fatal(err)
	}
	return s, path
}

func contents(t *testing.T, path string) string {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func TestABrokenSettingsFileNeverStopsHer(t *testing.T) {
	const text = "look purple # I like it\nunits cm\n\x00\xff\n"
	s, path := chosenIn(t, text, nil)
	if s.now != (settings.Settings{Units: "cm"}) || !strings.Contains(s.notice, "line 1") {
		t.Errorf("%+v, told %q", s.now, s.notice)
	}
	if contents(t, path) != text {
		t.Error("the file was changed")
	}
	if err := s.keep(settings.Settings{Units: "cm", Sound: true}); err != nil {
		t.Fatal(err)
	}
	if got := contents(t, path); got != text+"sound on\n" {
		t.Errorf("kept as %q", got)
	}
}

func TestAFileThatCanNotBeReadIsLeftAlone(t *testing.T) {
	home := t.TempDir()
	path := filepath.Join(home, "matside", "settings")
	if err := os.MkdirAll(path, 0o700); err != nil { // a folder in its place
		t.Fatal(err)
	}
	c := &cobra.Command{Use: "x"}
	s, err := choose(world{getenv: func(name string) string {
		if name == "XDG_CONFIG_HOME" {
			return home
		}
		return ""
	}}, c)
	if err != nil || s.notice == "" || s.now != (settings.Settings{}) {
		t.Errorf("%+v, %v", s.now, err)
	}
	if err := s.keep(settings.Settings{Sound: true}); err == nil {
		t.Error("kept where nothing can be")
	}
}

func TestEnvironmentAndOptionsStandOverTheFileForNow(t *testing.T) {
	env := map[string]string{"NO_COLOR": "1", "MATSIDE_UNITS": "in"}
	s, path := chosenIn(t, "look dark\nunits cm\nlanguage en\n", env, "--still", "--language", "de")
	if want := (settings.Settings{Look: "no color", Units: "in", Language: "de", Still: true}); s.now != want {
		t.Errorf("%+v", s.now)
	}
	changed := s.now
	changed.Pause = 45
	if err := s.keep(changed); err != nil {
		t.Fatal(err)
	}
	if got := contents(t, path); got != "look dark\nunits cm\nlanguage en\npause 45 min\n" {
		t.Errorf("kept %q", got)
	}
	if s, _ = chosenIn(t, "look dark\n", env, "--look", "high-contrast"); s.now.Look != "high contrast" {
		t.Errorf("the option does not stand over the environment: %q", s.now.Look)
	}
	if s, _ = chosenIn(t, "", map[string]string{"LC_ALL": "de_AT.UTF-8"}); s.now.Language != "de" {
		t.Errorf("LC_ALL=de_AT: %q", s.now.Language)
	}
	if s, _ = chosenIn(t, "", map[string]string{"LC_ALL": "pl_PL.UTF-8", "LANG": "de_DE.UTF-8"}); s.now.Language != "" {
		t.Errorf("LC_ALL=pl before LANG=de: %q", s.now.Language)
	}
}

func TestListsRemembersWhereCutListsLie(t *testing.T) {
	folder := t.TempDir()
	l := readLists(folder, "/a.db")
	l.set(1, "/q/lamp.cutlist")
	l.set(2, "/q/two words.cutlist")
	l.set(1, "/q/moved.cutlist")
	l.set(0, "/nobody")
	again := readLists(folder, "/a.db")
	if again.of(1) != "/q/moved.cutlist" || again.of(2) != "/q/two words.cutlist" || again.of(0) != "" {
		t.Errorf("%+v", again.lines)
	}
	if other := readLists(folder, "/b.db"); other.of(1) != "" {
		t.Errorf("another data file's quilt 1 is taken for it: %q", other.of(1))
	}
	if l := readLists("", "/a.db"); l.of(1) != "" {
		t.Error("no folder, and still something is known")
	}
}
