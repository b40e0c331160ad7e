package tui

import (
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/matside/session"
	"example.org/matside/tui/internal/fixture"
)

// table is a desk in memory, demo the notebook of the demo begun from it.
type table struct {
	*fixture.Table
	demo *testBook
}

func newTable() *table {
	t := &table{Table: fixture.NewTable()}
	t.DemoBook = func(l *session.Ledger) Notebook {
		t.demo = &testBook{Ledger: l}
		return t.demo
	}
	return t
}

// atTable is a desk without a quilt, with cut lists beside it.
func atTable(t failer, w, h int) (*desk, *table) {
	d := newDesk(t, w, h)
	tab := newTable()
	d.f.desk, d.f.quilt, d.f.demo, d.f.screen = tab, 0, false, first{}
	return d, tab
}

// types types text into a field, a rune at a time.
func (d *desk) types(text string) {
	for _, r := range text {
		msg := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}}
		if r == ' ' {
			msg.Type = tea.KeySpace
		}
		d.send(msg)
		d.after(150 * time.Millisecond)
	}
}

// does goes through keys; a word that begins with ' is typed, _ for a space.
func (d *desk) does(keys string) {
	for key := range strings.FieldsSeq(keys) {
		if text, ok := strings.CutPrefix(key, "'"); ok {
			d.types(strings.ReplaceAll(text, "_", " "))
		} else {
			d.key(key)
		}
	}
}
