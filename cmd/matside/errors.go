package main

import (
	"errors"
	"fmt"
	"io"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/say"
	"example.org/matside/tui"
	"example.org/matside/tui/words"
)

// Exit codes, as `matside help` tells them.
const (
	exitDone  = 0
	exitFault = 1 // the input or the data is at fault
	exitUsage = 2 // the command line is wrong

	exitInterrupted = 130 // stopped from outside by an interrupt, as shells count it
)

// errInterrupted stands beside a plan that was interrupted before it was as
// good as it gets.
var errInterrupted = errors.New("interrupted: this is the best plan so far; left to finish, it may get better")

// Nothing is cut or drawn by a plan that was interrupted.
var (
	errNotStarted = errors.New("interrupted: the plan is not finished, and nothing was started")
	errNotWritten = errors.New("interrupted: the plan is not finished, and nothing was written")
)

// usageError is a command line that can't be understood.
type usageError struct{ error }

func (e usageError) Unwrap() error { return e.error }

func usagef(format string, a ...any) error { return usageError{fmt.Errorf(format, a...)} }

// problem is an error for the quilter's eyes: what happened, and what to do.
type problem struct {
	what, hint string
	cause      error
}

func (p problem) Error() string {
	if p.hint == "" {
		return p.what
	}
	return p.what + "\n" + p.hint
}

func (p problem) Unwrap() error { return p.cause }

// told is a problem that can be told on a screen, in the language of it.
type told struct {
	what, hint say.Sentence
	cause      error
}

func (t told) Error() string { return t.In(say.Sentence.String) }
func (t told) Unwrap() error { return t.cause }

// In is the problem in a language, which puts its sentences into words.
func (t told) In(language func(say.Sentence) string) string {
	return problem{what: language(t.what), hint: language(t.hint)}.Error()
}

// inHerWords is an error told in a language of hers.
type inHerWords struct {
	error
	words words.Words
}

func (h inHerWords) Error() string { return h.words.Error(h.error) }
func (h inHerWords) Unwrap() error { return h.error }

// tell prints err where errors go and returns the exit code that it asks for.
func tell(w io.Writer, err error) int {
	if err == nil {
		return exitDone
	}
	if errors.Is(err, tui.ErrInterrupted) {
		return exitInterrupted
	}
	var mistakes cutlist.Mistakes
	if errors.As(err, &mistakes) {
		hers := inHerWords{err, words.English{}}
		errors.As(err, &hers)
		fmt.Fprintln(w, mistakes.In(hers.words.Say))
		return exitFault
	}
	fmt.Fprintf(w, "matside: %v\n", err)
	if errors.Is(err, errInterrupted) || errors.Is(err, errNotStarted) || errors.Is(err, errNotWritten) {
		return exitInterrupted
	}
	var usage usageError
	if errors.As(err, &usage) {
		fmt.Fprintln(w, "`matside help` shows what can be asked for")
		return exitUsage
	}
	return exitFault
}
