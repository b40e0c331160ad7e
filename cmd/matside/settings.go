package main

import (
	"errors"
	"io/fs"
	"path/filepath"
	"runtime"
	"sync"

	"github.com/spf13/cobra"

	"example.org/matside/plan/say"
	"example.org/matside/tui/files"
	"example.org/matside/tui/settings"
	"example.org/matside/tui/words"
)

// chosen are the settings of an evening: what the file says, and over it what
// the environment and the options say for now.
type chosen struct {
	path   string // "" where no folder is known: they last while it runs
	now    settings.Settings
	notice string // what is not understood of the file, told once, in her language

	mu   sync.Mutex
	file settings.Settings
	text string
	lost error // the file can't be read: it is left alone
}

// settingsOptions lets a command be told how the screen is to be, for now.
func settingsOptions(c *cobra.Command) {
	c.Flags().String("look", "", "colors: dark, light, high-contrast or no-color")
	c.Flags().String("language", "", "en or de")
	c.Flags().Bool("still", false, "nothing on the screen moves by itself")
}

// choose reads the file and what stands over it. A broken file never stops
// her.
func choose(w world, c *cobra.Command) (*chosen, error) {
	s := &chosen{path: settings.Path(runtime.GOOS, w.getenv)}
	var wrong *settings.Mistake
	if s.path != "" {
		wrong = s.read()
	}
	s.now = settings.FromEnvironment(s.file, w.getenv)
	for _, name := range []string{"look", "language"} {
		if value, err := c.Flags().GetString(name); err == nil && value != "" {
			var how say.Sentence
			if s.now, how = settings.With(s.now, name, value); !how.Silent() {
				return nil, usagef("--%s is %s, not %q", name, how, printable(value))
			}
		}
	}
	if still, err := c.Flags().GetBool("still"); err == nil && still {
		s.now.Still = true
	}
	switch hers := s.words(); {
	case s.lost != nil:
		s.notice = hers.BrokenSettings(s.path, hers.Error(s.lost))
	case wrong != nil:
		s.notice = hers.BrokenSettings(filepath.Base(s.path), hers.Say(wrong.Say()))
	}
	return s, nil
}

// read reads the file and gives the first line that is not understood.
func (s *chosen) read() *settings.Mistake {
	text, err := files.Read(s.path)
	if err != nil {
		if !errors.Is(err, fs.ErrNotExist) {
			s.lost = err
		}
		return nil
	}
	var wrong []settings.Mistake
	s.text = text
	if s.file, wrong = settings.Read(text); len(wrong) == 0 {
		return nil
	}
	return &wrong[0]
}

// words are those of her language.
func (s *chosen) words() words.Words { return words.In(s.now.Language) }

// said is an error that is told in her language.
func (s *chosen) said(err error) error {
	if err == nil {
		return nil
	}
	return inHerWords{err, s.words()}
}

// keep keeps what she changed at the screen, and nothing that an option or
// the environment set for now. A file that could not be read is left alone.
func (s *chosen) keep(now settings.Settings) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.lost != nil {
		return s.lost
	}
	s.file, s.now = settings.Changed(s.file, s.now, now), now
	if s.path == "" {
		return nil
	}
	if text, err := files.Read(s.path); err == nil {
		s.text = text // she may have changed it by hand meanwhile
	}
	text := settings.Write(s.text, s.file)
	if text == s.text {
		return nil
	}
	if err := keepFile(s.path, []byte(text)); err != nil {
		return err
	}
	s.text = text
	return nil
}
