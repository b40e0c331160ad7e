package words

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"
	"syscall"

	"example.org/matside/plan/cutlist/mistake"
	"example.org/matside/plan/length"
	"example.org/matside/plan/say"
)

// told is an error made of sentences.
type told interface {
	In(language func(say.Sentence) string) string
}

// Say is a sentence that was said below the screens.
func (English) Say(s say.Sentence) string { return s.String() }

// Error is an error as she is told it.
func (English) Error(err error) string { return err.Error() }

// Say is English's.
func (g German) Say(s say.Sentence) string {
	return s.Put(func(k *say.Kind) string {
		if how, ok := saidInGerman[k]; ok {
			return how
		}
		return k.English()
	}, g.fact)
}

// fact writes what stands in a sentence.
func (g German) fact(fact any) string {
	switch f := fact.(type) {
	case say.Number:
		return comma(string(f))
	case length.Unit:
		return g.unit(f)
	case mistake.Shape:
		return shapesInGerman[string(f)][1]
	case error:
		return g.Error(f)
	}
	return fmt.Sprint(fact)
}

// Error is English's: what is made of sentences is said in German, and so are
// the few things that an operating system says most.
func (g German) Error(err error) string {
	if joined, ok := err.(interface{ Unwrap() []error }); ok {
		var all []string
		for _, one := range joined.Unwrap() {
			all = append(all, g.Error(one))
		}
		return strings.Join(all, "\n")
	}
	var t told
	if errors.As(err, &t) {
		return t.In(g.Say)
	}
	for _, c := range []struct {
		err  error
		text string
	}{
		{fs.ErrNotExist, "gibt es nicht"}, {fs.ErrPermission, "keine Erlaubnis dafür"}, {fs.ErrExist, "gibt es schon"},
		{syscall.ENOSPC, "kein Platz mehr auf dem Datenträger"}, {syscall.EROFS, "der Datenträger ist schreibgeschützt"},
		{syscall.EIO, "der Datenträger antwortet mit einem Fehler"}, {syscall.ENOTDIR, "ein Teil des Pfades ist kein Ordner"},
		{syscall.EISDIR, "das ist ein Ordner"},
	} {
		if errors.Is(err, c.err) {
			return c.text
		}
	}
	return err.Error()
}

// Full makes a sentence of words that have no capital and no full stop yet.
func Full(s string) string { return stop(Capital(s)) }

// stop ends a sentence, unless it has an end: an abbreviation's point is one.
func stop(s string) string {
	if s == "" || strings.HasSuffix(s, ".") || strings.HasSuffix(s, "?") || strings.HasSuffix(s, "!") {
		return s
	}
	return s + "."
}
