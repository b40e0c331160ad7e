package store

import (
	"errors"
	"strings"

	"example.org/matside/plan/say"
)

// Sentinels that a Trouble wraps; errors.Is finds them.
var (
	// ErrBusy is returned when another process has the file open.
	ErrBusy = errors.New("open in another window")
	// ErrNotOurs is returned for a file that isn't a matside data file.
	ErrNotOurs = errors.New("not a matside data file")
	// ErrDamaged is returned when records are lost that no file has sound.
	ErrDamaged = errors.New("damaged")
	// ErrNewer is returned for a file of a newer format.
	ErrNewer = errors.New("written by a newer matside")
	// ErrNoRoom is returned when the disk, or the file's limit, is full.
	ErrNoRoom = errors.New("no room on the disk")
	// ErrSwapped is returned when a file was moved, removed or replaced while open.
	ErrSwapped = errors.New("moved or replaced while open")
	// ErrNoAccess is returned when the file or its folder can't be written.
	ErrNoAccess = errors.New("cannot be written")
	// ErrGap is returned by Append for a number that isn't the next.
	ErrGap = errors.New("a number is left out")
	// ErrClash is returned by Append for a number taken by another line.
	ErrClash = errors.New("another line has that number")
)

// Trouble says in her words what happened, what is safe, and the way back.
type Trouble struct {
	What say.Sentence // what happened
	Safe say.Sentence // what is safe; may be silent
	Way  say.Sentence // what to do, with the command to type where there is one
	Err  error        // a sentinel above, or what the system said
}

func (t *Trouble) Error() string { return t.In(say.Sentence.String) }

// In is the trouble in a language, which puts its sentences into words.
func (t *Trouble) In(language func(say.Sentence) string) string {
	var parts []string
	for _, s := range []say.Sentence{t.What, t.Safe, t.Way} {
		if !s.Silent() {
			parts = append(parts, language(s))
		}
	}
	return strings.Join(parts, "; ")
}

func (t *Trouble) Unwrap() error { return t.Err }
