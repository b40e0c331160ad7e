package form

import (
	"strings"

	"github.com/rivo/uniseg"
)

// Field is a line of text being typed. It moves by what the eye takes for one
// character, whatever that is made of.
//
// Ours and not the input of bubbles: that one counts code points, draws and
// blinks its own cursor through timers, and styles by another package than
// all other text here; this is less than what it would take to tame it.
type Field struct {
	Before, After string // what stands before and behind the cursor
}

// Filled is a field with the cursor behind its text.
func Filled(text string) Field { return Field{Before: text} }

// Text is what stands in it.
func (f Field) Text() string { return f.Before + f.After }

// Value is the text without space around it, its inner spaces made single.
func (f Field) Value() string { return strings.Join(strings.Fields(f.Text()), " ") }

// longest is how many bytes a field takes: more than any line of a cut list
// that somebody means.
const longest = 400

// Type puts text in front of the cursor; what is too much is left out.
func (f Field) Type(text string) Field {
	for text != "" {
		one, rest, _, _ := uniseg.FirstGraphemeClusterInString(text, -1)
		if len(f.Text())+len(one) > longest {
			break
		}
		f.Before, text = f.Before+one, rest
	}
	return f
}

// Erase takes the character before the cursor away.
func (f Field) Erase() Field {
	f.Before = f.Before[:len(f.Before)-len(last(f.Before))]
	return f
}

// Delete takes the character behind the cursor away.
func (f Field) Delete() Field {
	f.After = f.After[len(first(f.After)):]
	return f
}

// Left and Right move the cursor by one character.
func (f Field) Left() Field {
	one := last(f.Before)
	return Field{f.Before[:len(f.Before)-len(one)], one + f.After}
}

// Right moves the cursor behind the next character.
func (f Field) Right() Field {
	one := first(f.After)
	return Field{f.Before + one, f.After[len(one):]}
}

// Home and End move the cursor to the ends.
func (f Field) Home() Field { return Field{"", f.Text()} }

// End moves the cursor behind the last character.
func (f Field) End() Field { return Filled(f.Text()) }

func first(s string) string {
	one, _, _, _ := uniseg.FirstGraphemeClusterInString(s, -1)
	return one
}

func last(s string) string {
	one, state := "", -1
	for s != "" {
		one, s, _, state = uniseg.FirstGraphemeClusterInString(s, state)
	}
	return one
}
