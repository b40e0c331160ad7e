package press

import (
	"unicode"

	tea "github.com/charmbracelet/bubbletea"
)

// Split names the keys of a message. Letters typed fast come as one message
// of several runes, so each rune is a key; letters count in either case.
// A paste is no key press, and names none.
func Split(msg tea.KeyMsg) []string {
	switch {
	case msg.Paste:
		return nil
	case msg.Type == tea.KeySpace:
		return []string{"space"}
	case msg.Type != tea.KeyRunes:
		return []string{msg.String()}
	}
	var keys []string
	for _, r := range msg.Runes {
		if r == ' ' {
			keys = append(keys, "space")
		} else if !unicode.IsControl(r) {
			keys = append(keys, string(unicode.ToLower(r)))
		}
	}
	return keys
}
