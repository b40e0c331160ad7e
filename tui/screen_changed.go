package tui

import (
	"context"
	"errors"
	"path/filepath"
	"strings"

	"example.org/matside/plan"
	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/queue"
	"example.org/matside/plan/say"
	"example.org/matside/session"
	"example.org/matside/tui/canvas"
	"example.org/matside/tui/guide"
)

// changed tells what became of the cut list since it was planned, before
// anything of it is taken.
type changed struct {
	text   string
	list   *cutlist.List
	change plan.Change
	page   int
}

// tellNews plans the changed list and the one in hand, and shows what differs.
func (v view) tellNews(path, text string) action {
	old, desk := v.quilt.Text(), v.desk
	return begin{job{name: v.words.ReadingChange(),
		do: func(ctx context.Context, tell func(say.Sentence)) any {
			now, err := desk.Plan(ctx, path, text, tell)
			if err != nil {
				return err
			}
			was, err := desk.Plan(ctx, path, old, tell)
			if err != nil {
				return err
			}
			return [2]*queue.Queue{was, now}
		},
		then: func(v view, answer any) action {
			var mistakes cutlist.Mistakes
			switch a := answer.(type) {
			case [2]*queue.Queue:
				return show{changed{text: text, list: a[1].List, change: plan.Compare(a[0], a[1])}}
			case error:
				lines := []string{v.words.WentWrong()}
				if errors.As(a, &mistakes) {
					lines = []string{v.words.MistakesIn(filepath.Base(path)), v.words.GoesOnAsBefore()}
				}
				return show{trouble{lines: append(lines, strings.Split(v.words.Error(a), "\n")...), under: v.home()}}
			}
			return show{v.home()}
		}}}
}

func (s changed) bindings(v view) []binding {
	on := binding{name: "on", keys: onKeys, key: "Enter", says: v.words.KeyTakeChange(),
		do: func() action { return save{session.Replan{Text: s.text, List: s.list}} }}
	back := binding{name: "back", keys: []string{"backspace", "esc"}, key: "Backspace", says: v.words.KeyNotNow(), do: func() action { return putOff{s.text} }}
	turned := s
	turned.page++
	return []binding{on, back, {name: "page", keys: []string{"n", "down", "pgdown"}, kind: moving, do: func() action { return show{turned} }},
		v.helpKey(s), v.leaveKey(), v.lookKey(), v.sleepKey()}
}

func (changed) title(v view) string   { return v.words.NewsTitle() }
func (changed) caution(v view) string { return "" }
func (s changed) body(v view, c *canvas.Canvas) {
	lines := []line{{v.words.NewsLead(), strong}, {}}
	for _, told := range guide.Change(v.words, s.change) {
		lines = append(lines, line{told, accent})
	}
	lines = append(lines, line{}, line{v.words.NewsKeeps(), text})
	for y, l := range onePage(v, wrapped(lines, c.W-2), s.page, c.H) {
		c.Text(1, y, l.text, l.style)
	}
}
