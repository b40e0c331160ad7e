package say

import "fmt"

// Kind is a kind of sentence. Like a sentinel error it is told apart by where
// it is declared, not by its words.
type Kind struct{ english string }

// English is the sentence with a %s for each fact.
func (k *Kind) English() string { return k.english }

// Say is the sentence with its facts: text as it is to be shown, an int, a
// Number, an error, a Sentence within this one, or whatever else prints itself
// in English.
func (k *Kind) Say(facts ...any) Sentence { return Sentence{k, facts} }

// Kinds are the kinds of a package, in the order they are declared.
type Kinds struct{ all []*Kind }

// New declares a kind.
func (k *Kinds) New(english string) *Kind {
	kind := &Kind{english}
	k.all = append(k.all, kind)
	return kind
}

// All lists them. The list is the caller's.
func (k *Kinds) All() []*Kind { return append([]*Kind(nil), k.all...) }

// Number is a number with a decimal point, which some languages write as a
// comma.
type Number string

// Sentence says one thing. The zero value says nothing.
type Sentence struct {
	Kind  *Kind
	Facts []any
}

// Nothing is the sentence that is not said.
var Nothing Sentence

// Silent says whether nothing is said.
func (s Sentence) Silent() bool { return s.Kind == nil }

// String is the sentence in English, "" where nothing is said.
func (s Sentence) String() string {
	return s.Put(func(k *Kind) string { return k.english }, func(fact any) string { return fmt.Sprint(fact) })
}

// Put puts the sentence into a language: how it goes, with a %s for each fact,
// or %[2]s for the second; and how a fact is written that is no sentence.
func (s Sentence) Put(how func(*Kind) string, write func(fact any) string) string {
	if s.Silent() {
		return ""
	}
	facts := make([]any, len(s.Facts))
	for i, fact := range s.Facts {
		if inner, ok := fact.(Sentence); ok {
			facts[i] = inner.Put(how, write)
		} else {
			facts[i] = write(fact)
		}
	}
	return fmt.Sprintf(how(s.Kind), facts...)
}

// Err is the error of a sentence. A fact that is an error caused it.
func (k *Kind) Err(facts ...any) error {
	e := &Error{Sentence: k.Say(facts...)}
	for _, fact := range facts {
		if cause, ok := fact.(error); ok {
			e.Cause = cause
		}
	}
	return e
}

// Error is an error that says what went wrong. What caused it, if anything, is
// found by errors.Is.
type Error struct {
	Sentence
	Cause error
}

func (e *Error) Error() string { return e.Sentence.String() }
func (e *Error) Unwrap() error { return e.Cause }

// In is the error in a language, which puts its sentences into words. Other
// errors made of sentences have the same method.
func (e *Error) In(language func(Sentence) string) string { return language(e.Sentence) }
