package tui

import (
	"strings"
	"unicode"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/matside/tui/form"
	"example.org/matside/tui/words"
)

// typist is a screen with a field to type into. While it says that it is
// typing, characters go to the field as they are, a paste too; all other keys
// go by its bindings.
type typist interface {
	typing(v view) bool
	typed(v view, text string) action
}

// listener is a screen that asks for what is not in the record: files, plans.
// Each ask has one answer, told to the screen then shown; the answer to an
// older ask is dropped.
type listener interface {
	told(v view, answer any) action
}

// told is the answer to ask number id.
type told struct {
	id     int
	answer any
}

// brokeOff is the answer of an ask that a mistake of ours ended.
type brokeOff struct{ error }

// ask runs do as a command. A panic in it must not leave the terminal raw.
func (f *frame) ask(do func() any) tea.Cmd {
	f.asks++
	id := f.asks
	return func() (msg tea.Msg) {
		defer func() {
			if r := recover(); r != nil {
				msg = told{id, brokeOff{words.BrokeOff.Err(r)}}
			}
		}()
		return told{id, do()}
	}
}

// tell hands an answer to the screen that asked.
func (f *frame) tell(t told) tea.Cmd {
	l, ok := f.screen.(listener)
	if !ok || t.id != f.asks {
		return nil
	}
	return f.act(l.told(f.view(), t.answer))
}

// typing is the text that a message types into the field of the screen.
func (f *frame) typing(msg tea.KeyMsg) (string, bool) {
	s, ok := f.screen.(typist)
	if !ok || f.small() || f.leaving != nil || f.saver.err != nil || !s.typing(f.view()) {
		f.typed = ""
		return "", false
	}
	if msg.Type != tea.KeyRunes && msg.Type != tea.KeySpace || msg.Alt {
		return "", false
	}
	text := string(msg.Runes)
	if msg.Type == tea.KeySpace {
		text = " "
	}
	return oneLine(text), true
}

// typeIn types text; a second hit of one character within a bounce's time is
// dropped, so that a held key doesn't fill the field.
func (f *frame) typeIn(text string, paste bool) tea.Cmd {
	now := f.now()
	bounce := !paste && text == f.typed && len([]rune(text)) == 1 && now.Sub(f.at) < f.bounceTime()
	f.typed, f.at = text, now
	if bounce || text == "" {
		return nil
	}
	f.notice = ""
	v := f.view()
	return f.act(f.screen.(typist).typed(v, text))
}

// oneLine is text as one line without control characters: what ends a line
// or a column in a paste becomes a space.
func oneLine(text string) string {
	text = strings.NewReplacer("\r\n", " ", "\n", " ", "\r", " ", "\t", " ").Replace(text)
	return strings.Map(func(r rune) rune {
		if unicode.IsPrint(r) {
			return r
		}
		return -1
	}, text)
}

// keeper is a screen with a form on it that must not be lost.
type keeper interface{ kept() *form.Form }

// forget says that there is no form any more that could be lost.
type forget struct{}

// keepForm keeps the form being written when the program ends, however it
// ends.
func (f *frame) keepForm() error {
	if f.form == nil || f.desk == nil {
		return nil
	}
	return keepIn(f.desk, *f.form)
}
