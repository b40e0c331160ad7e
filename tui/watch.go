package tui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/matside/tui/files"
)

// watch looks now and then at the cut list of the quilt in hand. A look is a
// glance from outside; only a file that looks otherwise is read. Nothing is
// looked at while the screen is to keep still.
type watch struct {
	id    int // of this quilt's watch; answers of another are dropped
	path  string
	stamp files.Stamp
	seen  bool   // it was read at least once
	known string // the text last told, or the one put off
	news  string // a text that is not the quilt's, to be told; "" for none
}

// between is the time between two looks.
const between = 2 * time.Second

// The messages: look now, what it looks like, what it says.
type (
	glance  struct{ id int }
	glanced struct {
		id    int
		stamp files.Stamp
	}
	reread struct {
		id   int
		text string
		err  error
	}
)

// follow begins to watch the cut list of the quilt in hand.
func (f *frame) follow() tea.Cmd {
	f.watch = watch{id: f.watch.id + 1}
	if f.desk == nil || f.quilt == 0 {
		return nil
	}
	f.watch.path = f.desk.FileOf(f.quilt)
	return f.glance(f.watch.id)
}

// glance looks at the file from outside.
func (f *frame) glance(id int) tea.Cmd {
	w := f.watch
	if w.path == "" || id != w.id || f.settings.Still {
		return nil
	}
	desk := f.desk
	return func() tea.Msg { return glanced{w.id, desk.Stamp(w.path)} }
}

// glanced reads a file that looks otherwise than when it was read last.
func (f *frame) glanced(g glanced) tea.Cmd {
	if g.id != f.watch.id {
		return nil
	}
	again := f.later(between, glance{g.id})
	if g.stamp.Gone() || f.watch.seen && g.stamp == f.watch.stamp {
		return again
	}
	f.watch.stamp = g.stamp
	desk, w := f.desk, f.watch
	return tea.Batch(again, func() tea.Msg {
		text, _, err := desk.Read(w.path)
		return reread{w.id, text, err}
	})
}

// reread notes a text that is not the quilt's. What can't be read is left
// until it looks otherwise again.
func (f *frame) reread(r reread) {
	q := f.state.Quilt(f.quilt)
	if r.id != f.watch.id || r.err != nil || q == nil {
		return
	}
	f.watch.seen = true
	if f.watch.news = r.text; r.text == q.Text() || r.text == f.watch.known {
		f.watch.news = ""
	}
}

// newsKey shows what has changed, while something has and nothing is typed.
func (f *frame) newsKey(v view) (binding, bool) {
	if f.watch.news == "" || v.quilt == nil || f.form != nil {
		return binding{}, false
	}
	if _, busy := f.screen.(changed); busy {
		return binding{}, false
	}
	path, text := f.watch.path, f.watch.news
	return binding{name: "news", keys: []string{"v"}, key: "v", says: v.words.KeyNews(), do: func() action { return v.tellNews(path, text) }}, true
}

// putOff says that a changed text is not to be taken now.
type putOff struct{ text string }

func (f *frame) putOff(p putOff) tea.Cmd {
	f.watch.known, f.watch.news = p.text, ""
	f.screen = f.view().home()
	return nil
}
