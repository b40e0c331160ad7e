package tui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/matside/tui/press"
)

// keys takes the keys of one message, in order. Once one of them has sent
// something off or asked to leave, the rest were for a screen not seen yet.
func (f *frame) keys(names []string) tea.Cmd {
	var cmds []tea.Cmd
	for _, name := range names {
		cmd := f.key(name)
		cmds = append(cmds, cmd)
		if f.leaving != nil || f.saver.out {
			break
		}
	}
	return tea.Batch(cmds...)
}

// small reports that the window is too small to see what a key would do.
func (f *frame) small() bool { return f.w < minWidth || f.h < minHeight }

// key takes one key: moving ones act at once, typed ones but for bounces,
// and the others when the gate says that they were meant.
func (f *frame) key(name string) tea.Cmd {
	b, ok := find(f.bindings(), name)
	if !ok {
		return nil
	}
	now := f.now()
	if b.kind == meant {
		f.bounced = ""
		count, wait := f.gate.Event(b.name, now)
		return f.counted(count, wait)
	}
	bounce := b.kind == typed && f.bounced == name && now.Sub(f.at) < f.bounceTime()
	f.bounced, f.at = name, now
	if bounce {
		return nil
	}
	return f.perform(b)
}

// bounceTime is how long a second hit of a typed key belongs to the first: a
// tenth of a second, or more for a hand that needs it.
func (f *frame) bounceTime() time.Duration { return f.settings.Gap() * 2 / 5 }

func (f *frame) counted(names []string, wait press.Wait) tea.Cmd {
	var cmds []tea.Cmd
	for _, name := range names {
		cmds = append(cmds, f.named(name))
	}
	if wait != (press.Wait{}) {
		cmds = append(cmds, f.later(wait.For, settled{wait.Ticket}))
	}
	return tea.Batch(cmds...)
}

func (f *frame) settle(ticket int) tea.Cmd {
	if name, ok := f.gate.Settled(ticket); ok {
		return f.named(name)
	}
	return nil
}

// named performs the binding that has a name just now.
func (f *frame) named(name string) tea.Cmd {
	for _, b := range f.bindings() {
		if b.name == name {
			return f.perform(b)
		}
	}
	return nil
}

// bindings are the keys that count just now: the screen's, or those of a
// save that failed, or only the way out where the window is too small.
func (f *frame) bindings() []binding {
	v := f.view()
	switch {
	case f.saver.err != nil:
		retry := binding{name: "on", keys: []string{"enter", "space", "ctrl+j"}, key: "Enter", says: v.words.KeyRetry(), do: func() action { return again{} }}
		return []binding{retry, v.leaveKey(), v.sleepKey()}
	case f.small():
		return []binding{v.leaveKey(), v.sleepKey()}
	}
	all := f.screen.bindings(v)
	if news, ok := f.newsKey(v); ok {
		all = append(all, news)
	}
	return all
}

// mouse takes a click where the button was let go on the zone it went down
// on, and the wheel for lists.
func (f *frame) mouse(msg tea.MouseMsg) tea.Cmd {
	switch {
	case msg.Button == tea.MouseButtonWheelUp && msg.Action == tea.MouseActionPress:
		return f.wheel("up")
	case msg.Button == tea.MouseButtonWheelDown && msg.Action == tea.MouseActionPress:
		return f.wheel("down")
	case msg.Action == tea.MouseActionPress && msg.Button == tea.MouseButtonLeft:
		f.pointed = f.hit(msg.X, msg.Y)
	case msg.Action == tea.MouseActionRelease:
		name := f.pointed
		if f.pointed = ""; name != "" && name == f.hit(msg.X, msg.Y) {
			return f.click(name)
		}
	}
	return nil
}

// hit is the zone of the window at x, y, or "".
func (f *frame) hit(x, y int) string {
	if f.w <= 0 || f.h <= 0 {
		return ""
	}
	return f.draw().Hit(x, y)
}

// click does the binding that a zone is named for, with the same guards as
// its key.
func (f *frame) click(name string) tea.Cmd {
	for _, b := range f.bindings() {
		if b.name == name && b.kind == meant {
			return f.counted(f.gate.Event(name, f.now()))
		}
	}
	if s, ok := f.screen.(pointed); ok && f.saver.err == nil {
		if b, ok := s.pointed(f.view(), name); ok {
			return f.perform(b)
		}
	}
	return f.named(name)
}

// wheel moves a list's cursor.
func (f *frame) wheel(name string) tea.Cmd {
	for _, b := range f.bindings() {
		if b.name == name && b.kind == moving {
			return f.perform(b)
		}
	}
	return nil
}
