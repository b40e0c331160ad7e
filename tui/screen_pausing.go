package tui

import (
	"example.org/matside/session"
	"example.org/matside/tui/canvas"
)

// pausing is a pause: an event, so that it counts as no work.
type pausing struct{}

func (s pausing) bindings(v view) []binding {
	on := binding{name: "on", keys: onKeys, key: "Enter", says: v.words.KeyResume(), do: func() action { return save{session.Resume{}} }}
	return append(append([]binding{on}, v.washKeys()...), v.everywhere(s)...)
}

func (pausing) title(v view) string { return "" }
func (pausing) caution(view) string { return "" }
func (pausing) body(v view, c *canvas.Canvas) {
	c.Zone(0, 0, c.W, c.H, "on")
	v.middle(c, []string{v.words.LargePause()}, []line{
		{v.words.PauseSince(v.quilt.Touched), strong}, {},
		{v.words.PauseFor(v.state.PauseFor()), text}, {v.words.PauseFree(), text},
	})
}
